package ohmtrail.report.casebook;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Random;
import ohmtrail.circuit.JointKind;
import ohmtrail.report.casebook.ClosedCase.Failure;
import org.junit.jupiter.api.Test;

class FailureRatesTest {
  private static final Map<JointKind, Double> HALF =
      Map.of(JointKind.SCREW, 6.0, JointKind.PUSH_IN, 4.0);

  private static FailureRates.Rate rate(FailureRates rates, JointKind kind) {
    return rates.rates().stream().filter(each -> each.kind() == kind).findFirst().orElseThrow();
  }

  private static List<Failure> failures(int pushIns, int screws) {
    List<Failure> failures = new ArrayList<>();
    failures.addAll(
        Collections.nCopies(pushIns, new Failure(HALF, Map.of(JointKind.PUSH_IN, 1.0))));
    failures.addAll(Collections.nCopies(screws, new Failure(HALF, Map.of(JointKind.SCREW, 1.0))));
    return failures;
  }

  /**
   * With one unknown weight the posterior is prior times w^n / (6 + 4 w)^N: integrated here by the
   * trapezium rule, without the sampler.
   */
  @Test
  void theDrawsAgreeWithThePosteriorIntegratedDirectly() {
    int pushIns = 30;
    int screws = 10;
    double strength = 4;
    FailureRates.Rate learned =
        rate(FailureRates.learned(failures(pushIns, screws), strength, 1), JointKind.PUSH_IN);

    double step = 0.001;
    double sum = 0;
    double first = 0;
    List<double[]> cumulated = new ArrayList<>();
    for (double w = step; w < 40; w += step) {
      double log =
          (strength - 1 + pushIns) * Math.log(w)
              - strength * w / learned.assumed()
              - (pushIns + screws) * Math.log(6 + 4 * w);
      double density = Math.exp(log + 60);
      sum += density;
      first += density * w;
      cumulated.add(new double[] {w, sum});
    }
    double total = sum;
    assertEquals(first / sum, learned.mean(), 0.02 * learned.mean());
    assertEquals(quantile(cumulated, 0.05 * total), learned.low(), 0.05 * learned.mean());
    assertEquals(quantile(cumulated, 0.95 * total), learned.high(), 0.08 * learned.mean());
    assertEquals(pushIns, learned.failures(), 1e-9);
    assertEquals(40 * 4, learned.joints(), 1e-9);
  }

  private static double quantile(List<double[]> cumulated, double mass) {
    return cumulated.stream().filter(each -> each[1] >= mass).findFirst().orElseThrow()[0];
  }

  @Test
  void withoutAFailureThePriorStands() {
    Failure ofScrew =
        new Failure(
            Map.of(JointKind.SCREW, 10.0, JointKind.LUG, 1e-12), Map.of(JointKind.SCREW, 1.0));
    FailureRates.Rate lug = rate(FailureRates.learned(List.of(ofScrew), 4, 7), JointKind.LUG);
    // A gamma distribution of shape 4: its 5 % and 95 % points are 0.342 and 1.938 means
    // (chi-squared with 8 degrees of freedom: 2.733 and 15.507, standard tables).
    assertEquals(lug.assumed(), lug.mean(), 0.06 * lug.assumed());
    assertEquals(2.733 / 8 * lug.assumed(), lug.low(), 0.05 * lug.assumed());
    assertEquals(15.507 / 8 * lug.assumed(), lug.high(), 0.1 * lug.assumed());
  }

  @Test
  void theScrewIsTheMeasureAndAStrongerPriorMovesLess() {
    FailureRates weak = FailureRates.learned(failures(60, 5), 1, 3);
    FailureRates strong = FailureRates.learned(failures(60, 5), 400, 3);
    assertEquals(1, rate(weak, JointKind.SCREW).low());
    assertEquals(1, rate(weak, JointKind.SCREW).high());
    assertTrue(rate(weak, JointKind.PUSH_IN).mean() > rate(strong, JointKind.PUSH_IN).mean());
    assertEquals(3, rate(strong, JointKind.PUSH_IN).mean(), 0.5);
  }

  @Test
  void whereTheReadingsLeaveTheKindOpenTheRatesDecide() {
    Failure open = new Failure(HALF, Map.of(JointKind.SCREW, 1.0, JointKind.PUSH_IN, 1.0));
    FailureRates rates = FailureRates.learned(Collections.nCopies(200, open), 1000, 5);
    // Three to one by today's weights, which so strong a prior holds.
    assertEquals(150, rate(rates, JointKind.PUSH_IN).failures(), 4);
  }

  /** Calibration: of intervals of 90 %, nine in ten hold the weight that the failures came from. */
  @Test
  void theIntervalsKeepTheirWord() {
    long seed = 20261127;
    Random random = new Random(seed);
    int held = 0;
    int runs = 200;
    for (int run = 0; run < runs; run++) {
      double truth = gammaOfShapeFour(random) * 3 / 4;
      double share = 4 * truth / (6 + 4 * truth);
      int pushIns = 0;
      for (int f = 0; f < 40; f++) {
        pushIns += random.nextDouble() < share ? 1 : 0;
      }
      FailureRates.Rate learned =
          rate(FailureRates.learned(failures(pushIns, 40 - pushIns), 4, run), JointKind.PUSH_IN);
      held += truth >= learned.low() && truth <= learned.high() ? 1 : 0;
    }
    // Binomial, 200 of 0.9: standard deviation 4.2; three of them either way.
    assertEquals(180, held, 13, "seed " + seed);
  }

  /** The sum of four exponential waiting times. */
  private static double gammaOfShapeFour(Random random) {
    double sum = 0;
    for (int i = 0; i < 4; i++) {
      sum -= Math.log(1 - random.nextDouble());
    }
    return sum;
  }

  @Test
  void aStrengthThatIsNoneIsRefused() {
    for (double strength : new double[] {0, -1, Double.NaN, Double.POSITIVE_INFINITY}) {
      assertThrows(
          IllegalArgumentException.class, () -> FailureRates.learned(List.of(), strength, 1));
    }
  }

  @Test
  void aBookWithoutCasesHasNothingToSay() {
    Casebook empty = Casebook.of(List.of(), 4, 1);
    assertEquals(0, empty.cases());
    assertEquals(0, empty.low());
    assertEquals(1, empty.high());
    assertEquals(List.of(), empty.rates().rates());
  }
}
