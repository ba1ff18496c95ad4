package ohmtrail.practice.exact;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import ohmtrail.circuit.Joint;
import ohmtrail.practice.CircuitKind;
import ohmtrail.practice.Disturbance;
import ohmtrail.practice.FaultKind;
import ohmtrail.practice.Population;
import ohmtrail.practice.Practice;
import ohmtrail.practice.PracticeCase;
import ohmtrail.practice.SurveyKind;
import ohmtrail.predict.Degradation;
import ohmtrail.reference.Assumption;
import ohmtrail.reference.Assumptions;
import org.ejml.data.DMatrixRMaj;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The evidence against the plain average of the likelihood over draws from the prior. */
class OracleFitTest {
  private static final long SEED = 5;
  private static final int PRIOR_DRAWS = 4000;
  private static final int PAIRS = 300;

  /** With readings as rough as this a fair share of the draws from the prior explains them. */
  private static final double ROUGH_VOLTS = 2;

  /** Fewer draws that count would make the comparison a matter of luck. */
  private static final double LEAST_EFFECTIVE = 200;

  private static final double STANDARD_ERRORS = 5;

  private static PracticeCase drawn(double ohms, Assumptions assumptions) {
    CircuitKind usual = CircuitKind.northAmerican();
    CircuitKind small =
        new CircuitKind(
            usual.shape(), usual.supply(), usual.conductors(), 2, 2, 0, 0, 0.3, 0.5, 2, 12);
    Population population =
        new Population(
            "small",
            small,
            FaultKind.between(ohms, ohms),
            SurveyKind.everyReceptacle(),
            Disturbance.NONE);
    return new Practice(population, assumptions, SEED).caseOf(0);
  }

  private static Joint degraded(PracticeCase practiceCase) {
    Degradation truth = practiceCase.truth().degraded().get(0);
    return practiceCase.circuit().joint(truth.joint()).orElseThrow();
  }

  @ParameterizedTest
  @CsvSource({"0.1, 0.1", "1, 1", "1, 1.1", "40000, 40000", "40000, 30000"})
  void evidenceIsTheMeanLikelihoodOverThePrior(double trueOhms, double triedOhms) {
    Assumptions rough = Assumptions.defaults().with(Assumption.READING_SCATTER, ROUGH_VOLTS);
    PracticeCase practiceCase = drawn(trueOhms, rough);
    Joint joint = degraded(practiceCase);
    OracleFit fit = new OracleFit(practiceCase);
    List<Double> logLikelihoods = new ArrayList<>();
    SplittableRandom random = new SplittableRandom(SEED);
    for (int draw = 0; draw < PRIOR_DRAWS; draw++) {
      DMatrixRMaj point = fit.nominal();
      for (int i = 0; i < point.numRows; i++) {
        point.set(i, 0, random.nextGaussian());
      }
      logLikelihoods.add(logLikelihood(fit.linear(fit.solve(joint, point), triedOhms), point));
    }
    double sum = LogIntegral.logSum(logLikelihoods);
    double squares = LogIntegral.logSum(logLikelihoods.stream().map(each -> 2 * each).toList());
    double effective = Math.exp(2 * sum - squares);
    assertTrue(effective > LEAST_EFFECTIVE, effective + " draws count, seed " + SEED);
    // The readings' own variances hold a normalisation that the cost leaves out.
    double ownLog = -practiceCase.survey().readingCount() * Math.log(2 * Math.PI) / 2;
    for (int r = 0; r < practiceCase.survey().readingCount(); r++) {
      ownLog -= Math.log(variance(practiceCase)) / 2;
    }
    double expected = sum - Math.log(PRIOR_DRAWS) + ownLog;
    double tolerance = STANDARD_ERRORS / Math.sqrt(effective);
    OracleFit.Mode mode =
        fit.mode(point -> fit.solve(joint, point), fit.solve(joint, fit.nominal()), triedOhms);
    ImportanceSampling sampling = new ImportanceSampling(fit, PAIRS, SEED);
    double mended =
        sampling.around(mode, point -> fit.solve(joint, point), triedOhms).logEvidence();
    assertEquals(expected, mended, tolerance, "seed " + SEED);
  }

  /** Both meters are alike. */
  private static double variance(PracticeCase practiceCase) {
    double own = practiceCase.survey().meters().get(0).readingSigma();
    return own * own + ROUGH_VOLTS * ROUGH_VOLTS;
  }

  private static double logLikelihood(OracleFit.Linear linear, DMatrixRMaj point) {
    double prior = 0;
    for (int i = 0; i < point.numRows; i++) {
      prior += point.get(i, 0) * point.get(i, 0) / 2;
    }
    return prior - linear.cost();
  }

  @Test
  void samplingMendsFineReadingsTheSameWhateverTheDraws() {
    PracticeCase practiceCase = drawn(3, Assumptions.defaults());
    Joint joint = degraded(practiceCase);
    OracleFit fit = new OracleFit(practiceCase);
    OracleFit.Solver solver = point -> fit.solve(joint, point);
    OracleFit.Mode mode = fit.mode(solver, solver.at(fit.nominal()), 3);
    ImportanceSampling.Result first = new ImportanceSampling(fit, PAIRS, 1).around(mode, solver, 3);
    ImportanceSampling.Result other = new ImportanceSampling(fit, PAIRS, 2).around(mode, solver, 3);
    double effective = Math.min(first.effectiveShare(), other.effectiveShare()) * 2 * PAIRS;
    assertTrue(effective > 20, effective + " draws count");
    double tolerance = STANDARD_ERRORS * Math.sqrt(2 / effective);
    assertEquals(first.logEvidence(), other.logEvidence(), tolerance);
    // The unknowns lean to one side, so the normal distribution is off by more than nothing.
    assertTrue(Math.abs(first.logEvidence() - mode.logEvidence()) > 0.01);
  }

  @Test
  void theModeIsWhereTheSlopesHold() {
    PracticeCase practiceCase = drawn(3, Assumptions.defaults());
    Joint joint = degraded(practiceCase);
    OracleFit fit = new OracleFit(practiceCase);
    for (double ohms : new double[] {2, 2.8, 3, 4}) {
      OracleFit.Mode mode =
          fit.mode(point -> fit.solve(joint, point), fit.solve(joint, fit.nominal()), ohms);
      OracleFit.Linear linear = fit.linear(mode.solved(), ohms);
      OracleFit.Linear there = fit.linear(fit.solve(joint, linear.target()), ohms);
      assertTrue(linear.farthestMove() <= 0.1, "at " + ohms + " ohm " + linear.farthestMove());
      assertTrue(there.farthestMove() < 0.5 * linear.farthestMove(), "at " + ohms + " ohm");
    }
  }
}
