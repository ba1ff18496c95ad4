package ohmtrail.locate;

import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/**
 * The ohms of one degraded joint that still conducts, log-uniform between two bounds: the evidence
 * for every choice of wrong readings, roughly everywhere and carefully where asked.
 */
final class BruteForceSweep {
  /** Steps of the rough look over all ohms at fineness one; about half an e-fold each. */
  private static final int COARSE_STEPS = 40;

  private static final int FINE_STEPS = 16;

  /** A piece is straight enough when its middle lies this near to the mean of its ends. */
  private static final double STRAIGHT = 0.15;

  /** ... and its ends this near to each other. */
  private static final double FLAT = 1.5;

  private static final int MOST_HALVINGS = 12;

  private final BruteForceEvidence evidence;
  private final List<WrongReadings> choices;
  private final String joint;
  private final double low;
  private final double width;
  private final double[] zeros;
  private final int coarseSteps;
  private final double straight;
  private final double flat;

  /** By choice of wrong readings, then by fine step: the larger of two rough looks. */
  private final double[][] rough;

  private final double[] roughMass;
  private final double[] roughUpperMass;

  BruteForceSweep(
      BruteForceModel model,
      BruteForceEvidence evidence,
      List<WrongReadings> choices,
      String joint,
      double lowOhms,
      double highOhms,
      int fineness) {
    this.coarseSteps = COARSE_STEPS * fineness;
    this.straight = STRAIGHT / fineness / fineness;
    this.flat = FLAT / fineness;
    this.evidence = evidence;
    this.choices = choices;
    this.joint = joint;
    this.low = Math.log(lowOhms);
    this.width = Math.log(highOhms) - low;
    int[] all = choices.get(0).keptArray();
    BruteForceEvidence.Line[] nominal = new BruteForceEvidence.Line[coarseSteps + 1];
    BruteForceEvidence.Line[] lines = new BruteForceEvidence.Line[coarseSteps + 1];
    zeros = new double[model.parameterCount()];
    double[] start = zeros;
    for (int k = 0; k <= coarseSteps; k++) {
      BruteForceFault fault = fault(coarse(k));
      nominal[k] = evidence.about(fault, all, zeros);
      lines[k] = evidence.at(fault, all, start);
      start = lines[k].mode;
    }
    BruteForceScreen screen = new BruteForceScreen(model, evidence, choices);
    double[][] first = look(screen, lines);
    double[][] second = look(screen, nominal);
    roughMass = masses(first);
    rough = larger(first, second);
    roughUpperMass = masses(rough);
  }

  private BruteForceFault fault(double x) {
    return new BruteForceFault(joint, Math.exp(x));
  }

  private double coarse(int k) {
    return low + width * k / coarseSteps;
  }

  private double[][] look(BruteForceScreen screen, BruteForceEvidence.Line[] through) {
    int steps = coarseSteps * FINE_STEPS;
    double[][] logs = new double[choices.size()][steps + 1];
    for (int f = 0; f <= steps; f++) {
      int k = Math.min(f / FINE_STEPS, coarseSteps - 1);
      double t = (double) (f - k * FINE_STEPS) / FINE_STEPS;
      double[] here =
          screen.logDensitiesBetween(
              through[Math.max(0, k - 1)],
              through[k],
              through[k + 1],
              through[Math.min(coarseSteps, k + 2)],
              t);
      for (int c = 0; c < here.length; c++) {
        logs[c][f] = here[c];
      }
    }
    return logs;
  }

  private static double[][] larger(double[][] a, double[][] b) {
    double[][] larger = new double[a.length][a[0].length];
    for (int c = 0; c < a.length; c++) {
      for (int f = 0; f < a[c].length; f++) {
        larger[c][f] = Math.max(a[c][f], b[c][f]);
      }
    }
    return larger;
  }

  private static double[] masses(double[][] logs) {
    double[] masses = new double[logs.length];
    for (int c = 0; c < logs.length; c++) {
      LogSum sum = new LogSum();
      for (double log : logs[c]) {
        sum.add(log);
      }
      masses[c] = sum.log() - Math.log(logs[c].length);
    }
    return masses;
  }

  /** Logarithm of the evidence by the rough look. */
  double roughMass(int choice) {
    return roughMass[choice];
  }

  /** By the larger of two rough looks. */
  double roughUpperMass(int choice) {
    return roughUpperMass[choice];
  }

  /**
   * Logarithm of the evidence by the careful integral.
   *
   * @param negligible logarithm of the evidence that a piece may be wrong by
   */
  double mass(int choice, double negligible) {
    return new Integral(choice, negligible).logMass();
  }

  /** Simpson's rule on pieces halved until the logarithm of the evidence is straight enough. */
  private final class Integral {
    private final int choice;
    private final int[] kept;
    private final double negligible;
    private final TreeMap<Double, double[]> modes = new TreeMap<>();
    private final LogSum sum = new LogSum();

    Integral(int choice, double negligible) {
      this.choice = choice;
      this.kept = choices.get(choice).keptArray();
      this.negligible = negligible;
      modes.put(low - width, zeros);
    }

    double logMass() {
      double left = logDensity(low);
      for (int k = 0; k < coarseSteps; k++) {
        double right = logDensity(coarse(k + 1));
        add(coarse(k), left, coarse(k + 1), right, 0);
        left = right;
      }
      return sum.log();
    }

    private double logDensity(double x) {
      Map.Entry<Double, double[]> below = modes.floorEntry(x);
      Map.Entry<Double, double[]> above = modes.ceilingEntry(x);
      boolean takeBelow =
          above == null || (below != null && x - below.getKey() <= above.getKey() - x);
      double[] start = takeBelow ? below.getValue() : above.getValue();
      BruteForceEvidence.Found found =
          evidence.integral(fault(x), kept, start, negligible - choices.get(choice).logFactor());
      modes.put(x, found.line().mode);
      return found.logEvidence() + choices.get(choice).logFactor();
    }

    private void add(double a, double logA, double b, double logB, int halvings) {
      double share = Math.log((b - a) / width);
      double largest = Math.max(Math.max(logA, logB), roughlyLargest(a, b));
      if (largest + share < negligible) {
        sum.add(Math.max(logA, logB) + share);
        return;
      }
      double middle = (a + b) / 2;
      double logM = logDensity(middle);
      boolean smooth =
          Math.abs(logM - (logA + logB) / 2) < straight && Math.abs(logA - logB) < flat;
      if (smooth || halvings == MOST_HALVINGS) {
        sum.add(logA + share - Math.log(6));
        sum.add(logM + share + Math.log(4.0 / 6));
        sum.add(logB + share - Math.log(6));
      } else {
        add(a, logA, middle, logM, halvings + 1);
        add(middle, logM, b, logB, halvings + 1);
      }
    }

    private double roughlyLargest(double a, double b) {
      double perStep = width / (coarseSteps * FINE_STEPS);
      int from = (int) Math.max(0, Math.floor((a - low) / perStep + 1e-9));
      int to = (int) Math.min(rough[choice].length - 1, Math.ceil((b - low) / perStep - 1e-9));
      double largest = Double.NEGATIVE_INFINITY;
      for (int f = from; f <= to; f++) {
        largest = Math.max(largest, rough[choice][f]);
      }
      return largest;
    }
  }
}
