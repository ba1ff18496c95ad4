package ohmtrail.advise;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import ohmtrail.circuit.Circuit;
import ohmtrail.circuit.Joint;
import ohmtrail.predict.Degradation;
import ohmtrail.predict.Evaluation;
import ohmtrail.predict.JointSweep;
import ohmtrail.predict.Parameters;
import ohmtrail.predict.SurveyModel;
import ohmtrail.reference.Assumptions;
import ohmtrail.survey.Reading;
import ohmtrail.survey.ReadingError;
import ohmtrail.survey.Survey;
import ohmtrail.survey.Test;

/**
 * What readings that were not taken yet would show under each belief, given those that were.
 *
 * <p>Near the fitted point the model is linear in everything known only roughly, so under a belief
 * the readings taken and those to come are jointly normal: with J the slopes, K = J J' plus own
 * variances and the drift of each test. The readings to come, given those taken, have
 *
 * <pre>
 * mean  f + K_cp K_pp^-1 (y - f_p),   covariance  K_cc - K_cp K_pp^-1 K_pc
 * </pre>
 *
 * (conditional of a normal distribution; one Kalman step). What is left open of the ohms within a
 * belief's stretch is one more column of J for the readings to come. Built once per belief, for all
 * choices.
 */
final class Forecast {
  private final Survey taken;
  private final Survey extended;
  private final List<Reading> readings = new ArrayList<>();
  private final List<Integer> testOf = new ArrayList<>();
  private final Map<Choice.Read, List<Integer>> places = new LinkedHashMap<>();
  private final List<ReadingError> errors;
  private final Parameters parameters;
  private final double[] point;
  private final Circuit circuit;
  private final Assumptions assumptions;
  private final Map<String, JointSweep> sweeps = new LinkedHashMap<>();
  private final SurveyModel model;

  /**
   * Prepares.
   *
   * @param circuit the circuit
   * @param taken the readings taken
   * @param choices the visits that may come; every meter and load of theirs is in the survey
   * @param assumptions tolerances
   * @param point u of every parameter where the model is linearised
   * @param beliefs whose joints will be asked for
   */
  Forecast(
      Circuit circuit,
      Survey taken,
      List<Choice.Read> choices,
      Assumptions assumptions,
      double[] point,
      Beliefs beliefs) {
    this.circuit = circuit;
    this.assumptions = assumptions;
    this.taken = taken;
    this.point = point.clone();
    this.extended = extend(choices);
    this.parameters = Parameters.of(circuit, extended, assumptions);
    this.errors =
        readings.stream()
            .map(each -> ReadingError.of(each, extended.meter(each.meter()), assumptions))
            .toList();
    List<Joint> joints =
        beliefs.all().stream()
            .filter(belief -> belief.degradations().size() == 1)
            .map(belief -> circuit.joint(belief.degradations().get(0).joint()).orElseThrow())
            .distinct()
            .toList();
    this.model = model(joints, List.of());
    joints.forEach(joint -> sweeps.put(joint.id(), model.sweep(joint)));
  }

  private SurveyModel model(List<Joint> joints, List<Degradation> degradations) {
    return SurveyModel.of(circuit, extended, assumptions, parameters, point, joints, degradations);
  }

  /** Appends each different test to come once; choices share them. */
  private Survey extend(List<Choice.Read> choices) {
    List<Test> tests = new ArrayList<>(taken.tests());
    Map<Test, Integer> starts = new LinkedHashMap<>();
    for (Test test : taken.tests()) {
      note(test, tests.indexOf(test));
    }
    for (Choice.Read choice : choices) {
      List<Integer> own = new ArrayList<>();
      for (Test test : choice.tests()) {
        Test bare = test.named("to come");
        Integer start = starts.get(bare);
        if (start == null) {
          start = readings.size();
          starts.put(bare, start);
          note(test, tests.size());
          tests.add(test.named("to come (" + start + ")"));
        }
        for (int r = 0; r < test.readings().size(); r++) {
          own.add(start + r);
        }
      }
      places.put(choice, own);
    }
    return taken.withTests(tests);
  }

  private void note(Test test, int number) {
    for (Reading reading : test.readings()) {
      readings.add(reading);
      testOf.add(number);
    }
  }

  /** The readings to come of every choice under one belief. */
  Conditional under(Belief belief) {
    Evaluation evaluation;
    if (belief.isHealthy()) {
      evaluation = model.buffer();
      model.evaluate(evaluation);
    } else if (belief.degradations().size() == 1) {
      evaluation = model.buffer();
      Degradation only = belief.degradations().get(0);
      Optional.ofNullable(sweeps.get(only.joint())).orElseThrow().evaluate(only.ohms(), evaluation);
    } else {
      SurveyModel several = model(List.of(), belief.degradations());
      evaluation = several.buffer();
      several.evaluate(evaluation);
    }
    return new Conditional(evaluation, belief.logOhmsSigma());
  }

  /** Places of a choice's readings among all. */
  List<Integer> places(Choice.Read choice) {
    return places.getOrDefault(choice, List.of());
  }

  /** The readings to come under one belief, given those taken. */
  final class Conditional {
    private final int past = taken.readingCount();
    private final int columns = parameters.size();
    private final double[] volts;
    private final double[] perSupply;
    private final double[] jacobian;
    private final double[] spread;

    /** L^-1 of the covariance with the readings taken, one row per reading to come. */
    private final double[][] whitened;

    private final double[] mean;

    private Conditional(Evaluation evaluation, double logOhmsSigma) {
      this.volts = evaluation.volts();
      this.perSupply = evaluation.perSupply();
      this.jacobian = evaluation.jacobian();
      this.spread = evaluation.ohmsSlope();
      for (int r = 0; r < spread.length; r++) {
        spread[r] *= logOhmsSigma;
      }
      double[][] factor = factor();
      double[] residual = new double[past];
      for (int r = 0; r < past; r++) {
        residual[r] = errors.get(r).value() - shifted(r);
      }
      forward(factor, residual);
      int coming = volts.length - past;
      whitened = new double[coming][past];
      mean = new double[coming];
      for (int c = 0; c < coming; c++) {
        for (int r = 0; r < past; r++) {
          whitened[c][r] = slopesProduct(past + c, r);
        }
        forward(factor, whitened[c]);
        mean[c] = shifted(past + c) + dot(whitened[c], residual);
      }
    }

    /** The prediction with every parameter as stated, as far as the linear model reaches. */
    private double shifted(int r) {
      double value = volts[r];
      for (int p = 0; p < columns; p++) {
        value -= jacobian[r * columns + p] * point[p];
      }
      return value;
    }

    private double slopesProduct(int a, int b) {
      double sum = 0;
      int rowA = a * columns;
      int rowB = b * columns;
      for (int p = 0; p < columns; p++) {
        sum += jacobian[rowA + p] * jacobian[rowB + p];
      }
      return sum;
    }

    private double ownCovariance(int a, int b) {
      double sum = slopesProduct(a, b);
      if (testOf.get(a).intValue() == testOf.get(b).intValue()) {
        sum +=
            errors.get(a).driftSigma() * perSupply[a] * errors.get(b).driftSigma() * perSupply[b];
      }
      return a == b ? sum + errors.get(a).variance() : sum;
    }

    /** Cholesky factor of the covariance of the readings taken, the ohms as they stand. */
    private double[][] factor() {
      double[][] matrix = new double[past][past];
      for (int a = 0; a < past; a++) {
        for (int b = 0; b <= a; b++) {
          matrix[a][b] = ownCovariance(a, b);
        }
      }
      Gaussian.factor(matrix);
      return matrix;
    }

    private void forward(double[][] factor, double[] vector) {
      for (int i = 0; i < vector.length; i++) {
        double sum = vector[i];
        for (int j = 0; j < i; j++) {
          sum -= factor[i][j] * vector[j];
        }
        vector[i] = sum / factor[i][i];
      }
    }

    /** The readings of one choice together. */
    Gaussian of(Choice.Read choice) {
      List<Integer> at = places(choice);
      int size = at.size();
      double[] centre = new double[size];
      double[][] covariance = new double[size][size];
      for (int a = 0; a < size; a++) {
        int first = at.get(a);
        centre[a] = mean[first - past];
        for (int b = 0; b <= a; b++) {
          int second = at.get(b);
          covariance[a][b] =
              ownCovariance(first, second)
                  + spread[first] * spread[second]
                  - dot(whitened[first - past], whitened[second - past]);
        }
      }
      return new Gaussian(centre, covariance);
    }
  }

  private static double dot(double[] a, double[] b) {
    double sum = 0;
    for (int i = 0; i < a.length; i++) {
      sum += a[i] * b[i];
    }
    return sum;
  }
}
