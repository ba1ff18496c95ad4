package ohmtrail.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Set;
import ohmtrail.cli.casefile.CaseFile;
import ohmtrail.cli.casefile.CaseFileReader;
import ohmtrail.cli.render.json.DocumentSchema;
import ohmtrail.reference.Assumption;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class CasebookCommandTest {
  private static final Path EXAMPLES = Path.of(System.getProperty("ohmtrail.shared"), "cases");

  private final StringWriter out = new StringWriter();
  private final StringWriter err = new StringWriter();

  @TempDir private Path directory;

  private int run(String... arguments) {
    return Ohmtrail.run(new PrintWriter(out, true), new PrintWriter(err, true), arguments);
  }

  /** Three closed cases, one that says nothing, one that is no case. */
  @BeforeEach
  void aFirm() throws IOException {
    close("living-room-neutral", "tv: remade");
    close("smallest", "bed-left: burnt");
    close("laundry-gfci-hot", "panel: fine");
    Files.createDirectories(directory.resolve("older"));
    close("older/smallest", "bed-right: burnt");
    Files.writeString(directory.resolve("bad.yaml"), "run: 7\n");
    Files.writeString(directory.resolve("living-room-neutral.truth.yaml"), "degraded: {}\n");
  }

  private void close(String name, String found) throws IOException {
    String example = name.substring(name.indexOf('/') + 1);
    String text = Files.readString(EXAMPLES.resolve(example + ".yaml"));
    Files.writeString(directory.resolve(name + ".yaml"), text + "found:\n  - " + found + "\n");
  }

  @Test
  void theDocumentCountsWhatWasRightAndNamesWhatWasPassedOver() throws IOException {
    assertEquals(0, run("casebook", directory.toString(), "--json"), err.toString());
    assertEquals(Set.of(), DocumentSchema.named("casebook").breaches(out.toString()));
    JsonNode book = new ObjectMapper().readTree(out.toString());
    assertEquals(3, book.get("cases").asInt());
    assertEquals(1, book.get("unstated").asInt());
    assertTrue(book.get("firstRight").asInt() >= 1, out.toString());
    assertTrue(book.get("minutesSaved").asDouble() > 0, out.toString());
    assertEquals(1, book.get("passedOver").size());
    String bad = directory.resolve("bad.yaml").toString();
    assertEquals(bad, book.get("passedOver").get(0).get("file").asText());
    assertTrue(err.toString().startsWith("passed over: " + bad + ":1:"), err.toString());
  }

  @Test
  void theSameFolderGivesTheSameAnswer() {
    assertEquals(0, run("casebook", directory.toString()));
    String first = out.toString();
    out.getBuffer().setLength(0);
    assertEquals(0, run("casebook", directory.toString()));
    assertEquals(first, out.toString());
  }

  @Test
  void whatWasLearnedCanBePutIntoACase() throws Exception {
    Path rates = directory.resolve("rates.txt");
    assertEquals(0, run("casebook", directory.toString(), "--write", rates.toString()));
    Path next = directory.resolve("next.yaml");
    Files.writeString(
        next, Files.readString(EXAMPLES.resolve("smallest.yaml")) + Files.readString(rates));
    CaseFile read = new CaseFileReader().read(next);
    double pushIn = read.assumptions().value(Assumption.WEIGHT_PUSH_IN);
    assertTrue(pushIn > 3, "three push-ins failed among screws' contacts: " + pushIn);
  }

  @Test
  void aFolderWithoutClosedCasesSaysWhatClosesACase() throws IOException {
    Path empty = Files.createDirectory(directory.resolve("none"));
    assertEquals(0, run("casebook", empty.toString()));
    assertTrue(out.toString().contains("0 closed cases"), out.toString());
    assertEquals(1, run("casebook", directory.resolve("not there").toString()));
    assertEquals(2, run("casebook", empty.toString(), "--strength", "0"));
  }
}
