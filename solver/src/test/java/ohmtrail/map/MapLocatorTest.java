package ohmtrail.map;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** On runs drawn and read by a model of the tests' own. */
class MapLocatorTest {
  private static final double SOUND_PRIOR = 0.3;

  @ParameterizedTest
  @ValueSource(ints = {5, 8})
  void aHeaterAtEveryBoxInTurnTellsTheWholeMap(int boxes) {
    for (long seed : new long[] {41, 42, 43}) {
      DrawnRun run = new DrawnRun(boxes, seed);

      MapReport report = new MapLocator().map(run.problem(run.walks(run.everyBox()), SOUND_PRIOR));

      assertTrue(run.isRight(report.likeliest().map()), "seed " + seed + " " + report.maps());
      assertTrue(report.isSettled(), "seed " + seed);
    }
  }

  @Test
  void withoutAReadingEveryOrderIsAsLikely() {
    DrawnRun run = new DrawnRun(4, 5);

    MapReport report = new MapLocator().map(run.problem(List.of(), SOUND_PRIOR));

    for (BoxFeeders box : report.boxes()) {
      double panel = box.probabilityOf("panel");
      double others = (1 - panel) / 3;
      box.feeders().stream()
          .filter(share -> !share.feeder().equals("panel"))
          .forEach(share -> assertEquals(others, share.probability(), 1e-9));
    }
    assertFalse(report.isSettled());
  }

  @Test
  void boxesBehindTheHeaterReadAlike() {
    DrawnRun run = new DrawnRun(4, 7);
    int first =
        IntStream.rangeClosed(1, 4).filter(box -> run.parents[box] == 0).findFirst().orElseThrow();

    MapReport report = new MapLocator().map(run.problem(run.walks(List.of(first)), SOUND_PRIOR));

    assertEquals(1, report.alike().size(), report.alike().toString());
    assertEquals(3, report.alike().get(0).size(), report.alike().toString());
  }

  @Test
  void aBadJointIsFoundWhicheverWayTheBoxesHangTogether() {
    for (long seed : new long[] {3, 4, 5}) {
      DrawnRun run = new DrawnRun(5, seed).bad(1, 10);

      MapReport report = new MapLocator().map(run.problem(run.walks(run.everyBox()), SOUND_PRIOR));

      BadJoint.Stretch likeliest = report.badJoint().stretches().get(0);
      assertTrue(report.badJoint().soundProbability() < 1e-3, "seed " + seed);
      assertEquals(DrawnRun.name(run.badCable), likeliest.box(), "seed " + seed);
    }
  }
}
