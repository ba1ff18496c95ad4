package ohmtrail.slip;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.stream.LongStream;
import ohmtrail.locate.Diagnosis;
import ohmtrail.locate.Locator;
import ohmtrail.locate.RankedBox;
import ohmtrail.practice.Population;
import ohmtrail.practice.Practice;
import ohmtrail.practice.PracticeCase;
import ohmtrail.reference.Assumptions;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * A few circuits of each kind of slip, drawn with a fixed seed by code that knows nothing of how
 * slips are weighed. The larger samples are scored.
 */
class AveragedLocatorTest {
  private static final long SEED = 1301;
  private static final int CASES = 4;
  private static final double CERTAIN = 1e-6;

  private static List<PracticeCase> cases(String population) {
    Practice practice =
        new Practice(Population.named(population).orElseThrow(), Assumptions.defaults(), SEED);
    return LongStream.range(0, CASES).mapToObj(practice::caseOf).toList();
  }

  private static Diagnosis locate(PracticeCase drawn) {
    return new AveragedLocator().locate(drawn.problem());
  }

  /** One of them may be a step before the last test, which reads like a heater on low. */
  @ParameterizedTest
  @CsvSource({
    "heater-never-on, load-did-not-draw",
    "sound-heater-never-on, load-did-not-draw",
    "sound-supply-step, supply-moved",
    "no-supply, no-supply"
  })
  void whatWasSlippedOnIsSaidFirst(String population, String kind) {
    long named =
        cases(population).stream()
            .map(drawn -> locate(drawn).likelySlip())
            .filter(likely -> likely.filter(it -> it.slip().kind().equals(kind)).isPresent())
            .count();

    assertTrue(named >= CASES - 1, population + ": " + named + ", seed " + SEED);
  }

  @ParameterizedTest
  @ValueSource(strings = {"loose", "healthy"})
  void noSlipIsClaimedWhereNoneWasMade(String population) {
    for (PracticeCase drawn : cases(population)) {
      assertTrue(locate(drawn).likelySlip().isEmpty(), population + ", seed " + SEED);
    }
  }

  @ParameterizedTest
  @ValueSource(strings = {"supply-step", "boxes-swapped"})
  void probabilitiesAreSumsOverWhatMayHaveBeen(String population) {
    for (PracticeCase drawn : cases(population)) {
      Diagnosis diagnosis = locate(drawn);
      double several = diagnosis.severalProbability();
      double boxes = diagnosis.boxes().stream().mapToDouble(RankedBox::probability).sum();
      double rest = diagnosis.healthyProbability() + diagnosis.unexplainedProbability();
      assertTrue(boxes + rest > 1 - several - 1e-3, population + ", seed " + SEED);
      assertTrue(
          diagnosis.boxes().stream().allMatch(box -> box.probability() <= 1 + CERTAIN),
          population + ", seed " + SEED);
      assertEquals(
          new Locator().locate(drawn.problem()).readings().size(), diagnosis.readings().size());
      assertEquals(
          new Locator().locate(drawn.problem()).bestPoint().size(), diagnosis.bestPoint().size());
    }
  }
}
