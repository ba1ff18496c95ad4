package ohmtrail.locate.evidence;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import ohmtrail.circuit.Box;
import ohmtrail.circuit.Cable;
import ohmtrail.circuit.Circuit;
import ohmtrail.circuit.JointKind;
import ohmtrail.circuit.Supply;
import ohmtrail.predict.Evaluation;
import ohmtrail.problem.Problem;
import ohmtrail.reference.Assumption;
import ohmtrail.reference.Assumptions;
import ohmtrail.reference.Conductor;
import ohmtrail.reference.ConductorMaterial;
import ohmtrail.reference.ConductorSize;
import ohmtrail.survey.Meter;
import ohmtrail.survey.ProbePoints;
import ohmtrail.survey.Reading;
import ohmtrail.survey.Survey;
import ohmtrail.survey.Test;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.CholeskyDecomposition;
import org.apache.commons.math3.linear.LUDecomposition;
import org.apache.commons.math3.linear.MatrixUtils;
import org.apache.commons.math3.linear.RealMatrix;
import org.apache.commons.math3.linear.RealVector;

/**
 * A made-up linear problem of the sort that the evidence is worked out for, and its answer by dense
 * matrices: readings, predictions, slopes, drift and tests, all drawn from a seed. The numbers
 * stand for no circuit.
 */
final class Normals {
  private final long seed;
  private final Observations observations;
  private final Evaluation evaluation;
  private final double[] point;
  private final int[] active;
  private final RealVector slope;

  private Normals(
      long seed,
      Observations observations,
      Evaluation evaluation,
      double[] point,
      int[] active,
      RealVector slope) {
    this.seed = seed;
    this.observations = observations;
    this.evaluation = evaluation;
    this.point = point;
    this.active = active;
    this.slope = slope;
  }

  static Normals draw(long seed) {
    Random random = new Random(seed);
    int readings = 1 + random.nextInt(8);
    int parameters = random.nextInt(6);
    List<List<Double>> tests = new ArrayList<>();
    for (int r = 0; r < readings; r++) {
      if (r == 0 || random.nextInt(3) == 0) {
        tests.add(new ArrayList<>());
      }
      tests.get(tests.size() - 1).add(20 + 100 * random.nextDouble());
    }
    Assumptions assumptions =
        Assumptions.defaults()
            .with(Assumption.SUPPLY_DRIFT, 1e-4 + 0.05 * random.nextDouble())
            // The densities here have tolerances as stated.
            .with(Assumption.STRAINED_FACTOR, 1);
    Observations observations = Observations.of(new Problem(circuit(), survey(tests), assumptions));
    int[] felt = IntStream.range(0, parameters).filter(p -> random.nextBoolean()).toArray();
    Evaluation evaluation = new Evaluation(readings, felt.length);
    double[] slope = new double[readings];
    int slip = random.nextInt(3 * readings);
    for (int r = 0; r < readings; r++) {
      evaluation.volts()[r] =
          observations.value(r) + 0.2 * random.nextGaussian() + (r == slip ? 3 : 0);
      evaluation.perSupply()[r] = evaluation.volts()[r] * (0.5 + random.nextDouble());
      slope[r] = random.nextGaussian();
      evaluation.ohmsSlope()[r] = slope[r];
    }
    double[] point = new double[parameters];
    for (int p = 0; p < parameters; p++) {
      point[p] = random.nextGaussian();
    }
    for (int i = 0; i < readings * felt.length; i++) {
      evaluation.jacobian()[i] = random.nextGaussian();
    }
    return new Normals(seed, observations, evaluation, point, felt, new ArrayRealVector(slope));
  }

  private static Circuit circuit() {
    Conductor copper =
        new Conductor(ConductorSize.parse("14 AWG").orElseThrow(), ConductorMaterial.COPPER);
    return new Circuit(
        Supply.NORTH_AMERICA_120,
        15,
        List.of(Box.panel("panel"), Box.feedThrough("bench", JointKind.SCREW)),
        List.of(Cable.of("panel", "bench", 10, copper)));
  }

  private static Survey survey(List<List<Double>> volts) {
    List<Test> tests = new ArrayList<>();
    for (List<Double> shown : volts) {
      List<Reading> readings =
          shown.stream()
              .map(value -> new Reading("bench", ProbePoints.HOT_NEUTRAL, "meter", value))
              .toList();
      tests.add(new Test("test " + tests.size(), List.of(), readings));
    }
    return new Survey(List.of(Meter.highImpedance("meter")), List.of(), tests);
  }

  Observations observations() {
    return observations;
  }

  Evaluation evaluation() {
    return evaluation;
  }

  double[] point() {
    return point.clone();
  }

  int[] active() {
    return active.clone();
  }

  RealVector slope() {
    return slope;
  }

  int count() {
    return observations.count();
  }

  /** The linear model as the method works it out. */
  LinearGaussian model(BitSet leftOut) {
    LinearGaussian model = LinearGaussian.of(observations.testNumbers(), active.length);
    MarginalLikelihood.load(model, observations, evaluation, point, active, leftOut);
    return model;
  }

  /** Slopes of the active parameters. */
  RealMatrix jacobian() {
    RealMatrix jacobian = new Array2DRowRealMatrix(count(), Math.max(1, active.length));
    for (int r = 0; r < count(); r++) {
      for (int c = 0; c < active.length; c++) {
        jacobian.setEntry(r, c, evaluation.jacobian()[r * active.length + c]);
      }
    }
    return jacobian;
  }

  /** Own variances and the drift that the readings of a test share. */
  RealMatrix noise() {
    RealMatrix noise = new Array2DRowRealMatrix(count(), count());
    for (int r = 0; r < count(); r++) {
      noise.setEntry(r, r, observations.variance(r));
      for (int s = 0; s < count(); s++) {
        if (observations.testOf(r) == observations.testOf(s)) {
          double drift = observations.driftSigma(r) * observations.driftSigma(s);
          noise.addToEntry(r, s, drift * evaluation.perSupply()[r] * evaluation.perSupply()[s]);
        }
      }
    }
    return noise;
  }

  /** S = N + J J'. */
  RealMatrix covariance() {
    RealMatrix jacobian = jacobian();
    return noise().add(jacobian.multiply(jacobian.transpose()));
  }

  /** Read less predicted, the model taken back along its slopes to u = 0. */
  RealVector residual() {
    RealVector residual = new ArrayRealVector(count());
    for (int r = 0; r < count(); r++) {
      double shift = 0;
      for (int c = 0; c < active.length; c++) {
        shift += evaluation.jacobian()[r * active.length + c] * point[active[c]];
      }
      residual.setEntry(r, observations.value(r) - evaluation.volts()[r] + shift);
    }
    return residual;
  }

  /** Logarithm of the density of the readings that are kept, by the library. */
  double logDensity(BitSet leftOut) {
    int[] kept = IntStream.range(0, count()).filter(r -> !leftOut.get(r)).toArray();
    if (kept.length == 0) {
      return 0;
    }
    double[] residual = new double[kept.length];
    for (int i = 0; i < kept.length; i++) {
      residual[i] = residual().getEntry(kept[i]);
    }
    RealMatrix covariance = covariance().getSubMatrix(kept, kept);
    // The library's own multivariate normal goes by eigenvalues and is off by half a unit where a
    // test's common drift dwarfs the readings' own errors; its Cholesky factors are not.
    CholeskyDecomposition factors = new CholeskyDecomposition(covariance, 1e-9, 0);
    RealVector spread = new ArrayRealVector(residual);
    double chiSquared = spread.dotProduct(factors.getSolver().solve(spread));
    double logDeterminant = 0;
    for (int i = 0; i < kept.length; i++) {
      logDeterminant += 2 * Math.log(factors.getL().getEntry(i, i));
    }
    return -0.5 * (chiSquared + logDeterminant + kept.length * Math.log(2 * Math.PI));
  }

  /** S^-1. */
  RealMatrix precision() {
    return MatrixUtils.inverse(covariance());
  }

  /** Posterior mean of u: J' S^-1 r (conditioning of a joint normal distribution). */
  RealVector posteriorMean() {
    return jacobian()
        .transpose()
        .operate(new LUDecomposition(covariance()).getSolver().solve(residual()));
  }

  @Override
  public String toString() {
    return "seed " + seed + ", " + count() + " readings, " + active.length + " parameters felt";
  }
}
