package ohmtrail.locate;

import java.util.Arrays;
import java.util.List;

/**
 * A rough look at a hypothesis: the evidence that straight lines through the readings give, for
 * every choice of wrong readings at once. It says where the careful integral is worth its time.
 */
final class BruteForceScreen {
  private final BruteForceModel model;
  private final BruteForceEvidence evidence;
  private final List<WrongReadings> choices;
  private final int[] all;

  BruteForceScreen(
      BruteForceModel model, BruteForceEvidence evidence, List<WrongReadings> choices) {
    this.model = model;
    this.evidence = evidence;
    this.choices = choices;
    this.all = choices.get(0).keptArray();
  }

  /** The logarithm of the evidence of every choice of wrong readings, their own cost included. */
  double[] logDensities(double[] centre, double[][] spread) {
    int n = all.length;
    NormalDensity density = evidence.density(all, centre, spread);
    double[][] inverse = density.inverse();
    double[] pulls = density.solved();
    double[] logs = new double[choices.size()];
    int at = 0;
    logs[at++] = log(n, density.chiSquared(), density.logDeterminant());
    for (int i = 0; i < n; i++) {
      double block = inverse[i][i];
      logs[at++] =
          log(
              n - 1,
              density.chiSquared() - pulls[i] * pulls[i] / block,
              density.logDeterminant() + Math.log(block));
    }
    for (int i = 0; i < n; i++) {
      for (int j = i + 1; j < n; j++) {
        double ii = inverse[i][i];
        double ij = inverse[i][j];
        double jj = inverse[j][j];
        double block = ii * jj - ij * ij;
        double drop =
            (pulls[i] * pulls[i] * jj - 2 * pulls[i] * pulls[j] * ij + pulls[j] * pulls[j] * ii)
                / block;
        logs[at++] =
            log(n - 2, density.chiSquared() - drop, density.logDeterminant() + Math.log(block));
      }
    }
    for (int c = 0; c < logs.length; c++) {
      logs[c] += choices.get(c).logFactor();
    }
    return logs;
  }

  private static double log(int readings, double chiSquared, double logDeterminant) {
    return -(chiSquared + logDeterminant + readings * Math.log(2 * Math.PI)) / 2;
  }

  double[] logDensities(BruteForceEvidence.Line line) {
    return logDensities(line.centre, line.spread);
  }

  /** Between the second and third of four lines at equal distances; {@code t} from 0 to 1. */
  double[] logDensitiesBetween(
      BruteForceEvidence.Line a,
      BruteForceEvidence.Line b,
      BruteForceEvidence.Line c,
      BruteForceEvidence.Line d,
      double t) {
    int n = model.readingCount();
    double[] centre = new double[n];
    Arrays.setAll(centre, r -> cubic(a.centre[r], b.centre[r], c.centre[r], d.centre[r], t));
    double[][] spread = new double[n][n];
    for (int r = 0; r < n; r++) {
      for (int s = 0; s < n; s++) {
        // Straight, so that it stays a covariance.
        spread[r][s] = (1 - t) * b.spread[r][s] + t * c.spread[r][s];
      }
    }
    return logDensities(centre, spread);
  }

  private static double cubic(double a, double b, double c, double d, double t) {
    double slopeB = (c - a) / 2;
    double slopeC = (d - b) / 2;
    double t2 = t * t;
    double t3 = t2 * t;
    return (2 * t3 - 3 * t2 + 1) * b
        + (t3 - 2 * t2 + t) * slopeB
        + (3 * t2 - 2 * t3) * c
        + (t3 - t2) * slopeC;
  }
}
