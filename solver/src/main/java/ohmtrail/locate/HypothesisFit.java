package ohmtrail.locate;

import java.util.BitSet;
import java.util.List;
import java.util.Optional;
import ohmtrail.circuit.Circuit;
import ohmtrail.circuit.Joint;
import ohmtrail.predict.Evaluation;
import ohmtrail.predict.Parameters;
import ohmtrail.predict.SurveyModel;
import ohmtrail.reference.Assumptions;
import ohmtrail.survey.Survey;

/**
 * The best fit of one hypothesis: ohms (on a logarithmic scale) and every parameter at once, by
 * weighted least squares with the tolerances as prior rows. The drift of each test is integrated
 * out: its readings are whitened with their common part.
 */
final class HypothesisFit {
  private static final double COST_TOLERANCE = 1e-5;
  private static final double PARAMETER_TOLERANCE = 1e-4;

  /** Above this many times the largest degraded ohms a joint is as good as open. */
  private static final double BEYOND_OPEN = 100;

  private final Circuit circuit;
  private final Survey survey;
  private final Assumptions assumptions;
  private final Parameters parameters;
  private final Observations observations;
  private final int[] active;
  private final double lowestOhms;
  private final double highestOhms;

  HypothesisFit(
      Circuit circuit,
      Survey survey,
      Assumptions assumptions,
      Parameters parameters,
      Observations observations,
      int[] active,
      OhmsCurve.Prior prior) {
    this.circuit = circuit;
    this.survey = survey;
    this.assumptions = assumptions;
    this.parameters = parameters;
    this.observations = observations;
    this.active = active.clone();
    this.lowestOhms = prior.low();
    this.highestOhms = prior.high() * BEYOND_OPEN;
  }

  /** Where a fit ended. */
  static final class Result {
    private final double ohms;
    private final double[] point;
    private final boolean converged;

    private Result(double ohms, double[] point, boolean converged) {
      this.ohms = ohms;
      this.point = point;
      this.converged = converged;
    }

    /** The added ohms; zero for a healthy circuit. */
    double ohms() {
      return ohms;
    }

    /** u of every parameter. */
    double[] point() {
      return point.clone();
    }

    boolean converged() {
      return converged;
    }
  }

  /** Fits the healthy circuit. */
  Result healthy(BitSet leftOut) {
    return fit(Optional.empty(), 0, new double[active.length], leftOut);
  }

  /**
   * Fits one degraded joint.
   *
   * @param joint the joint
   * @param startOhms where to start; infinite to keep it open
   * @param startMean where to start, one per active parameter
   * @param leftOut readings to leave out
   */
  Result joint(Joint joint, double startOhms, double[] startMean, BitSet leftOut) {
    return fit(Optional.of(joint), startOhms, startMean, leftOut);
  }

  /**
   * Fits a healthy circuit or one degraded joint, the parameters from where everything is as
   * stated.
   *
   * @param joint the joint; empty for a healthy circuit
   */
  Result fit(Optional<Joint> joint, double startOhms, BitSet leftOut) {
    return fit(joint, startOhms, new double[active.length], leftOut);
  }

  private Result fit(Optional<Joint> joint, double startOhms, double[] startMean, BitSet leftOut) {
    boolean sweeps = joint.isPresent() && Double.isFinite(startOhms);
    Problem problem = new Problem(joint, startOhms, sweeps, leftOut);
    double[] start = new double[problem.columns()];
    System.arraycopy(startMean, 0, start, 0, active.length);
    if (sweeps) {
      start[active.length] = Math.log(startOhms);
    }
    WeightedLeastSquares.Fit fit =
        new WeightedLeastSquares(COST_TOLERANCE, PARAMETER_TOLERANCE).fit(problem, start);
    double[] end = fit.point().toArray();
    return new Result(problem.ohms(end), problem.point(end), fit.converged());
  }

  private final class Problem implements WeightedLeastSquares.Model {
    private final Optional<Joint> joint;
    private final double fixedOhms;
    private final boolean sweeps;
    private final BitSet leftOut;

    Problem(Optional<Joint> joint, double fixedOhms, boolean sweeps, BitSet leftOut) {
      this.joint = joint;
      this.fixedOhms = fixedOhms;
      this.sweeps = sweeps;
      this.leftOut = leftOut;
    }

    int columns() {
      return active.length + (sweeps ? 1 : 0);
    }

    double ohms(double[] values) {
      return sweeps
          ? Math.min(highestOhms, Math.max(lowestOhms, Math.exp(values[active.length])))
          : fixedOhms;
    }

    double[] point(double[] values) {
      double[] point = parameters.nominalPoint();
      for (int c = 0; c < active.length; c++) {
        point[active[c]] = values[c];
      }
      return point;
    }

    @Override
    public int rows() {
      return observations.count() + active.length;
    }

    @Override
    public void evaluate(double[] values, double[] residuals, double[][] jacobian) {
      SurveyModel model =
          SurveyModel.of(
              circuit,
              survey,
              assumptions,
              parameters,
              point(values),
              joint.map(List::of).orElse(List.of()),
              List.of());
      Evaluation evaluation = model.buffer();
      if (joint.isPresent()) {
        model.sweep(joint.get()).evaluate(ohms(values), evaluation);
      } else {
        model.evaluate(evaluation);
      }
      fillReadings(evaluation, residuals, jacobian);
      for (int c = 0; c < active.length; c++) {
        residuals[observations.count() + c] = -values[c];
        jacobian[observations.count() + c][c] = 1;
      }
    }

    private void fillReadings(Evaluation evaluation, double[] residuals, double[][] jacobian) {
      int all = evaluation.parameters();
      for (int r = 0; r < observations.count(); r++) {
        double scale = leftOut.get(r) ? 0 : 1 / Math.sqrt(observations.variance(r));
        residuals[r] = scale * (observations.volts(r) - evaluation.volts()[r]);
        for (int c = 0; c < active.length; c++) {
          jacobian[r][c] = scale * evaluation.jacobian()[r * all + active[c]];
        }
        if (sweeps) {
          jacobian[r][active.length] = scale * evaluation.ohmsSlope()[r];
        }
      }
      whiten(residuals, jacobian);
    }

    /**
     * Takes the common drift out of the readings of each test: (1 + v v')^-1/2 = 1 - g v v' with g
     * = (1 - 1/sqrt(1 + v'v))/v'v. The drift is measured in the readings themselves, so that it
     * does not depend on the fit.
     */
    private void whiten(double[] residuals, double[][] jacobian) {
      int from = 0;
      while (from < observations.count()) {
        int to = from;
        double square = 0;
        while (to < observations.count() && observations.testOf(to) == observations.testOf(from)) {
          square += drift(to) * drift(to);
          to++;
        }
        if (square > 0) {
          double share = (1 - 1 / Math.sqrt(1 + square)) / square;
          whitenTest(from, to, share, residuals, jacobian);
        }
        from = to;
      }
    }

    private double drift(int reading) {
      return leftOut.get(reading)
          ? 0
          : observations.driftSigma()
              * observations.volts(reading)
              / Math.sqrt(observations.variance(reading));
    }

    private void whitenTest(
        int from, int to, double share, double[] residuals, double[][] jacobian) {
      double along = 0;
      double[] alongColumns = new double[columns()];
      for (int r = from; r < to; r++) {
        along += drift(r) * residuals[r];
        for (int c = 0; c < columns(); c++) {
          alongColumns[c] += drift(r) * jacobian[r][c];
        }
      }
      for (int r = from; r < to; r++) {
        double part = share * drift(r);
        residuals[r] -= part * along;
        for (int c = 0; c < columns(); c++) {
          jacobian[r][c] -= part * alongColumns[c];
        }
      }
    }
  }
}
