package ohmtrail.advise;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import ohmtrail.circuit.Box;
import ohmtrail.locate.Locator;
import ohmtrail.locate.Posterior;
import ohmtrail.practice.LiveCircuit;
import ohmtrail.practice.Population;
import ohmtrail.practice.Practice;
import ohmtrail.practice.PracticeCase;
import ohmtrail.problem.Problem;
import ohmtrail.reference.Assumptions;
import ohmtrail.survey.LoadInUse;
import ohmtrail.survey.Meter;
import ohmtrail.survey.ProbePoints;
import ohmtrail.survey.Reading;
import ohmtrail.survey.Survey;
import ohmtrail.survey.Test;
import org.apache.commons.math3.distribution.BinomialDistribution;

/** What a reading to come will show, held to readings drawn from circuits as assumed. */
class PredictiveDistributionTest {
  private static final long SEED = 60_117;
  private static final int CIRCUITS = Integer.getInteger("ohmtrail.predictive.circuits", 16);

  /** A run read box after box: whether each next reading was credible, and a mistyped one not. */
  private static final class Tally {
    private int readings;
    private int doubted;
    private int mistyped;
    private int noticed;
  }

  @org.junit.jupiter.api.Test
  void hardlyAnyReadingDrawnFromTheTruthIsDoubted() {
    Tally tally = new Tally();
    for (int number = 0; number < CIRCUITS; number++) {
      walkAlong(number, tally);
    }
    String told =
        tally.doubted
            + " of "
            + tally.readings
            + " doubted, "
            + tally.noticed
            + " of "
            + tally.mistyped
            + " slips noticed, seed "
            + SEED;
    assertTrue(tally.doubted <= most(tally.readings), told);
  }

  /** What one in a hundred readings allows: more are doubted once in about three hundred draws. */
  private static int most(int readings) {
    return new BinomialDistribution(readings, 0.01).inverseCumulativeProbability(0.997);
  }

  private static void walkAlong(int number, Tally tally) {
    PracticeCase drawn =
        new Practice(Population.named("as-assumed").orElseThrow(), Assumptions.defaults(), SEED)
            .caseOf(number);
    LiveCircuit live = new LiveCircuit(drawn, SEED + number);
    Survey survey = live.equipment();
    List<String> boxes =
        drawn.circuit().boxes().stream().filter(Box::hasReceptacle).map(Box::name).toList();
    Meter meter = survey.meters().get(0);
    for (int step = 0; step < 4; step++) {
      String box = boxes.get((number + step * 3) % boxes.size());
      List<LoadInUse> loads =
          step % 2 == 0 ? List.of() : List.of(new LoadInUse(survey.loads().get(0).name(), box));
      Reading blank = new Reading(box, ProbePoints.usual(drawn.circuit(), box), meter.name(), 0);
      Test taken = live.take(new Test("step " + step, loads, List.of(blank)));
      Problem problem = new Problem(drawn.circuit(), survey, drawn.assumptions());
      Posterior posterior = new Locator().posterior(problem);
      PredictiveDistribution predicted =
          PredictiveDistribution.of(problem, posterior, taken.named("to come"));
      double shown = taken.readings().get(0).value();
      tally.readings++;
      tally.doubted += predicted.isCredible(shown) ? 0 : 1;
      double slip = number % 2 == 0 ? shown + 20 : Math.max(0, shown - 30);
      tally.mistyped++;
      tally.noticed += predicted.isCredible(slip) ? 0 : 1;
      List<Test> tests = new ArrayList<>(survey.tests());
      tests.add(taken);
      survey = survey.withTests(tests);
    }
  }
}
