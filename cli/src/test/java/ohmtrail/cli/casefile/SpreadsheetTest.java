package ohmtrail.cli.casefile;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.Objects;
import java.util.TreeMap;
import java.util.zip.ZipEntry;
import java.util.zip.ZipInputStream;
import java.util.zip.ZipOutputStream;
import ohmtrail.survey.Survey;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Readings out of spreadsheets. {@code readings.xlsx} was written by openpyxl 3.1.5, a library of
 * another language; the OpenDocument file is put together here as ISO/IEC 26300 says.
 */
class SpreadsheetTest {
  private static final String CASE =
      """
      breaker: 15 A
      cable: 14 AWG
      run: [panel, {hall: receptacle 30 ft}, {tv: receptacle 20 ft}]
      meters: {dmm: 10 Mohm}
      loads: {heater: 1500 W}
      readings: \
      """;

  private static final String CSV =
      """
      loads;box;between;meter;reading
      idle;hall;hot-neutral;dmm;121,3
      idle;tv;hot-neutral;dmm;118,6
      heater at tv;hall;hot-neutral;dmm;118,7 V
      heater at tv;tv;hot to neutral;dmm;93,3
      """;

  private static final String ODS =
      """
      <?xml version="1.0" encoding="UTF-8"?>
      <office:document-content
        xmlns:office="urn:oasis:names:tc:opendocument:xmlns:office:1.0"
        xmlns:table="urn:oasis:names:tc:opendocument:xmlns:table:1.0"
        xmlns:text="urn:oasis:names:tc:opendocument:xmlns:text:1.0">
      <office:body><office:spreadsheet><table:table table:name="Readings">
      <table:table-row><table:table-cell office:value-type="string"><text:p>loads</text:p></table:table-cell>
      <table:table-cell><text:p>box</text:p></table:table-cell><table:table-cell><text:p>between</text:p></table:table-cell>
      <table:table-cell><text:p>meter</text:p></table:table-cell><table:table-cell><text:p>reading</text:p></table:table-cell>
      <table:table-cell table:number-columns-repeated="1019"/></table:table-row>
      <table:table-row><table:table-cell><text:p>idle</text:p></table:table-cell><table:table-cell><text:p>hall</text:p></table:table-cell>
      <table:table-cell><text:p>hot-<text:span>neutral</text:span></text:p></table:table-cell><table:table-cell><text:p>dmm</text:p></table:table-cell>
      <table:table-cell office:value-type="float" office:value="121.3"><text:p>121,3</text:p></table:table-cell></table:table-row>
      <table:table-row><table:table-cell><text:p>idle</text:p></table:table-cell><table:table-cell><text:p>tv</text:p><office:annotation><text:p>loose</text:p></office:annotation></table:table-cell>
      <table:table-cell><text:p>hot-neutral</text:p></table:table-cell><table:table-cell><text:p>dmm</text:p></table:table-cell>
      <table:table-cell office:value-type="float" office:value="118.59999999999999"><text:p>118,6</text:p></table:table-cell></table:table-row>
      <table:table-row table:number-rows-repeated="3"><table:table-cell/></table:table-row>
      <table:table-row><table:table-cell><text:p>heater<text:s/>at tv</text:p></table:table-cell><table:table-cell><text:p>hall</text:p></table:table-cell>
      <table:table-cell><text:p>hot-neutral</text:p></table:table-cell><table:table-cell><text:p>dmm</text:p></table:table-cell><table:table-cell><text:p>118,7 V</text:p></table:table-cell></table:table-row>
      <table:table-row><table:table-cell><text:p>heater at tv</text:p></table:table-cell><table:table-cell><text:p>tv</text:p></table:table-cell>
      <table:table-cell><text:p>hot to neutral</text:p></table:table-cell><table:table-cell><text:p>dmm</text:p></table:table-cell>
      <table:table-cell office:value-type="float" office:value="93.3"/></table:table-row>
      <table:table-row table:number-rows-repeated="1048570"><table:table-cell table:number-columns-repeated="1024"/></table:table-row>
      </table:table><table:table table:name="Other"><table:table-row><table:table-cell><text:p>x</text:p></table:table-cell></table:table-row></table:table>
      </office:spreadsheet></office:body></office:document-content>
      """;

  @TempDir private Path directory;

  private Survey read(String table) throws IOException, CaseFileException {
    Path file = directory.resolve("case.yaml");
    Files.writeString(file, CASE + table + "\n");
    return new CaseFileReader().read(file).survey();
  }

  private byte[] xlsx() throws IOException {
    try (InputStream stream = getClass().getResourceAsStream("/sheets/readings.xlsx")) {
      return Objects.requireNonNull(stream).readAllBytes();
    }
  }

  private static byte[] zip(Map<String, String> parts) throws IOException {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    try (ZipOutputStream zip = new ZipOutputStream(bytes)) {
      for (Map.Entry<String, String> part : parts.entrySet()) {
        zip.putNextEntry(new ZipEntry(part.getKey()));
        zip.write(part.getValue().getBytes(StandardCharsets.UTF_8));
      }
    }
    return bytes.toByteArray();
  }

  private String refused(String name, byte[] content) throws IOException {
    Files.write(directory.resolve(name), content);
    CaseFileException refused = assertThrows(CaseFileException.class, () -> read(name));
    return refused.problems().get(0).format();
  }

  @Test
  void eachKindOfTableSaysTheSame() throws Exception {
    Files.writeString(directory.resolve("t.csv"), CSV);
    Files.write(directory.resolve("t.xlsx"), xlsx());
    Files.write(directory.resolve("t.ods"), zip(Map.of("content.xml", ODS)));
    Survey csv = read("t.csv");
    assertEquals(4, csv.readingCount());
    assertEquals(csv, read("t.xlsx"));
    assertEquals(csv, read("t.ods"));
  }

  @Test
  void whatIsWrongHasItsRowAndColumn() throws IOException {
    String wrong = ODS.replace("<text:p>tv</text:p><office", "<text:p>tw</text:p><office");
    String problem = refused("t.ods", zip(Map.of("content.xml", wrong)));
    assertTrue(problem.contains("t.ods:3:2: Box (tw)"), problem);
    assertTrue(problem.contains("Maybe tv was meant"), problem);
  }

  @Test
  void whatIsNoSpreadsheetIsRefusedWhereItIsNamed() throws IOException {
    for (byte[] content :
        new byte[][] {
          new byte[0],
          "no zip".getBytes(StandardCharsets.UTF_8),
          zip(Map.of("other.xml", "<a/>")),
          zip(Map.of("content.xml", "<a><b></a>"))
        }) {
      for (String name : new String[] {"t.xlsx", "t.ods"}) {
        String problem = refused(name, content);
        assertTrue(problem.contains("case.yaml:6:11: File ("), problem);
      }
    }
  }

  /** Neither a file that the sheet points to is read nor one that grows without end unpacked. */
  @Test
  void nothingOutsideIsFollowedAndABombIsNotUnpacked() throws IOException {
    Path secret = Files.writeString(directory.resolve("secret"), "hot-neutral");
    String pointing =
        ODS.replace("?>\n", "?>\n<!DOCTYPE x [<!ENTITY s SYSTEM \"" + secret.toUri() + "\">]>\n")
            .replace("<text:p>dmm</text:p>", "<text:p>&s;</text:p>");
    String problem = refused("t.ods", zip(Map.of("content.xml", pointing)));
    assertTrue(problem.contains("no spreadsheet that can be read"), problem);
    String bomb = refused("t.ods", zip(Map.of("content.xml", "<a>" + " ".repeat(21_000_000))));
    assertTrue(bomb.contains("no spreadsheet that can be read"), bomb);
  }

  /** Every cut of the file and every part struck out is an answer or a refusal. */
  @Test
  void aDamagedWorkbookIsRefusedOrRead() throws IOException {
    Map<String, String> parts = new TreeMap<>();
    try (ZipInputStream zip = new ZipInputStream(new java.io.ByteArrayInputStream(xlsx()))) {
      for (ZipEntry entry = zip.getNextEntry(); entry != null; entry = zip.getNextEntry()) {
        parts.put(entry.getName(), new String(zip.readAllBytes(), StandardCharsets.UTF_8));
      }
    }
    for (String part : parts.keySet()) {
      Map<String, String> fewer = new TreeMap<>(parts);
      fewer.remove(part);
      readOrRefuse(zip(fewer));
      for (int cut = 0; cut < parts.get(part).length(); cut += 97) {
        Map<String, String> shorter = new TreeMap<>(parts);
        shorter.put(part, parts.get(part).substring(0, cut));
        readOrRefuse(zip(shorter));
      }
    }
  }

  private void readOrRefuse(byte[] content) throws IOException {
    Files.write(directory.resolve("t.xlsx"), content);
    try {
      assertTrue(read("t.xlsx").readingCount() <= 4);
    } catch (CaseFileException refused) {
      assertTrue(refused.problems().size() > 0);
    }
  }
}
