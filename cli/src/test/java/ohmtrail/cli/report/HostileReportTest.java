package ohmtrail.cli.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import javax.imageio.ImageIO;
import ohmtrail.cli.casefile.CaseFileException;
import ohmtrail.cli.casefile.CaseFileWriter;
import ohmtrail.cli.report.CaseReport.Reader;
import ohmtrail.cli.report.html.HtmlWriter;
import ohmtrail.cli.report.pdf.PdfWriter;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Texts and pictures that somebody put there to do harm: inert, or refused with their place. */
class HostileReportTest {
  private static final List<String> BAD =
      List.of(
          "<script>alert(1)</script>",
          "\"><img src=x onerror=alert(1)>",
          "</title><svg onload=alert(1)>",
          "javascript:alert(1)",
          "&lt;b&gt; &#60;script&#62;",
          "' onmouseover='alert(1)",
          "<!-- --><iframe src=//example.org>",
          "\u202Egnp.exe",
          "\u05D0\u05D1\u05D2 \u0627\u0644",
          "\u0007\u001B[31mred",
          "\uFEFF\u200B\u2028",
          "\uD83D\uDCA5 \u65E5\u672C\u8A9E",
          "%PDF-1.7 (x) Tj ET BT",
          "]]> ?> <?php",
          "w".repeat(999));

  private static final String CASE =
      """
      title: TITLE
      breaker: 15 A
      cable: 14 AWG
      joints: push-in
      run:
        - panel
        - hall: receptacle 32 ft
        - BOX: receptacle 12 ft
        - bath: receptacle 12 ft
      meters:
        METER: 10 Mohm
      loads:
        LOAD: 1500 W
      tests:
        - name: TEST
          loads: [{load: LOAD, at: bath}]
          readings:
            - {at: hall, between: hot-neutral, volts: 117.VOLTS, meter: METER}
            - {at: BOX, between: hot-neutral, volts: 108.2, meter: METER}
            - {at: bath, between: hot-neutral, volts: 107.4, meter: METER}
      record:
        person: PERSON
        place: PLACE
        notes: [NOTE]
        meters:
          METER: {description: KIND, serial: SERIAL}
        photographs:
          - {file: wall.png, shows: SHOWS}
      times:
        TEST: 2026-03-14 10:32
      """;

  private static final List<String> NAMES =
      List.of(
          "TITLE", "BOX", "METER", "LOAD", "TEST", "PERSON", "PLACE", "NOTE", "KIND", "SERIAL",
          "SHOWS");

  private static byte[] png(int width, int height) throws IOException {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    ImageIO.write(new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB), "png", out);
    return out.toByteArray();
  }

  private static String mutated(Random random) {
    String text = CASE.replace("VOLTS", String.valueOf(random.nextInt(10)));
    for (String name : NAMES) {
      String value =
          random.nextInt(3) == 0
              ? BAD.get(random.nextInt(BAD.size())) + (random.nextBoolean() ? name : "")
              : name.toLowerCase(Locale.ROOT);
      text = text.replace(name, CaseFileWriter.text(value));
    }
    return text;
  }

  private static void mutate(Path folder, int cases, long seed) throws IOException {
    Files.write(folder.resolve("wall.png"), png(8, 6));
    int read = 0;
    for (int number = 0; number < cases; number++) {
      String which = "case " + number + " of seed " + seed;
      Path file =
          Files.writeString(folder.resolve("case.yaml"), mutated(new Random(seed + number)));
      ReportInputs inputs;
      try {
        inputs = Reports.inputs(file, false);
      } catch (CaseFileException refused) {
        assertTrue(refused.getMessage().contains("case.yaml:"), which + refused.getMessage());
        continue;
      }
      read++;
      var document = CaseReport.of(inputs, Reader.values()[number % 3]);
      String html = HtmlWriter.write(document);
      assertEquals(List.of(), CaseReportTest.active(html), which);
      assertTrue(html.contains("default-src 'none'"), which);
      if (number % 10 == 0) {
        assertEquals(List.of(), Reports.htmlErrors(html), which);
        assertEquals(List.of(), Reports.pdfViolations(PdfWriter.write(document)), which);
      }
    }
    assertTrue(read > cases / 10, read + " of " + cases + " were read");
  }

  @Test
  void aHundredMutatedCasesAreInertOrRefused(@TempDir Path folder) throws IOException {
    mutate(folder, 100, 20260314);
  }

  @Test
  @Tag("study")
  void fiveThousandMutatedCasesAreInertOrRefused(@TempDir Path folder) throws IOException {
    mutate(folder, 5000, 7);
  }

  private static String refusal(Path folder, byte[] picture) throws IOException {
    Files.write(folder.resolve("wall.png"), picture);
    String text = CASE.replace("VOLTS", "1");
    for (String name : NAMES) {
      text = text.replace(name, name.toLowerCase(Locale.ROOT));
    }
    Path file = Files.writeString(folder.resolve("case.yaml"), text);
    return assertThrows(CaseFileException.class, () -> Reports.inputs(file, false)).getMessage();
  }

  @Test
  void aPictureThatIsNoneIsRefusedWithItsPlace(@TempDir Path folder) throws IOException {
    byte[] good = png(40, 30);
    String place = "case.yaml:28:14: Photograph (wall.png) ";
    assertTrue(
        refusal(folder, "<svg onload=x>".getBytes(StandardCharsets.UTF_8))
            .contains(place + "must hold a JPEG"));
    assertTrue(refusal(folder, new byte[0]).contains(place + "must hold a JPEG"));
    assertTrue(
        refusal(folder, Arrays.copyOf(good, good.length / 2))
            .contains(place + "must hold a picture that can be read to its end"));
    assertTrue(refusal(folder, new byte[8_000_001]).contains(place + "must have at most 8 MB"));
    byte[] huge = good.clone();
    // Width and height in the header of a PNG (ISO 15948, 11.2.2): bytes 16 to 23.
    huge[16] = 0x00;
    huge[17] = 0x7F;
    huge[20] = 0x00;
    huge[21] = 0x7F;
    assertTrue(refusal(folder, huge).contains(place), refusal(folder, huge));
    Files.delete(folder.resolve("wall.png"));
  }

  @Test
  void aPictureThatIsALinkOutOfTheFolderIsRefused(@TempDir Path folder) throws IOException {
    Path elsewhere = Files.write(Files.createTempFile("elsewhere", ".png"), png(4, 4));
    Path inside = Files.createDirectory(folder.resolve("case"));
    Files.createSymbolicLink(inside.resolve("wall.png"), elsewhere);
    String text = CASE.replace("VOLTS", "1");
    for (String name : NAMES) {
      text = text.replace(name, name.toLowerCase(Locale.ROOT));
    }
    Path file = Files.writeString(inside.resolve("case.yaml"), text);
    String refused =
        assertThrows(CaseFileException.class, () -> Reports.inputs(file, false)).getMessage();
    assertTrue(refused.contains("there is none of that name"), refused);
    Files.delete(elsewhere);
  }
}
