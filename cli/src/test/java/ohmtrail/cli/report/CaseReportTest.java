package ohmtrail.cli.report;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import ohmtrail.cli.casefile.CaseFileException;
import ohmtrail.cli.render.json.LocateJson;
import ohmtrail.cli.render.words.Figures;
import ohmtrail.cli.report.CaseReport.Reader;
import ohmtrail.cli.report.html.HtmlWriter;
import ohmtrail.cli.report.pdf.PdfWriter;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Reports of shipped cases: both standards kept, every figure that of the answer. */
class CaseReportTest {
  private static final ObjectMapper JACKSON = new ObjectMapper();

  private static final Pattern TAG = Pattern.compile("<([a-zA-Z]+)((?:[^>\"]|\"[^\"]*\")*)>");
  private static final Pattern ATTRIBUTE = Pattern.compile("([a-zA-Z:-]+)=\"([^\"]*)\"");

  private static final Set<String> ACTIVE =
      Set.of(
          "script",
          "iframe",
          "object",
          "embed",
          "link",
          "base",
          "form",
          "audio",
          "video",
          "animate",
          "set",
          "foreignobject");

  /** Every tag that could run something, or fetch something from elsewhere. */
  static List<String> active(String html) {
    return TAG.matcher(html)
        .results()
        .filter(
            tag ->
                ACTIVE.contains(tag.group(1).toLowerCase(Locale.ROOT))
                    || ATTRIBUTE.matcher(tag.group(2)).results().anyMatch(CaseReportTest::acts))
        .map(MatchResult::group)
        .toList();
  }

  private static boolean acts(MatchResult attribute) {
    String name = attribute.group(1).toLowerCase(Locale.ROOT);
    String value = attribute.group(2);
    return switch (name) {
      case "href", "xlink:href" -> !value.startsWith("#");
      case "src" -> !value.matches("data:image/(png|jpeg);base64,[A-Za-z0-9+/=]*");
      case "style", "srcset", "action" -> true;
      default -> name.startsWith("on");
    };
  }

  private static String words(byte[] pdf) throws IOException {
    try (PDDocument document = Loader.loadPDF(pdf)) {
      return new PDFTextStripper().getText(document).replaceAll("\\s+", " ");
    }
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "living-room-neutral",
        "kitchen-multiwire",
        "landing-ring-230",
        "workshop-healthy",
        "upstairs-tee",
        "guest-room-ghost"
      })
  void bothStandardsAreKept(String name) throws CaseFileException, IOException {
    ReportInputs inputs = Reports.inputs(Reports.shipped(name), false);
    var document = CaseReport.of(inputs, Reader.INVESTIGATOR);
    String html = HtmlWriter.write(document);
    assertEquals(List.of(), Reports.htmlErrors(html));
    assertEquals(List.of(), active(html));
    assertEquals(List.of(), Reports.pdfViolations(PdfWriter.write(document)));
  }

  @ParameterizedTest
  @EnumSource
  void everyReaderGetsBothKindsWithTheSensitivity(Reader reader)
      throws CaseFileException, IOException {
    ReportInputs inputs = Reports.inputs(Reports.shipped("living-room-neutral"), true);
    var document = CaseReport.of(inputs, reader);
    assertEquals(List.of(), Reports.htmlErrors(HtmlWriter.write(document)));
    byte[] pdf = PdfWriter.write(document);
    assertEquals(List.of(), Reports.pdfViolations(pdf));
    assertArrayEquals(pdf, PdfWriter.write(CaseReport.of(inputs, reader)), "byte for byte");
    if (reader == Reader.CUSTOMER) {
      try (PDDocument pages = Loader.loadPDF(pdf)) {
        assertEquals(2, pages.getNumberOfPages());
      }
    }
  }

  /** What the document of locate says, the report says: boxes, readings, ohms. */
  @ParameterizedTest
  @ValueSource(strings = {"living-room-neutral", "landing-ring-230"})
  void everyFigureIsThatOfTheAnswer(String name) throws CaseFileException, IOException {
    ReportInputs inputs = Reports.inputs(Reports.shipped(name), false);
    JsonNode answer = JACKSON.readTree(LocateJson.of(inputs.caseFile(), inputs.report()));
    var document = CaseReport.of(inputs, Reader.INVESTIGATOR);
    String html = HtmlWriter.write(document).replaceAll("<[^>]+>", " ");
    for (String text : List.of(html, words(PdfWriter.write(document)))) {
      for (JsonNode box : answer.get("boxes")) {
        String share = Figures.probability(box.get("probability").asDouble());
        String row = Pattern.quote(box.get("box").asText()) + "\\s+";
        String shown = share.replace("<", "(<|&lt;)").replace(">", "(>|&gt;)");
        assertTrue(Pattern.compile(row + shown).matcher(text).find(), row + share);
      }
      int found = 0;
      for (JsonNode reading : answer.findValue("readings")) {
        String read = Figures.tenths(reading.get("observed").asDouble());
        String fitted = Figures.tenths(reading.get("predicted").asDouble());
        String row =
            Pattern.quote(reading.get("at").asText())
                + "\\s.{0,80}?\\s"
                + Pattern.quote(read)
                + "\\s.{0,40}?\\s"
                + Pattern.quote(fitted);
        found += Pattern.compile(row, Pattern.DOTALL).matcher(text).find() ? 1 : 0;
      }
      assertEquals(answer.findValue("readings").size(), found);
    }
  }

  @Test
  void thePdfHasBookmarksLanguageAndWordsThatCanBeSearched() throws CaseFileException, IOException {
    ReportInputs inputs = Reports.inputs(Reports.shipped("living-room-neutral"), true);
    byte[] pdf = PdfWriter.write(CaseReport.of(inputs, Reader.INVESTIGATOR));
    String words = words(pdf);
    for (String expected :
        List.of("What was found", "What carries it", "terrace-door", "2.3 ohm", "healthy-joint")) {
      assertTrue(words.contains(expected), expected);
    }
    try (PDDocument document = Loader.loadPDF(pdf)) {
      assertEquals("en", document.getDocumentCatalog().getLanguage());
      int bookmarks = 0;
      for (var item : document.getDocumentCatalog().getDocumentOutline().children()) {
        assertFalse(item.getTitle().isBlank());
        bookmarks++;
      }
      assertEquals(9, bookmarks);
    }
  }

  @Test
  void wordsAreNeverStrongerThanTheEvidence() throws CaseFileException, IOException {
    ReportInputs inputs = Reports.inputs(Reports.shipped("living-room-neutral"), true);
    String text =
        HtmlWriter.write(CaseReport.of(inputs, Reader.INVESTIGATOR)).replaceAll("<[^>]+>", " ");
    assertTrue(text.contains("consistent with"));
    assertFalse(
        Pattern.compile("(?i)\\b(proves that|beyond doubt|certainly|without doubt|guarantee)")
            .matcher(text)
            .find());
  }

  @ParameterizedTest
  @ValueSource(doubles = {1, 1.9, 2, 9.9, 10, 99, 100, 999, 1000, 9999, 1e4, 1e6, 1e9})
  void aStrongerFactorNeverHasWeakerWords(double factor) {
    int rank = Strength.SCALE.indexOf(Strength.of(factor));
    assertTrue(rank >= Strength.SCALE.indexOf(Strength.of(factor * 10)));
    assertTrue(factor >= Strength.of(factor).least());
  }

  @Test
  void theTableOfWordsOnThePageIsThatOfTheProgram() throws IOException {
    String page =
        Files.readString(
            Path.of(System.getProperty("ohmtrail.shared")).resolve("../docs/report.md"));
    for (Strength strength : Strength.SCALE) {
      assertTrue(page.contains(strength.words()), strength.words());
    }
  }

  @Test
  void readingsAfterARepairAreSetBesideThoseBefore(@TempDir Path folder)
      throws CaseFileException, IOException {
    String text = Files.readString(Reports.shipped("living-room-neutral"));
    String after =
        text.replace("bookcase hot-neutral 94.4", "bookcase hot-neutral 115.1")
                .replace("terrace-door hot-neutral 93.3", "terrace-door hot-neutral 113.6")
                .replace("hot-ground 117.8", "hot-ground 117.0")
                .replace("neutral-ground 24.7", "neutral-ground 3.4")
                .replace("hall hot-neutral 118.7", "hall hot-neutral 118.1")
                .replace("sofa-right hot-neutral 117.7", "sofa-right hot-neutral 116.7")
            + "found:\n  - tv: remade\n";
    Path file = Files.writeString(folder.resolve("after.yaml"), after);
    ReportInputs before = Reports.inputs(Reports.shipped("living-room-neutral"), false);
    ReportInputs now = Reports.inputs(file, false);
    ReportInputs both =
        new ReportInputs(
            now.caseFile(),
            now.report(),
            now.likelihood(),
            now.sensitivity(),
            now.provenance(),
            Optional.of(new ReportInputs.Before(before.caseFile(), before.report())),
            List.of());
    String html =
        HtmlWriter.write(CaseReport.of(both, Reader.INVESTIGATOR)).replaceAll("<[^>]+>", " ");
    assertTrue(html.contains("are consistent with a sound circuit"), html);
    assertTrue(html.contains("Made anew: tv."));
    assertTrue(Pattern.compile("94\\.4\\s+115\\.1").matcher(html).find());
    assertTrue(html.contains("204 W in test"), "the heat before");
  }
}
