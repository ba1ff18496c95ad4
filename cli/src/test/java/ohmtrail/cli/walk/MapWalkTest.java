package ohmtrail.cli.walk;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.time.LocalDateTime;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Deque;
import java.util.List;
import java.util.Optional;
import ohmtrail.cli.casefile.CaseFile;
import ohmtrail.cli.casefile.CaseFileException;
import ohmtrail.cli.casefile.CaseFileReader;
import ohmtrail.cli.casefile.CaseText;
import ohmtrail.cli.terminal.Lines;
import org.junit.jupiter.api.Test;

/** A session on a run of which nobody knows what feeds what. */
class MapWalkTest {
  private static final String ROOM =
      """
      # three outlets
      breaker: 15 A
      cable: 14 AWG
      boxes:
        - piano   # black
        - window
        - sofa
      meters:
        high: 10 Mohm
      loads:
        heater: 1500 W
      """;

  private static final class Memory implements CaseStore {
    private final List<String> kept = new ArrayList<>();

    @Override
    public String save(String text) {
      kept.add(text);
      return "";
    }

    @Override
    public String setAside(String text) {
      return "aside.yaml";
    }

    @Override
    public String name() {
      return "room.yaml";
    }

    String last() {
      return kept.get(kept.size() - 1);
    }
  }

  private final Memory memory = new Memory();
  private String said = "";

  /** Leads a session whose lines are typed in advance. */
  private void session(Optional<String> text, String... typed)
      throws IOException, CaseFileException {
    Deque<String> pending = new ArrayDeque<>(Arrays.asList(typed));
    Lines lines =
        new Lines() {
          @Override
          public Optional<String> read(String prompt) {
            return Optional.ofNullable(pending.poll());
          }

          @Override
          public int width() {
            return 60;
          }
        };
    Optional<CaseFile> caseFile =
        text.isPresent()
            ? Optional.of(new CaseFileReader().read("room", text.get()))
            : Optional.empty();
    StringWriter out = new StringWriter();
    Walk.run(
        caseFile,
        text.map(each -> CaseText.of("room", each)).orElseGet(CaseText::unwritten),
        "room",
        lines,
        new PrintWriter(out),
        memory,
        () -> LocalDateTime.parse("2026-03-14T10:32:07"));
    said = out.toString().replaceAll("\\s+", " ");
    assertTrue(pending.isEmpty(), "never asked for: " + pending + "\n" + out);
  }

  private CaseFile kept() throws CaseFileException {
    return new CaseFileReader().read("room", memory.last());
  }

  @Test
  void fromNothingTheNamesOfTheOutletsAreEnough() throws IOException, CaseFileException {
    session(
        Optional.empty(),
        "dims",
        "",
        "",
        "",
        "",
        "don't know",
        "window, sofa",
        "piano: last",
        "",
        "no",
        "",
        "",
        "quit");
    CaseFile kept = kept();
    assertEquals(3, kept.unknown().orElseThrow().outlets().size());
    assertFalse(said.contains("cable to it, such as hall-2"), said);
    assertTrue(said.contains("At which outlet is the heater plugged in?"), said);
  }

  @Test
  void everyReadingIsKeptAndTheMapSaidAtTheEndOfAWalk() throws IOException, CaseFileException {
    session(Optional.of(ROOM), "piano", "116.2", "118.0", "skip", "quit");
    CaseFile kept = kept();
    assertEquals(1, kept.survey().tests().size());
    assertEquals(2, kept.survey().readingCount());
    assertTrue(memory.last().startsWith("# three outlets"), memory.last());
    assertTrue(said.contains("boxes is settled"), said);
    assertTrue(said.contains("A second person stands at it"), said);
  }

  /** The readings are those of window, sofa and piano in that order, 30, 13 and 12 ft of cable. */
  @Test
  void aSettledMapGoesIntoTheCaseAndTheSearchGoesOn() throws IOException, CaseFileException {
    session(
        Optional.of(ROOM),
        "piano",
        "116.2",
        "118.0",
        "117.1",
        "WINDOW",
        "118.1",
        "118.1",
        "118.0",
        "quit");
    assertTrue(said.contains("The map is settled: the search goes on with it."), said);
    CaseFile kept = kept();
    assertTrue(kept.unknown().isEmpty(), memory.last());
    assertEquals(
        List.of("panel", "window", "sofa"),
        kept.circuit().pathTo("piano").stream().map(cable -> cable.from()).toList());
    assertEquals(2, kept.survey().tests().size());
    assertTrue(memory.last().contains("- piano: from sofa   # black"), memory.last());
  }

  @Test
  void anotherLoadIsSaidWithItsPlace() throws IOException, CaseFileException {
    session(Optional.of(ROOM), "100 W at sofa", "119.9", "enough", "quit");
    assertEquals("100 W", kept().survey().tests().get(0).loads().get(0).load());
  }

  @Test
  void whatIsNoOutletAndNoNumberIsRefusedWithTheNearest() throws IOException, CaseFileException {
    session(Optional.of(ROOM), "pinao", "lamp at nowhere", "sofa", "banana", "undo", "quit");
    assertTrue(said.contains("Maybe piano was meant."), said);
    assertTrue(said.contains("Taken back."), said);
    assertEquals(0, kept().survey().readingCount());
  }
}
