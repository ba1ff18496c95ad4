package ohmtrail.locate;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.List;
import java.util.stream.IntStream;
import ohmtrail.circuit.Circuit;
import ohmtrail.predict.Degradation;
import ohmtrail.predict.Evaluation;
import ohmtrail.predict.Parameters;
import ohmtrail.predict.SurveyModel;
import ohmtrail.reference.Assumption;
import ohmtrail.reference.Assumptions;
import ohmtrail.survey.Survey;

/**
 * The best fit of one hypothesis: ohms (on a logarithmic scale) and every parameter at once, by
 * weighted least squares with the tolerances as prior rows. The drift of each test is integrated
 * out: its readings are whitened with their common part.
 */
final class HypothesisFit {
  private static final double COST_TOLERANCE = 1e-4;
  private static final double PARAMETER_TOLERANCE = 1e-3;

  /** A start so many standard deviations away is looked at before it is taken. */
  private static final double FAR_START = 5;

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
  private final double instability;

  /**
   * How loosely the logarithms of the ohms are held to where they start: ohms that no reading feels
   * would else be sent anywhere by a step.
   */
  private final double rangeOfLogOhms;

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
    this.rangeOfLogOhms = Math.log(prior.high() / prior.low());
    this.instability = assumptions.value(Assumption.UNSTABLE_SPREAD);
  }

  /**
   * Where a fit ended. It keeps its own array.
   *
   * <p>Immutable.
   */
  static final class Result {
    private final List<Degradation> degradations;
    private final double[] point;
    private final boolean converged;

    Result(List<Degradation> degradations, double[] point, boolean converged) {
      this.degradations = List.copyOf(degradations);
      this.point = point;
      this.converged = converged;
    }

    /** The degraded joints with their fitted ohms; empty for a healthy circuit. */
    List<Degradation> degradations() {
      return degradations;
    }

    /** The ohms of the first degraded joint; zero for a healthy circuit. */
    double ohms() {
      return degradations.isEmpty() ? 0 : degradations.get(0).ohms();
    }

    /** u of every parameter. */
    double[] point() {
      return point.clone();
    }

    boolean converged() {
      return converged;
    }
  }

  /**
   * Fits a hypothesis.
   *
   * @param start the degraded joints with the ohms to start from, those that are infinite stay so;
   *     empty for a healthy circuit
   * @param startMean where the parameters start, one per active parameter
   * @param leftOut readings to leave out
   */
  Result fit(List<Degradation> start, double[] startMean, BitSet leftOut) {
    return run(new Problem(start, finite(start), leftOut), startMean);
  }

  /** The same with the ohms held where they are: the parameters alone are fitted. */
  Result fitParameters(List<Degradation> held, BitSet leftOut) {
    return run(new Problem(held, List.of(), leftOut), new double[active.length]);
  }

  private static List<Integer> finite(List<Degradation> start) {
    return IntStream.range(0, start.size())
        .filter(d -> Double.isFinite(start.get(d).ohms()))
        .boxed()
        .toList();
  }

  /**
   * Where parameters are sent far by a linearised model, that may have led them astray: then they
   * start where everything is as stated, if the readings are nearer to that.
   */
  private double[] nearer(Problem problem, double[] startMean) {
    double[] stated = new double[active.length];
    boolean isFar = Linearised.distance(startMean, stated) > FAR_START;
    return isFar && problem.cost(startMean) > problem.cost(stated) ? stated : startMean;
  }

  private Result run(Problem problem, double[] startMean) {
    WeightedLeastSquares.Fit fit =
        new WeightedLeastSquares(COST_TOLERANCE, PARAMETER_TOLERANCE)
            .fit(problem, problem.start(nearer(problem, startMean)));
    double[] end = fit.point().toArray();
    return new Result(problem.degradations(end), problem.point(end), fit.converged());
  }

  /** The same, the parameters from where everything is as stated. */
  Result fit(List<Degradation> start, BitSet leftOut) {
    return fit(start, new double[active.length], leftOut);
  }

  private final class Problem implements WeightedLeastSquares.Model {
    private final List<Degradation> start;
    private final BitSet leftOut;

    /** The degradations whose ohms are fitted. */
    private final List<Integer> free;

    /** Those of them that are one joint under another current: their ohms are tied. */
    private final List<Integer> tied = new ArrayList<>();

    Problem(List<Degradation> start, List<Integer> free, BitSet leftOut) {
      this.start = List.copyOf(start);
      this.free = List.copyOf(free);
      this.leftOut = leftOut;
      for (int f = 1; f < free.size(); f++) {
        if (jointOf(f).equals(jointOf(f - 1))) {
          tied.add(f);
        }
      }
    }

    private String jointOf(int freePlace) {
      return start.get(free.get(freePlace)).joint();
    }

    int columns() {
      return active.length + free.size();
    }

    double[] start(double[] startMean) {
      double[] values = Arrays.copyOf(startMean, columns());
      for (int f = 0; f < free.size(); f++) {
        values[active.length + f] = logStart(f);
      }
      return values;
    }

    /** The sum of squares where the parameters are these and the ohms as at the start. */
    double cost(double[] mean) {
      double[] residuals = new double[rows()];
      evaluate(start(mean), residuals, new double[rows()][columns()]);
      return Arrays.stream(residuals).map(residual -> residual * residual).sum();
    }

    private double logStart(int freePlace) {
      return Math.log(start.get(free.get(freePlace)).ohms());
    }

    List<Degradation> degradations(double[] values) {
      List<Degradation> result = new ArrayList<>(start);
      for (int f = 0; f < free.size(); f++) {
        double ohms = Math.exp(values[active.length + f]);
        double bounded = Math.min(highestOhms, Math.max(lowestOhms, ohms));
        result.set(free.get(f), start.get(free.get(f)).withOhms(bounded));
      }
      return result;
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
      return observations.count()
          + active.length
          + tied.size()
          + free.size()
          + observations.trips().count();
    }

    @Override
    public void evaluate(double[] values, double[] residuals, double[][] jacobian) {
      List<Degradation> degradations = degradations(values);
      SurveyModel model =
          SurveyModel.of(
              circuit, survey, assumptions, parameters, point(values), List.of(), degradations);
      Evaluation evaluation = model.buffer();
      model.evaluate(evaluation);
      double[][] slopes = new double[free.size()][observations.count()];
      for (int f = 0; f < free.size(); f++) {
        model.ohmsSlope(degradations.get(free.get(f)), slopes[f]);
      }
      fillReadings(evaluation, slopes, residuals, jacobian);
      int row = observations.count();
      if (model.watched().isPresent()) {
        row = fillTrips(model.watched().get(), degradations, row, residuals, jacobian);
      }
      for (int c = 0; c < active.length; c++) {
        residuals[row] = -values[c];
        jacobian[row++][c] = 1;
      }
      for (int f : tied) {
        int column = active.length + f;
        residuals[row] = -(values[column] - values[column - 1]) / instability;
        jacobian[row][column] = 1 / instability;
        jacobian[row++][column - 1] = -1 / instability;
      }
      for (int f = 0; f < free.size(); f++) {
        int column = active.length + f;
        residuals[row] = (logStart(f) - values[column]) / rangeOfLogOhms;
        jacobian[row++][column] = 1 / rangeOfLogOhms;
      }
    }

    /**
     * What a GFCI or RCD did as one more residual: the square root of -2 ln p, so that the sum of
     * squares is that of all the logarithms.
     *
     * @return the row after the last one
     */
    private int fillTrips(
        SurveyModel devices,
        List<Degradation> degradations,
        int from,
        double[] residuals,
        double[][] jacobian) {
      Evaluation seen = devices.buffer();
      devices.evaluate(seen);
      double[][] slopes = new double[free.size()][seen.readings()];
      for (int f = 0; f < free.size(); f++) {
        devices.ohmsSlope(degradations.get(free.get(f)), slopes[f]);
      }
      for (int t = 0; t < seen.readings(); t++) {
        TripEvidence.Told told = observations.trips().told(t, seen.volts()[t], 0);
        double residual = Math.sqrt(-2 * Math.min(0, told.logProbability()));
        double perAmpere = residual > 0 ? told.slope() / residual : 0;
        residuals[from + t] = residual;
        for (int c = 0; c < active.length; c++) {
          jacobian[from + t][c] = perAmpere * seen.jacobian()[t * seen.parameters() + active[c]];
        }
        for (int f = 0; f < slopes.length; f++) {
          jacobian[from + t][active.length + f] = perAmpere * slopes[f][t];
        }
      }
      return from + seen.readings();
    }

    private void fillReadings(
        Evaluation evaluation, double[][] slopes, double[] residuals, double[][] jacobian) {
      int all = evaluation.parameters();
      for (int r = 0; r < observations.count(); r++) {
        double scale = leftOut.get(r) ? 0 : 1 / Math.sqrt(observations.variance(r));
        residuals[r] = scale * (observations.value(r) - evaluation.volts()[r]);
        for (int c = 0; c < active.length; c++) {
          jacobian[r][c] = scale * evaluation.jacobian()[r * all + active[c]];
        }
        for (int f = 0; f < slopes.length; f++) {
          jacobian[r][active.length + f] = scale * slopes[f][r];
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
          : observations.driftSigma(reading)
              * observations.value(reading)
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
