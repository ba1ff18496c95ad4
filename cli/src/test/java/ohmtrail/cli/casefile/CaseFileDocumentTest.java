package ohmtrail.cli.casefile;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import ohmtrail.cli.casefile.words.Keys;
import ohmtrail.cli.casefile.words.Vocabulary;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Holds the page on the case file to the reader: its examples are read, its keys are all there. */
class CaseFileDocumentTest {

  private static final Path PAGE =
      Path.of(System.getProperty("ohmtrail.shared"), "..", "docs", "case-file.md");

  private static final Pattern BLOCK =
      Pattern.compile("^```(\\w+)\\n(.*?)^```$", Pattern.MULTILINE | Pattern.DOTALL);

  /** What an example leaves out. */
  private static final Map<String, String> REST = rest();

  private static Map<String, String> rest() {
    Map<String, String> rest = new LinkedHashMap<>();
    rest.put("breaker", "breaker: 15 A\n");
    rest.put("cable", "cable: 14 AWG\n");
    rest.put("run", "run: [panel, {hall-1: outlet}, {bed-1: outlet}, {bed-2: outlet}]\n");
    rest.put("meters", "meters: {dmm: 10 Mohm, load-meter: 3 kohm}\n");
    rest.put("loads", "loads: {heater: 1500 W}\n");
    return rest;
  }

  private record Block(String language, String text) {}

  private static List<Block> blocks() {
    List<Block> blocks = new ArrayList<>();
    Matcher matcher = BLOCK.matcher(CaseFiles.text(PAGE));
    while (matcher.find()) {
      blocks.add(new Block(matcher.group(1), matcher.group(2)));
    }
    return blocks;
  }

  @Test
  void everyExampleIsReadOrRefusedAsThePageSays(@TempDir Path folder) throws IOException {
    List<Block> blocks = blocks();
    for (Block block : blocks) {
      if (block.language().equals("csv")) {
        Files.writeString(folder.resolve("readings.csv"), block.text());
      }
    }
    int read = 0;
    for (int i = 0; i < blocks.size(); i++) {
      if (blocks.get(i).language().equals("yaml")) {
        boolean refused = i + 1 < blocks.size() && blocks.get(i + 1).language().equals("text");
        String text = refused ? blocks.get(i).text() : whole(blocks.get(i).text());
        Path file = Files.writeString(folder.resolve("case.yaml"), text);
        assertEquals(refused ? blocks.get(i + 1).text() : "", messages(file, folder), text);
        read++;
      }
    }
    assertTrue(read >= 6, read + " examples");
  }

  private static String whole(String example) {
    StringBuilder whole = new StringBuilder(example);
    REST.forEach(
        (key, line) -> {
          boolean bare =
              key.equals("run") && (example.startsWith("outlet:") || example.startsWith("boxes:"));
          boolean given = bare || example.lines().anyMatch(text -> text.startsWith(key + ":"));
          whole.append(given ? "" : line);
        });
    return whole.toString();
  }

  private static String messages(Path file, Path folder) {
    try {
      CaseFile read = new CaseFileReader().read(file);
      assertEquals(List.of(), read.warnings());
      return "";
    } catch (CaseFileException e) {
      return e.getMessage().replace(folder + "/", "") + "\n";
    }
  }

  @Test
  void everyKeyAndEveryWordIsOnThePage() {
    String page = CaseFiles.text(PAGE);
    List<String> missing =
        Stream.of(
                Keys.CASE.all(),
                Keys.RUN_ENTRY.all(),
                Keys.METER.all(),
                Keys.LOAD.all(),
                Keys.TEST.all(),
                Keys.USE.all(),
                Keys.READING.all(),
                Keys.ASSUME.all(),
                Keys.METER_RECORD.all(),
                Keys.PHOTOGRAPH.all(),
                Vocabulary.offered(Vocabulary.JOINTS).all(),
                Vocabulary.WIRINGS.keySet(),
                Vocabulary.COMPANIONS.keySet())
            .flatMap(names -> names.stream())
            .filter(name -> !page.contains("`" + name + "`"))
            .toList();
    assertEquals(List.of(), missing);
  }
}
