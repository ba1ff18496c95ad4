package ohmtrail.practice.exact;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.OptionalDouble;
import ohmtrail.circuit.Joint;
import ohmtrail.locate.OhmsInterval;
import ohmtrail.practice.FaultKind;
import ohmtrail.practice.Population;
import ohmtrail.practice.Practice;
import ohmtrail.practice.PracticeCase;
import ohmtrail.practice.score.Scorer;
import ohmtrail.predict.Degradation;
import ohmtrail.reference.Assumptions;
import org.junit.jupiter.api.Test;

/**
 * The locator's interval for the ohms of the degraded joint against the exact calculation with the
 * same prior, on circuits of two legs and on rings. The truth is drawn from a narrower prior, so
 * how often the interval holds it says little; that both say the same of it says what is asked.
 */
class LocatedOhmsTest {
  private static final long SEED = 2_718_281;
  private static final int CASES = 8;

  /**
   * Of the probability. The exact calculation knows no wrong reading and no strained tolerance, and
   * the locator gives joints that read alike one interval.
   */
  private static final double SAME = 0.025;

  @Test
  void theOhmsOfAJointOnTwoLegsAreThoseOfTheExactCalculation() {
    assertSameOhms("two-leg");
  }

  @Test
  void theOhmsOfAJointInARingAreThoseOfTheExactCalculation() {
    assertSameOhms("ring");
  }

  private static void assertSameOhms(String name) {
    Assumptions assumptions = Assumptions.defaults();
    Practice practice = new Practice(Population.named(name).orElseThrow(), assumptions, SEED);
    for (int number = 0; number < CASES; number++) {
      PracticeCase drawn = practice.caseOf(number);
      Degradation bad = drawn.truth().degraded().get(0);
      OhmsInterval located = Scorer.locate(drawn).suspectOf(bad.joint()).orElseThrow().ohms();
      Joint joint = drawn.circuit().joint(bad.joint()).orElseThrow();
      OhmsPosterior exact =
          new OhmsPosterior(new OracleFit(drawn), joint, FaultKind.asAssumed(assumptions));
      String which = name + " " + number + " of seed " + SEED + ", " + bad + ": " + located;
      boolean twoSided = located.low().isPresent() && located.high().isPresent();
      double tail = (1 - OhmsInterval.USUAL_COVERAGE) / (twoSided ? 2 : 1);
      located.low().ifPresent(low -> assertAt(tail, exact, low, which));
      located.high().ifPresent(high -> assertAt(1 - tail, exact, high, which));
    }
  }

  private static void assertAt(double share, OhmsPosterior exact, double ohms, String which) {
    double least = ohms(exact.quantile(share - SAME));
    double most = ohms(exact.quantile(share + SAME));
    assertTrue(least <= ohms && ohms <= most, which + " not in " + least + " to " + most);
  }

  private static double ohms(OptionalDouble quantile) {
    return quantile.orElse(Double.POSITIVE_INFINITY);
  }
}
