package ohmtrail.map.evidence;

import org.apache.commons.math3.special.Gamma;

/**
 * A nonlinear fit of one map: the mode of the posterior of its unknowns and Laplace's approximation
 * there. Unknowns are standard normal numbers u; the logarithm of the ohms of a bad joint is one
 * more, even in its range.
 */
final class TreeFit {
  private static final int MOST_STEPS = 40;
  private static final int MOST_HALVINGS = 6;

  /** A step that would gain less than this in the logarithm of the posterior is not taken. */
  private static final double ENOUGH = 1e-3;

  /** No step goes farther in any unknown: a resistance changes by a factor of three at most. */
  private static final double LONGEST_STEP = 2;

  /** Of the distribution that is sampled from to make Laplace's approximation good. */
  static final double DEGREES_OF_FREEDOM = 4;

  /** What a fit is made of: the model on one map, its unknowns, and the readings, whitened. */
  interface Unknowns {
    /** How many there are, that of the bad joint, which comes last, among them. */
    int count();

    /** Whether the last one is even in its range. */
    boolean lastIsEven();

    /** Works out the whitened residual at a point, and the whitened slopes by unknown. */
    void evaluate(double[] point, double[] residual, double[][] columns);

    /** Works out the whitened residual alone. */
    void residual(double[] point, double[] residual);
  }

  private final Unknowns unknowns;
  private final int count;

  /** Where the fit stands. */
  final double[] point;

  /** Residual and slopes there, whitened. */
  double[] residual;

  double[][] columns;

  /** The lower triangle of the Cholesky factor of the Hessian there. */
  final double[][] factor;

  /** Natural logarithm of the density at the mode, up to what all maps have in common. */
  double logMode = Double.NEGATIVE_INFINITY;

  TreeFit(Unknowns unknowns, double[] start, int readings) {
    this.unknowns = unknowns;
    this.count = unknowns.count();
    this.point = start.clone();
    this.residual = new double[readings];
    this.columns = new double[count][readings];
    this.factor = new double[count][count];
  }

  /** Works out everything at the start. */
  void begin() {
    unknowns.evaluate(point, residual, columns);
    logMode = log(point, residual);
    factorise();
  }

  /** Climbs to the mode from where it stands. */
  void climb() {
    double[] trial = new double[count];
    double[] trialResidual = new double[residual.length];
    double[][] trialColumns = new double[count][residual.length];
    for (int step = 0; step < MOST_STEPS; step++) {
      double[] gradient = gradient();
      double[] move = solved(gradient);
      double expected = 0;
      double longest = 0;
      for (int c = 0; c < count; c++) {
        expected += 0.5 * gradient[c] * move[c];
        longest = Math.max(longest, Math.abs(move[c]));
      }
      if (expected < ENOUGH) {
        return;
      }
      double share = longest > LONGEST_STEP ? LONGEST_STEP / longest : 1;
      boolean better = false;
      for (int halving = 0; halving < MOST_HALVINGS && !better; halving++) {
        for (int c = 0; c < count; c++) {
          trial[c] = point[c] + share * move[c];
        }
        unknowns.evaluate(trial, trialResidual, trialColumns);
        double log = log(trial, trialResidual);
        better = log > logMode;
        if (better) {
          logMode = log;
        }
        share *= 0.5;
      }
      if (!better) {
        return;
      }
      System.arraycopy(trial, 0, point, 0, count);
      double[] keepResidual = residual;
      residual = trialResidual;
      trialResidual = keepResidual;
      double[][] keepColumns = columns;
      columns = trialColumns;
      trialColumns = keepColumns;
      factorise();
    }
  }

  private double log(double[] at, double[] off) {
    double sum = dot(off, off);
    int normal = unknowns.lastIsEven() ? count - 1 : count;
    for (int c = 0; c < normal; c++) {
      sum += at[c] * at[c];
    }
    return -0.5 * sum;
  }

  /** Slopes of the logarithm of the posterior. */
  double[] gradient() {
    double[] gradient = new double[count];
    for (int c = 0; c < count; c++) {
      boolean isEven = c == count - 1 && unknowns.lastIsEven();
      gradient[c] = dot(columns[c], residual) - (isEven ? 0 : point[c]);
    }
    return gradient;
  }

  /** Factorises I + J'J, the last unknown without the 1 where it is even. */
  private void factorise() {
    for (int row = 0; row < count; row++) {
      boolean isEven = row == count - 1 && unknowns.lastIsEven();
      for (int column = 0; column <= row; column++) {
        double sum = dot(columns[row], columns[column]);
        if (row == column) {
          sum += isEven ? 1e-9 : 1;
        }
        for (int k = 0; k < column; k++) {
          sum -= factor[row][k] * factor[column][k];
        }
        factor[row][column] =
            row == column ? Math.sqrt(Math.max(sum, 1e-12)) : sum / factor[column][column];
      }
    }
  }

  /** Solves with the Hessian. */
  double[] solved(double[] right) {
    double[] solution = forward(right);
    backward(solution);
    return solution;
  }

  /** Solves with the transpose of the lower triangle, in place. */
  private void backward(double[] solution) {
    for (int row = count - 1; row >= 0; row--) {
      for (int k = row + 1; k < count; k++) {
        solution[row] -= factor[k][row] * solution[k];
      }
      solution[row] /= factor[row][row];
    }
  }

  /** Solves with the lower triangle alone. */
  double[] forward(double[] right) {
    double[] solution = right.clone();
    for (int row = 0; row < count; row++) {
      for (int k = 0; k < row; k++) {
        solution[row] -= factor[row][k] * solution[k];
      }
      solution[row] /= factor[row][row];
    }
    return solution;
  }

  /** Half the logarithm of the determinant of the Hessian; without the last unknown if asked. */
  double halfLogDeterminant(boolean withLast) {
    double sum = 0;
    for (int c = 0; c < (withLast ? count : count - 1); c++) {
      sum += Math.log(factor[c][c]);
    }
    return sum;
  }

  /** Curvature along the last unknown once all others have given way. */
  double lastCurvature() {
    double last = factor[count - 1][count - 1];
    return last * last;
  }

  /**
   * What Laplace's approximation misses, as a difference of logarithms: importance sampling from a
   * distribution of Student around the mode (Geweke 1989, from memory). Its tails are heavier than
   * those of a posterior that is skew because a length may as well be next to nothing.
   *
   * @param draws of independent numbers that share their scale, by four degrees of freedom; the
   *     same for every map so that maps compare
   */
  double logCorrection(double[][] draws) {
    double[] trial = new double[count];
    double[] off = new double[residual.length];
    double[] move = new double[count];
    double power = 0.5 * (DEGREES_OF_FREEDOM + count);
    double sum = 0;
    for (double[] draw : draws) {
      double square = 0;
      for (int c = 0; c < count; c++) {
        square += draw[c] * draw[c];
        move[c] = draw[c];
      }
      backward(move);
      for (int c = 0; c < count; c++) {
        trial[c] = point[c] + move[c];
      }
      unknowns.residual(trial, off);
      sum += Math.exp(log(trial, off) - logMode + power * Math.log1p(square / DEGREES_OF_FREEDOM));
    }
    double logConstant =
        Gamma.logGamma(power)
            - Gamma.logGamma(0.5 * DEGREES_OF_FREEDOM)
            - 0.5 * count * Math.log(0.5 * DEGREES_OF_FREEDOM);
    return Math.log(Math.max(1e-12, sum / draws.length)) - logConstant;
  }

  static double dot(double[] one, double[] other) {
    double sum = 0;
    for (int r = 0; r < one.length; r++) {
      sum += one[r] * other[r];
    }
    return sum;
  }
}
