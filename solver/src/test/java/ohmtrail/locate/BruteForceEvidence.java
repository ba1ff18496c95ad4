package ohmtrail.locate;

import java.util.Arrays;
import java.util.Random;

/**
 * The likelihood of some of the readings, given a fault, integrated over the parameters: Laplace's
 * approximation about the most probable parameters, found by Gauss and Newton's method.
 */
final class BruteForceEvidence {
  /** What is done about the error of Laplace's approximation. */
  enum Refinement {
    /** Nothing. */
    NONE,
    /** The curvature of the readings is allowed for. */
    CURVATURE,
    /** Importance sampling; slow. */
    SAMPLING
  }

  /** Draws of importance sampling at each point. */
  private static final int DRAWS = 300;

  /** Steps shorter than this in every parameter, in standard deviations, end the search. */
  private static final double SHORT_STEP = 0.02;

  /** The same at every point, so that the evidence stays smooth in the ohms. */
  private static final long SEED = 20240229;

  private static final int MOST_STEPS = 40;

  /** No step is longer than this in any parameter, in standard deviations. */
  private static final double LONGEST_STEP = 3;

  /**
   * A parameter so many standard deviations off has a prior of exp(-50): whatever needs it is out
   * of the running, and the search goes no further.
   */
  private static final double FARTHEST = 10;

  private static final int MOST_HALVINGS = 8;

  private final BruteForceModel model;
  private final Refinement refinement;
  private final int n;
  private final int p;

  BruteForceEvidence(BruteForceModel model, Refinement refinement) {
    this.model = model;
    this.refinement = refinement;
    this.n = model.readingCount();
    this.p = model.parameterCount();
  }

  /**
   * The readings as linear functions of the parameters about a point: normal, with mean {@link
   * #centre} and, apart from their own errors, covariance {@link #spread}.
   */
  static final class Line {
    final double[] point;
    final double[] centre;
    final double[][] spread;
    final double[][] slopes;

    /** Most probable parameters by this line, given the readings it was made for. */
    final double[] mode;

    /** Of the readings it was made for. */
    final double logEvidence;

    private Line(
        double[] point,
        double[] centre,
        double[][] spread,
        double[][] slopes,
        double[] mode,
        double logEvidence) {
      this.point = point;
      this.centre = centre;
      this.spread = spread;
      this.slopes = slopes;
      this.mode = mode;
      this.logEvidence = logEvidence;
    }
  }

  /** The line about the most probable parameters, and the logarithm of the integral. */
  record Found(Line line, double logEvidence) {}

  /**
   * The integral, refined where that was asked for.
   *
   * @param negligible logarithm of an evidence not worth refining
   */
  Found integral(BruteForceFault fault, int[] kept, double[] start, double negligible) {
    Line line = at(fault, kept, start);
    double correction = line.logEvidence > negligible ? correction(fault, kept, line) : 0;
    return new Found(line, line.logEvidence + correction);
  }

  private double correction(BruteForceFault fault, int[] kept, Line line) {
    return switch (refinement) {
      case NONE -> 0;
      case CURVATURE -> curvatureCorrection(kept, line);
      case SAMPLING -> sample(fault, kept, line, DRAWS, new Random(SEED)).logCorrection();
    };
  }

  /**
   * What the second slopes of the readings change in Laplace's approximation, as a logarithm. A
   * quantity x that acts linearly and has the second slope b times its first (sigma where it is
   * exp(sigma u)) gives the reading the second slope b dv/du; at the most probable u the sum of
   * dv/du times residual over variance is u itself, so that all it takes is to lower the second
   * slope of the prior from 1 to 1 - b u.
   */
  double curvatureCorrection(int[] kept, Line line) {
    double[][] straight = new double[p][p];
    double[][] curved = new double[p][p];
    for (int k = 0; k < p; k++) {
      for (int q = 0; q < p; q++) {
        for (int r : kept) {
          straight[k][q] += line.slopes[r][k] * line.slopes[r][q] / model.variance[r];
        }
        curved[k][q] = straight[k][q];
      }
      straight[k][k] += 1;
      curved[k][k] += 1 - model.bend(k, line.mode[k]) * line.mode[k];
    }
    double[] zeros = new double[p];
    try {
      return (new NormalDensity(straight, zeros).logDeterminant()
              - new NormalDensity(curved, zeros).logDeterminant())
          / 2;
    } catch (ArithmeticException saddle) {
      return 0;
    }
  }

  /**
   * Finds the most probable parameters.
   *
   * @param kept the readings that count
   * @param start where to look first
   */
  Line at(BruteForceFault fault, int[] kept, double[] start) {
    double[] u = isFar(start) ? new double[p] : start;
    model.evaluate(fault, u);
    double cost = cost(kept, u);
    Line line = lineAt(kept, u);
    for (int step = 0;
        step < MOST_STEPS && longest(line.mode, u) > SHORT_STEP && !isFar(u);
        step++) {
      double[] next = stepped(u, line.mode);
      model.evaluate(fault, next);
      double nextCost = cost(kept, next);
      for (int halving = 0; !(nextCost <= cost) && halving < MOST_HALVINGS; halving++) {
        next = halfway(u, next);
        model.evaluate(fault, next);
        nextCost = cost(kept, next);
      }
      if (!(nextCost <= cost)) {
        break;
      }
      u = next;
      cost = nextCost;
      line = lineAt(kept, u);
    }
    return line;
  }

  /** The line about a point, without looking for a better one. */
  Line about(BruteForceFault fault, int[] kept, double[] point) {
    model.evaluate(fault, point);
    return lineAt(kept, point);
  }

  private static double longest(double[] a, double[] b) {
    double longest = 0;
    for (int k = 0; k < a.length; k++) {
      longest = Math.max(longest, Math.abs(a[k] - b[k]));
    }
    return longest;
  }

  private static double[] stepped(double[] from, double[] to) {
    double share = Math.min(1, LONGEST_STEP / longest(from, to));
    double[] stepped = new double[from.length];
    Arrays.setAll(stepped, k -> from[k] + share * (to[k] - from[k]));
    return stepped;
  }

  private static boolean isFar(double[] u) {
    return Arrays.stream(u).anyMatch(value -> Math.abs(value) > FARTHEST);
  }

  private static double[] halfway(double[] a, double[] b) {
    double[] between = new double[a.length];
    Arrays.setAll(between, k -> (a[k] + b[k]) / 2);
    return between;
  }

  /** Twice the negative logarithm of the integrand, constants left out. */
  private double cost(int[] kept, double[] u) {
    double cost = misfit(kept);
    for (double value : u) {
      cost += value * value;
    }
    return cost;
  }

  private double misfit(int[] kept) {
    double misfit = 0;
    for (int r : kept) {
      double residual = model.observed[r] - model.volts[r];
      misfit += residual * residual / model.variance[r];
    }
    return misfit;
  }

  private Line lineAt(int[] kept, double[] u) {
    double[] centre = new double[n];
    double[][] spread = new double[n][n];
    double[][] slopes = new double[n][];
    for (int r = 0; r < n; r++) {
      slopes[r] = model.slopes[r].clone();
      centre[r] = model.volts[r] - dot(slopes[r], u);
      for (int s = 0; s <= r; s++) {
        spread[r][s] = dot(slopes[r], slopes[s]);
        spread[s][r] = spread[r][s];
      }
    }
    NormalDensity density = density(kept, centre, spread);
    double[] pulls = density.solved();
    double[] mode = new double[p];
    for (int k = 0; k < kept.length; k++) {
      for (int q = 0; q < p; q++) {
        mode[q] += slopes[kept[k]][q] * pulls[k];
      }
    }
    return new Line(u, centre, spread, slopes, mode, density.logDensity());
  }

  /** The density of the kept readings where a line says they lie. */
  NormalDensity density(int[] kept, double[] centre, double[][] spread) {
    int m = kept.length;
    double[] residuals = new double[m];
    double[][] covariance = new double[m][m];
    for (int i = 0; i < m; i++) {
      residuals[i] = model.observed[kept[i]] - centre[kept[i]];
      for (int j = 0; j < m; j++) {
        covariance[i][j] = spread[kept[i]][kept[j]];
      }
      covariance[i][i] += model.variance[kept[i]];
    }
    return new NormalDensity(covariance, residuals);
  }

  private static double dot(double[] a, double[] b) {
    double sum = 0;
    for (int k = 0; k < a.length; k++) {
      sum += a[k] * b[k];
    }
    return sum;
  }

  /** What importance sampling says of Laplace's approximation. */
  record Sampled(double logCorrection, double standardError, double effectiveShare) {}

  /**
   * The true integral over the parameters, divided by Laplace's value: draws from the normal
   * distribution that the line stands for, and the mean of what the exact readings make of the
   * integrand there.
   */
  Sampled sample(BruteForceFault fault, int[] kept, Line line, int draws, Random random) {
    double sum = 0;
    double squares = 0;
    for (int draw = 0; draw < draws; draw++) {
      double[] u = drawFrom(line, kept, random);
      double straight = 0;
      for (int r : kept) {
        double residual = model.observed[r] - line.centre[r] - dot(line.slopes[r], u);
        straight += residual * residual / model.variance[r];
      }
      model.evaluate(fault, u);
      double weight = Math.exp((straight - misfit(kept)) / 2);
      sum += weight;
      squares += weight * weight;
    }
    double mean = sum / draws;
    double deviation = Math.sqrt(Math.max(0, squares / draws - mean * mean) / draws);
    return new Sampled(Math.log(mean), deviation / mean, sum * sum / squares / draws);
  }

  /** Draws from the prior and corrects the draw by what the readings say of it. */
  private double[] drawFrom(Line line, int[] kept, Random random) {
    double[] u = new double[p];
    Arrays.setAll(u, k -> random.nextGaussian());
    double[] imagined = line.centre.clone();
    for (int r : kept) {
      imagined[r] += dot(line.slopes[r], u) + Math.sqrt(model.variance[r]) * random.nextGaussian();
    }
    double[] pulls = density(kept, imagined, line.spread).solved();
    for (int k = 0; k < kept.length; k++) {
      for (int q = 0; q < p; q++) {
        u[q] += line.slopes[kept[k]][q] * pulls[k];
      }
    }
    return u;
  }
}
