package ohmtrail.locate.fit;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.List;
import java.util.stream.IntStream;
import ohmtrail.locate.evidence.Observations;
import ohmtrail.locate.evidence.TripLikelihood;
import ohmtrail.locate.settings.Settings;
import ohmtrail.predict.Degradation;
import ohmtrail.predict.Evaluation;
import ohmtrail.predict.SurveyModel;

/**
 * The best fit of one hypothesis: ohms (on a logarithmic scale) and every parameter at once, by
 * weighted least squares with the tolerances as prior rows. The drift of each test is integrated
 * out: its readings are whitened with their common part.
 */
public final class HypothesisFit {
  private final InferenceProblem inference;
  private final List<Integer> active;

  private HypothesisFit(InferenceProblem inference, List<Integer> active) {
    this.inference = inference;
    this.active = List.copyOf(active);
  }

  /**
   * Fits hypotheses of a problem.
   *
   * @param inference the problem
   * @param active places of the parameters that are fitted; the others stay as stated
   */
  public static HypothesisFit of(InferenceProblem inference, List<Integer> active) {
    return new HypothesisFit(inference, active);
  }

  /**
   * Where a fit ended.
   *
   * @param degradations the degraded joints with their fitted ohms; empty for a sound circuit
   * @param parameters u of every parameter
   * @param converged whether the tolerances were met
   */
  public record Result(List<Degradation> degradations, List<Double> parameters, boolean converged) {
    /** Copies the lists. */
    public Result {
      degradations = List.copyOf(degradations);
      parameters = List.copyOf(parameters);
    }

    /** A fit that needed no search. */
    public static Result at(List<Degradation> degradations, double[] point) {
      return new Result(degradations, Arrays.stream(point).boxed().toList(), true);
    }

    /** The ohms of the first degraded joint; zero for a sound circuit. */
    public double ohms() {
      return degradations.isEmpty() ? 0 : degradations.get(0).ohms();
    }

    /** u of every parameter; a new array each time. */
    public double[] point() {
      return parameters.stream().mapToDouble(Double::doubleValue).toArray();
    }
  }

  /**
   * Fits a hypothesis.
   *
   * @param start the degraded joints with the ohms to start from, those that are infinite stay so;
   *     empty for a sound circuit
   * @param startMean where the parameters start, one per active parameter
   * @param leftOut readings to leave out
   */
  public Result fit(List<Degradation> start, double[] startMean, BitSet leftOut) {
    List<Integer> free = finite(start);
    return run(new Residuals(start, free, tied(start, free), leftOut), startMean);
  }

  /** Fits the parameters of a hypothesis alone, the ohms held where they are. */
  public Result fitParameters(List<Degradation> held, BitSet leftOut) {
    return run(new Residuals(held, List.of(), List.of(), leftOut), new double[active.size()]);
  }

  private static List<Integer> finite(List<Degradation> start) {
    return IntStream.range(0, start.size())
        .filter(d -> Double.isFinite(start.get(d).ohms()))
        .boxed()
        .toList();
  }

  private static List<Integer> tied(List<Degradation> start, List<Integer> free) {
    return IntStream.range(1, free.size())
        .filter(f -> start.get(free.get(f)).joint().equals(start.get(free.get(f - 1)).joint()))
        .boxed()
        .toList();
  }

  private int[] places() {
    return active.stream().mapToInt(Integer::intValue).toArray();
  }

  private Settings.Fit settings() {
    return inference.settings().fit();
  }

  private Observations observations() {
    return inference.observations();
  }

  /** How loosely ln R is held to where it starts: ohms that no reading feels would go anywhere. */
  private double rangeOfLogOhms() {
    return inference.ohmsPrior().logRange();
  }

  /**
   * Where parameters are sent far by a linearised model, that may have misled them: then they start
   * where everything is as stated, if the readings are nearer to that.
   */
  private double[] nearer(Residuals residuals, double[] startMean) {
    double[] stated = new double[active.size()];
    boolean isFar = LinearModel.distance(startMean, stated) > settings().farStart();
    return isFar && residuals.cost(startMean) > residuals.cost(stated) ? stated : startMean;
  }

  private Result run(Residuals residuals, double[] startMean) {
    WeightedLeastSquares.Fit fit =
        new WeightedLeastSquares(settings())
            .fit(residuals, residuals.start(nearer(residuals, startMean)));
    double[] end = fit.point().toArray();
    return new Result(
        residuals.degradations(end),
        Arrays.stream(residuals.point(end)).boxed().toList(),
        fit.converged());
  }

  /** Fits a hypothesis, the parameters from where everything is as stated. */
  public Result fit(List<Degradation> start, BitSet leftOut) {
    return fit(start, new double[active.size()], leftOut);
  }

  private final class Residuals implements WeightedLeastSquares.Model {
    private final List<Degradation> start;
    private final BitSet leftOut;

    /** The degradations whose ohms are fitted. */
    private final List<Integer> free;

    /** Those of them that are one joint under another current: their ohms are tied. */
    private final List<Integer> tied;

    private Residuals(
        List<Degradation> start, List<Integer> free, List<Integer> tied, BitSet leftOut) {
      this.start = List.copyOf(start);
      this.free = free;
      this.tied = tied;
      this.leftOut = leftOut;
    }

    int columns() {
      return active.size() + free.size();
    }

    double[] start(double[] startMean) {
      double[] values = Arrays.copyOf(startMean, columns());
      for (int f = 0; f < free.size(); f++) {
        values[active.size() + f] = logStart(f);
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
        double ohms = Math.exp(values[active.size() + f]);
        double bounded =
            Math.min(
                inference.ohmsPrior().high() * settings().beyondOpen(),
                Math.max(inference.ohmsPrior().low(), ohms));
        result.set(free.get(f), start.get(free.get(f)).withOhms(bounded));
      }
      return result;
    }

    double[] point(double[] values) {
      double[] point = inference.parameters().nominalPoint();
      for (int c = 0; c < active.size(); c++) {
        point[active.get(c)] = values[c];
      }
      return point;
    }

    @Override
    public int rows() {
      return observations().count()
          + active.size()
          + tied.size()
          + free.size()
          + observations().trips().count();
    }

    @Override
    public void evaluate(double[] values, double[] residuals, double[][] jacobian) {
      List<Degradation> degradations = degradations(values);
      SurveyModel model = inference.model(point(values), List.of(), degradations);
      Evaluation evaluation = model.buffer(places());
      model.evaluate(evaluation);
      double[][] slopes = new double[free.size()][observations().count()];
      for (int f = 0; f < free.size(); f++) {
        model.ohmsSlope(degradations.get(free.get(f)), slopes[f]);
      }
      fillReadings(evaluation, slopes, residuals, jacobian);
      int row = observations().count();
      if (model.watched().isPresent()) {
        row = fillTrips(model.watched().get(), degradations, row, residuals, jacobian);
      }
      for (int c = 0; c < active.size(); c++) {
        residuals[row] = -values[c];
        jacobian[row++][c] = 1;
      }
      for (int f : tied) {
        int column = active.size() + f;
        residuals[row] = -(values[column] - values[column - 1]) / inference.instability();
        jacobian[row][column] = 1 / inference.instability();
        jacobian[row++][column - 1] = -1 / inference.instability();
      }
      for (int f = 0; f < free.size(); f++) {
        int column = active.size() + f;
        residuals[row] = (logStart(f) - values[column]) / rangeOfLogOhms();
        jacobian[row++][column] = 1 / rangeOfLogOhms();
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
      Evaluation seen = devices.buffer(places());
      devices.evaluate(seen);
      double[][] slopes = new double[free.size()][seen.readings()];
      for (int f = 0; f < free.size(); f++) {
        devices.ohmsSlope(degradations.get(free.get(f)), slopes[f]);
      }
      for (int t = 0; t < seen.readings(); t++) {
        TripLikelihood.Trip trip = observations().trips().at(t, seen.volts()[t], 0);
        double residual = Math.sqrt(-2 * Math.min(0, trip.logProbability()));
        double perAmpere = residual > 0 ? trip.slope() / residual : 0;
        residuals[from + t] = residual;
        for (int c = 0; c < active.size(); c++) {
          jacobian[from + t][c] = perAmpere * seen.jacobian()[t * seen.parameters() + c];
        }
        for (int f = 0; f < slopes.length; f++) {
          jacobian[from + t][active.size() + f] = perAmpere * slopes[f][t];
        }
      }
      return from + seen.readings();
    }

    private void fillReadings(
        Evaluation evaluation, double[][] slopes, double[] residuals, double[][] jacobian) {
      for (int r = 0; r < observations().count(); r++) {
        double scale = leftOut.get(r) ? 0 : 1 / Math.sqrt(observations().variance(r));
        residuals[r] = scale * (observations().value(r) - evaluation.volts()[r]);
        for (int c = 0; c < active.size(); c++) {
          jacobian[r][c] = scale * evaluation.jacobian()[r * active.size() + c];
        }
        for (int f = 0; f < slopes.length; f++) {
          jacobian[r][active.size() + f] = scale * slopes[f][r];
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
      while (from < observations().count()) {
        int to = from;
        double square = 0;
        while (to < observations().count()
            && observations().testOf(to) == observations().testOf(from)) {
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
          : observations().driftSigma(reading)
              * observations().value(reading)
              / Math.sqrt(observations().variance(reading));
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
