package ohmtrail.cli.casefile;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.stream.IntStream;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import ohmtrail.circuit.Box;
import ohmtrail.circuit.BoxKind;
import ohmtrail.circuit.Cable;
import ohmtrail.map.known.Hint;
import ohmtrail.map.known.MapProblem;
import ohmtrail.map.known.Outlet;
import ohmtrail.map.known.PlanPoint;
import ohmtrail.map.known.StraightDistance;
import ohmtrail.map.known.UnknownRun;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** What is known of which box feeds which, and no more, is said in a case file. */
class UnknownRunCaseTest {
  private static UnknownRun run(String text) throws CaseFileException {
    return CaseFiles.read(text).unknown().orElseThrow();
  }

  private static Outlet outlet(String name, UnknownRun run) {
    return run.outlet(name).orElseThrow();
  }

  @Test
  void tenOutletsOfUnknownOrderAreElevenLines() throws CaseFileException {
    StringBuilder text = new StringBuilder("boxes:\n");
    IntStream.rangeClosed(1, 10).forEach(number -> text.append("  - outlet " + number + "\n"));
    assertEquals(11, text.toString().lines().count());
    UnknownRun run = run(text.toString());
    assertEquals(10, run.outlets().size());
    for (Outlet outlet : run.outlets()) {
      assertEquals(Outlet.unknown(outlet.box()), outlet);
      assertEquals(BoxKind.RECEPTACLE, outlet.box().kind());
    }
    assertEquals(Box.panel("panel"), run.panel());
    assertEquals(0, run.mayHide());
  }

  @Test
  void aRunWithoutAWordOfWhatIsUnknownLeavesNothingOpen() throws CaseFileException {
    CaseFile read =
        CaseFiles.read(
            """
            run:
              - panel
              - hall: receptacle 32 ft
              - bed: receptacle ? ft
              - den: receptacle 9 ft from hall
            """);
    assertEquals(Optional.empty(), read.unknown());
    assertEquals(Optional.empty(), read.mapProblem());
    assertEquals("hall", read.circuit().pathTo("bed").get(1).from());
  }

  @Test
  void unknownBoxesStandBesideKnownOnes() throws CaseFileException {
    UnknownRun run =
        run(
            """
            run:
              - main: panel plan 0 m 1.5 m
              - hall: receptacle 32 ft
              - bed: receptacle from ?
              - bed-2: receptacle 6 ft
            boxes:
              - den
              - attic: junction from bed 3 m
            """);
    assertEquals("main", run.panel().name());
    assertEquals(Optional.of(new PlanPoint(0, 1.5)), run.panelPlace());
    Cable toHall = outlet("hall", run).fedBy().orElseThrow();
    assertEquals("main", toHall.from());
    assertEquals(OptionalDouble.of(9.7536), toHall.lengthMetres());
    assertEquals(Optional.empty(), outlet("bed", run).fedBy());
    assertEquals("bed", outlet("bed-2", run).fedBy().orElseThrow().from());
    assertEquals(Optional.empty(), outlet("den", run).fedBy());
    assertEquals("bed", outlet("attic", run).fedBy().orElseThrow().from());
  }

  @ParameterizedTest
  @ValueSource(strings = {"from ?", "from unknown", "from don't know", "from not sure"})
  void nobodyKnowsIsSaidOfAFeederAsOfAnythingElse(String words) throws CaseFileException {
    assertEquals(
        Optional.empty(),
        outlet("b", run("run:\n  - panel\n  - a: outlet\n  - b: outlet " + words + "\n")).fedBy());
  }

  @Test
  void whatIsHalfKnownIsSaidInAFewWords() throws CaseFileException {
    UnknownRun run =
        run(
            """
            boxes:
              - hall: first
              - sofa: after hall, next to piano and tv, not next to door
              - piano: from hall or sofa
              - tv: {from: panel or hall, order: last not beside sofa}
              - door: plan 3.2 m 4.5 m perhaps elsewhere
              - lamp: went dark, straight 4 m to door
              - porch: stayed live
            hidden: 2
            """);
    assertEquals(List.of(new Hint.First()), outlet("hall", run).hints());
    assertEquals(
        List.of(
            new Hint.After("hall"),
            new Hint.NextTo("piano"),
            new Hint.NextTo("tv"),
            new Hint.NotNextTo("door")),
        outlet("sofa", run).hints());
    assertEquals(
        List.of(new Hint.FedByOneOf(List.of("hall", "sofa"))), outlet("piano", run).hints());
    assertEquals(
        List.of(
            new Hint.Last(),
            new Hint.FedByOneOf(List.of("panel", "hall")),
            new Hint.NotNextTo("sofa")),
        outlet("tv", run).hints());
    assertTrue(outlet("door", run).mayBeForeign());
    assertEquals(Optional.of(new PlanPoint(3.2, 4.5)), outlet("door", run).place());
    assertEquals(List.of(new Hint.OnThisCircuit()), outlet("lamp", run).hints());
    assertEquals(List.of(new Hint.OnAnotherCircuit()), outlet("porch", run).hints());
    assertTrue(outlet("porch", run).mayBeForeign());
    assertEquals(List.of(new StraightDistance("lamp", "door", 4)), run.distances());
    assertEquals(2, run.mayHide());
  }

  @Test
  void theFirstBoxMayHaveACableOfItsOwn() throws CaseFileException {
    Outlet hall = outlet("hall", run("boxes:\n  - hall: first 32 ft\n  - den\n"));
    assertEquals("panel", hall.fedBy().orElseThrow().from());
    assertEquals(OptionalDouble.of(9.7536), hall.fedBy().orElseThrow().lengthMetres());
  }

  @Test
  void readingsNameBoxesWhoseFeederNobodyKnows() throws CaseFileException {
    CaseFile read =
        CaseFiles.read(
            """
            boxes: [hall, stair light end, den]
            tests:
              - 1500 W at stair light end:
                  - hall hot-neutral 118.2 high
                  - stair light end hot-neutral 116.0 high
            """);
    MapProblem problem = read.mapProblem().orElseThrow();
    assertEquals(2, problem.survey().readingCount());
    assertEquals(3, problem.run().outlets().size());
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "- b: after hal|Box (hal) must be one of panel, hall, b.|hall was meant.",
        "- b: from hall or dn|Box (dn) must be one of|",
        "- b: first from hall|Box (b) must be the first, or fed from another; not both.|",
        "- b: 4 m|Cable to box (b) must not be described: nobody knows where it comes from.|"
            + "a straight distance was meant",
        "- b: plan 4 m|Word (plan) must be followed by two lengths, across and up.|",
        "- b: straight 4 m|Word (straight) must be followed by a length and the box|",
        "- b: straight 4 m to b|Distance from box (b) must be to another box.|",
        "- b: next to|Word (next to) must be followed by the name of a box.|",
        "- b: lsat|Word (lsat) must be one of|last was meant.",
        "- b last|Run entry (b last) must have a colon behind the name of the box.|",
        "- b: perhaps elsewhere from hall|must not be fed from a box of this run and be on another|",
        "- hall|Box name (hall) must be given to one box only|",
        "- b: after b|Box (b) must be set against another box, not against itself.|",
      })
  void whatCannotBeIsRefusedWhereItStands(String entry, String rule, String maybe) {
    List<String> problems =
        CaseFiles.problems("run:\n  - panel\n  - hall: receptacle\nboxes:\n  " + entry + "\n");
    String all = String.join("\n", problems);
    assertTrue(all.contains(rule), all);
    assertTrue(maybe == null || all.contains(maybe), all);
    assertTrue(all.startsWith("5:"), all);
  }

  @ParameterizedTest
  @ValueSource(strings = {"3", "-1", "some", "1.5"})
  void moreHiddenBoxesThanAreLookedForAreRefused(String hidden) {
    String all = CaseFiles.problems("boxes: [a, b]\nhidden: " + hidden + "\n").toString();
    assertTrue(
        all.contains("Key (hidden) must be the most boxes that nobody has seen: 0, 1, 2"), all);
  }

  @Test
  void aRingIsNoRunOfUnknownOrder() {
    String all =
        CaseFiles.problems(
                "run:\n  - panel\n  - a: outlet\n  - b: outlet\n  - panel: from b\nboxes: [c]\n")
            .toString();
    assertTrue(all.contains("must hold no ring"), all);
  }

  /** Two boxes that are fed by each other are fed by nobody. */
  @Test
  void boxesThatGoRoundInACircleAreRefused() {
    String all = CaseFiles.problems("boxes:\n  - a: from b\n  - b: from a\n  - c\n").toString();
    assertTrue(all.contains("must be reached from the panel"), all);
  }

  @Property(tries = 300)
  void whateverIsKnownOfARunReadsBackAsItWasWritten(@ForAll long seed) throws CaseFileException {
    String text = drawn(new Random(seed));
    CaseFile read = CaseFiles.read(text);
    String written = new CaseFileWriter().write(read);
    CaseFile again = CaseFiles.read(written);
    String which = "seed " + seed + ":\n" + text + "\nwritten:\n" + written;
    assertEquals(read.unknown(), again.unknown(), which);
    assertEquals(read.circuit(), again.circuit(), which);
    assertEquals(written, new CaseFileWriter().write(again), which);
  }

  /** A run of a few boxes with something said of some of them. */
  private static String drawn(Random random) {
    List<String> names = List.of("hall", "sofa left", "tv-1", "den", "first floor", "to do");
    StringBuilder text = new StringBuilder("supply: " + (random.nextBoolean() ? "230" : "120"));
    text.append(" V\nboxes:\n  - zero\n");
    for (int box = 0; box < names.size(); box++) {
      List<String> words = new ArrayList<>();
      String other = box == 0 ? "zero" : names.get(random.nextInt(box));
      if (random.nextInt(4) == 0) {
        words.add(random.nextBoolean() ? "junction" : "receptacle pigtail");
      }
      switch (random.nextInt(6)) {
        case 0 -> words.add("from " + other + (random.nextBoolean() ? " or zero" : " 4 m"));
        case 1 -> words.add("after " + other);
        case 2 -> words.add("next to " + other);
        case 3 -> words.add("perhaps elsewhere");
        case 4 -> words.add("first");
        default -> words.add("not next to " + other + " and zero");
      }
      if (random.nextInt(3) == 0) {
        words.add("plan " + random.nextInt(9) + " ft " + random.nextInt(9) + ".5 ft");
      }
      if (random.nextInt(3) == 0) {
        words.add("straight 3 m to " + other);
      }
      text.append("  - " + names.get(box) + ": " + String.join(" ", words) + "\n");
    }
    return text + "hidden: " + random.nextInt(3) + "\n";
  }
}
