package ohmtrail.locate.fit;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.BitSet;
import java.util.List;
import java.util.stream.IntStream;
import ohmtrail.circuit.Joint;
import ohmtrail.locate.evidence.Observations;
import ohmtrail.locate.settings.Settings;
import ohmtrail.practice.Population;
import ohmtrail.practice.Practice;
import ohmtrail.practice.PracticeCase;
import ohmtrail.predict.Degradation;
import ohmtrail.predict.Parameters;
import ohmtrail.predict.Predictor;
import ohmtrail.reference.Assumptions;
import ohmtrail.survey.Survey;
import ohmtrail.survey.Test;
import org.apache.commons.math3.optim.InitialGuess;
import org.apache.commons.math3.optim.MaxEval;
import org.apache.commons.math3.optim.nonlinear.scalar.GoalType;
import org.apache.commons.math3.optim.nonlinear.scalar.ObjectiveFunction;
import org.apache.commons.math3.optim.nonlinear.scalar.noderiv.PowellOptimizer;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * The fit of a hypothesis against its own definition: the sum of squares, written down again from
 * the predictions alone, has no lower place nearby and none that a search without slopes finds.
 */
class HypothesisFitTest {
  private static final long SEED = 1;

  /** A step that is felt and still within the valley, in units of u or of ln R. */
  private static final double STEP = 0.02;

  /** Squared standard deviations; a thousandth changes no probability by a tenth of a per cent. */
  private static final double LEVEL = 1e-3;

  private static final int MOST_EVALUATIONS = 200_000;

  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3, 4, 5, 6})
  void noStepFromTheFitLowersTheSumOfSquares(long number) {
    Fitted fitted = new Fitted(number);
    double[] end = fitted.fit();
    double least = fitted.sumOfSquares(end);
    for (int i = 0; i < end.length; i++) {
      for (double step : new double[] {-STEP, STEP}) {
        double[] moved = end.clone();
        moved[i] += step;
        double there = fitted.sumOfSquares(moved);
        assertTrue(
            there > least - LEVEL,
            fitted + ": " + there + " beside " + least + " along " + fitted.name(i));
      }
    }
  }

  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3})
  void aSearchWithoutSlopesFindsNothingLower(long number) {
    Fitted fitted = new Fitted(number);
    double least = fitted.sumOfSquares(fitted.fit());
    double found =
        new PowellOptimizer(1e-8, 1e-8)
            .optimize(
                new MaxEval(MOST_EVALUATIONS),
                new ObjectiveFunction(fitted::sumOfSquares),
                GoalType.MINIMIZE,
                new InitialGuess(fitted.start()))
            .getValue();
    assertTrue(least < found + LEVEL, fitted + ": fit " + least + ", search " + found);
  }

  /** The true joint of a practice case, fitted from the true ohms with everything as stated. */
  private static final class Fitted {
    private final long number;
    private final PracticeCase drawn;
    private final Joint joint;
    private final double startOhms;
    private final Parameters parameters;
    private final Predictor predictor;
    private final Observations observations;

    Fitted(long number) {
      this.number = number;
      this.drawn = new Practice(Population.loose(), Assumptions.defaults(), SEED).caseOf(number);
      Degradation truth = drawn.truth().degraded().get(0);
      this.joint = drawn.circuit().joint(truth.joint()).orElseThrow();
      this.startOhms = truth.ohms();
      this.parameters = Parameters.of(drawn.circuit(), drawn.survey(), drawn.assumptions());
      this.predictor = new Predictor(drawn.circuit(), drawn.survey(), drawn.assumptions());
      this.observations = Observations.of(drawn.problem());
    }

    double[] start() {
      double[] start = new double[parameters.size() + 1];
      start[parameters.size()] = Math.log(startOhms);
      return start;
    }

    /** u of every parameter and ln R at the end of the fit. */
    double[] fit() {
      int[] all = IntStream.range(0, parameters.size()).toArray();
      HypothesisFit.Result result =
          HypothesisFit.of(
                  InferenceProblem.of(drawn.problem(), Settings.usual()),
                  Arrays.stream(all).boxed().toList())
              .fit(
                  List.of(new Degradation(joint.id(), startOhms)),
                  new double[all.length],
                  new BitSet());
      assertTrue(result.converged(), this + " did not converge");
      double[] end = new double[all.length + 1];
      System.arraycopy(result.point(), 0, end, 0, all.length);
      end[all.length] = Math.log(result.ohms());
      return end;
    }

    /**
     * Squared distance of the readings, the drift of each test integrated out, plus the squared u:
     * for one test with scaled residuals p and drift v it is p'p - (v'p)2/(1 + v'v).
     */
    double sumOfSquares(double[] values) {
      double[] point = Arrays.copyOf(values, parameters.size());
      double ohms = Math.exp(values[parameters.size()]);
      List<Double> volts = predictor.readings(List.of(new Degradation(joint.id(), ohms)), point);
      double sum = 0;
      for (double u : point) {
        sum += u * u;
      }
      int r = 0;
      Survey survey = drawn.survey();
      for (Test test : survey.tests()) {
        double square = 0;
        double along = 0;
        double driftSquare = 1;
        for (int i = 0; i < test.readings().size(); i++, r++) {
          double sigma = Math.sqrt(observations.variance(r));
          double residual = (observations.value(r) - volts.get(r)) / sigma;
          double drift = observations.driftSigma(r) * observations.value(r) / sigma;
          square += residual * residual;
          along += drift * residual;
          driftSquare += drift * drift;
        }
        sum += square - along * along / driftSquare;
      }
      return sum;
    }

    String name(int place) {
      return place < parameters.size() ? parameters.all().get(place).description() : "ln R";
    }

    @Override
    public String toString() {
      return "seed " + SEED + ", case " + number + ", " + joint.id();
    }
  }
}
