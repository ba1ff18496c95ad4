package ohmtrail.locate;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import ohmtrail.practice.Population;
import ohmtrail.practice.Practice;
import ohmtrail.practice.PracticeCase;
import ohmtrail.predict.Degradation;
import ohmtrail.reference.Assumptions;
import org.junit.jupiter.api.Test;

/** Two joints so bad that no single one comes near the readings. */
class TwoLargeFaultsTest {
  private static final long SEED = 3_141_592;

  /** 27 and 15 ohm, one behind the other. */
  private static final int NUMBER = 74;

  /**
   * A supply stretched a hundredfold, which a linearised model takes to be possible, came nearer to
   * these readings than any single joint: no pair was looked for.
   */
  @Test
  void areFoundThoughAStretchedSupplySeemsNearerThanOneOfThem() {
    PracticeCase drawn =
        new Practice(
                Population.named("two-joints-ground-too").orElseThrow(),
                Assumptions.defaults(),
                SEED)
            .caseOf(NUMBER);
    Diagnosis diagnosis = new Locator().locate(drawn.problem());
    Set<String> bad =
        drawn.truth().degraded().stream()
            .map(Degradation::joint)
            .map(id -> drawn.circuit().joint(id).orElseThrow().box())
            .collect(Collectors.toSet());
    List<String> firstTwo = diagnosis.boxes().stream().limit(2).map(RankedBox::box).toList();
    assertEquals(bad, Set.copyOf(firstTwo));
    assertEquals(2, diagnosis.degradedJoints());
  }
}
