package ohmtrail.map;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.apache.commons.math3.special.Gamma;

/**
 * The posterior over the maps of a few boxes by brute force, sharing no code with the search: every
 * tree by its Pruefer sequence, each reading as a sum over what two ways have in common, the
 * lengths integrated out by importance sampling, a bad joint on a grid of its ohms, the prior by
 * laying the boxes in every order.
 */
final class EnumeratedMaps {
  /** A voltage read at a box with the heater at another, or nowhere (0). */
  record Volts(int test, int heater, int box, double volts) {}

  private static final double JOINT_OHMS = 0.002 * Math.exp(0.5 * 0.7 * 0.7);
  private static final double JOINT_SIGMA = JOINT_OHMS * Math.sqrt(Math.expm1(0.7 * 0.7));
  private static final int SAMPLES = 1000;
  private static final int SAMPLES_AT_A_GRID_POINT = 250;
  private static final int FREEDOM = 6;
  private static final double LONGEST_STEP = 1;
  private static final double LEAST_OHMS = 0.02;
  private static final double MOST_OHMS = 1e7;
  private static final double OPEN_SHARE = 0.1;
  private static final double GRID = 0.04;
  private static final double COARSE_GRID = 1;
  private static final double COARSE_FROM_OHMS = 200;

  private final int boxes;
  private final List<Volts> readings;
  private final double soundPrior;
  private final boolean withBadJoints;
  private final double[][] root;
  private final Random random;

  /** Trees by the parent of each box, and their probabilities. */
  final List<int[]> trees = new ArrayList<>();

  final List<Double> probabilities = new ArrayList<>();

  private EnumeratedMaps(
      int boxes, List<Volts> readings, double soundPrior, boolean withBadJoints, long seed) {
    this.boxes = boxes;
    this.readings = readings;
    this.soundPrior = soundPrior;
    this.withBadJoints = withBadJoints;
    this.root = choleskyOfCovariance();
    this.random = new Random(seed);
  }

  static EnumeratedMaps of(
      int boxes, List<Volts> readings, double soundPrior, boolean withBadJoints, long seed) {
    EnumeratedMaps maps = new EnumeratedMaps(boxes, readings, soundPrior, withBadJoints, seed);
    maps.weigh();
    return maps;
  }

  double probability(int box, int feeder) {
    double sum = 0;
    for (int t = 0; t < trees.size(); t++) {
      sum += trees.get(t)[box] == feeder ? probabilities.get(t) : 0;
    }
    return sum;
  }

  private void weigh() {
    int count = (int) Math.round(Math.pow(boxes + 1, boxes - 1));
    double[] logs = new double[count];
    double most = Double.NEGATIVE_INFINITY;
    for (int number = 0; number < count; number++) {
      int[] parents = tree(number);
      trees.add(parents);
      logs[number] = Math.log(prior(parents)) + logEvidence(parents);
      most = Math.max(most, logs[number]);
    }
    double sum = 0;
    for (double log : logs) {
      sum += Math.exp(log - most);
    }
    for (double log : logs) {
      probabilities.add(Math.exp(log - most) / sum);
    }
  }

  /** Pruefer (1918, from memory): a sequence of boxes - 1 nodes for every labelled tree. */
  private int[] tree(int number) {
    int nodes = boxes + 1;
    int[] sequence = new int[nodes - 2];
    int left = number;
    int[] degree = new int[nodes];
    Arrays.fill(degree, 1);
    for (int place = 0; place < sequence.length; place++) {
      sequence[place] = left % nodes;
      left /= nodes;
      degree[sequence[place]]++;
    }
    boolean[][] joined = new boolean[nodes][nodes];
    for (int node : sequence) {
      int leaf = leaf(degree);
      joined[leaf][node] = true;
      joined[node][leaf] = true;
      degree[leaf]--;
      degree[node]--;
    }
    int one = leaf(degree);
    degree[one]--;
    int other = leaf(degree);
    joined[one][other] = true;
    joined[other][one] = true;
    int[] parents = new int[nodes];
    hang(0, -1, joined, parents);
    return parents;
  }

  private static int leaf(int[] degree) {
    int node = 0;
    while (degree[node] != 1) {
      node++;
    }
    return node;
  }

  private static void hang(int node, int parent, boolean[][] joined, int[] parents) {
    parents[node] = parent;
    for (int next = 0; next < parents.length; next++) {
      if (joined[node][next] && next != parent) {
        hang(next, node, joined, parents);
      }
    }
  }

  /** Every order of the boxes, each laid on the one before it or on another that is there. */
  private double prior(int[] parents) {
    double orders = 1;
    for (int box = 2; box <= boxes; box++) {
      orders *= box;
    }
    return laid(parents, new boolean[boxes + 1], 0, 0) / orders;
  }

  private double laid(int[] parents, boolean[] there, int last, int count) {
    if (count == boxes) {
      return 1;
    }
    double sum = 0;
    for (int box = 1; box <= boxes; box++) {
      if (!there[box] && (parents[box] == 0 || there[parents[box]])) {
        double share =
            count == 0 ? 1 : parents[box] == last ? 1 - DrawnRun.TEE : DrawnRun.TEE / count;
        there[box] = true;
        sum += share * laid(parents, there, box, count + 1);
        there[box] = false;
      }
    }
    return sum;
  }

  private double[][] choleskyOfCovariance() {
    int count = readings.size();
    double[][] covariance = new double[count][count];
    for (int r = 0; r < count; r++) {
      for (int s = 0; s < count; s++) {
        Volts one = readings.get(r);
        Volts other = readings.get(s);
        double common = 0.03 * 0.03 * one.volts * other.volts;
        double drift = one.test == other.test ? 0.0033 * 0.0033 * one.volts * other.volts : 0;
        covariance[r][s] = common + drift;
      }
      double rounding = DrawnRun.DISPLAY_VOLTS / Math.sqrt(12);
      Volts reading = readings.get(r);
      double amperes = reading.heater == reading.box ? DrawnRun.WATTS / DrawnRun.VOLTS : 0;
      covariance[r][r] +=
          DrawnRun.NOISE_VOLTS * DrawnRun.NOISE_VOLTS
              + rounding * rounding
              + 2 * amperes * amperes * JOINT_SIGMA * JOINT_SIGMA;
    }
    return cholesky(covariance);
  }

  private static double[][] cholesky(double[][] matrix) {
    int count = matrix.length;
    double[][] lower = new double[count][count];
    for (int r = 0; r < count; r++) {
      for (int s = 0; s <= r; s++) {
        double sum = matrix[r][s];
        for (int k = 0; k < s; k++) {
          sum -= lower[r][k] * lower[s][k];
        }
        lower[r][s] = r == s ? Math.sqrt(sum) : sum / lower[s][s];
      }
    }
    return lower;
  }

  private static double[] forward(double[][] lower, double[] right) {
    double[] solution = right.clone();
    for (int r = 0; r < right.length; r++) {
      for (int k = 0; k < r; k++) {
        solution[r] -= lower[r][k] * solution[k];
      }
      solution[r] /= lower[r][r];
    }
    return solution;
  }

  /** One map with added ohms in the cable to a box, in its tail, or before the panel. */
  private final class Run {
    private final boolean[][] through;
    private final int badCable;
    private final int badTail;
    private final double ohms;
    private final boolean beforePanel;

    Run(int[] parents, int badCable, int badTail, boolean beforePanel, double ohms) {
      this.badCable = badCable;
      this.badTail = badTail;
      this.beforePanel = beforePanel;
      this.ohms = ohms;
      this.through = new boolean[boxes + 1][boxes + 1];
      for (int box = 1; box <= boxes; box++) {
        for (int at = box; at > 0; at = parents[at]) {
          through[box][at] = true;
        }
      }
    }

    /** The residuals, independent and of unit variance, at standard normal unknowns. */
    double[] residuals(double[] unknowns) {
      double copper = 2 * DrawnRun.OHMS_PER_METRE * 6;
      double joints = 4 * JOINT_OHMS;
      double spread = copper * Math.log(DrawnRun.LENGTH_FACTOR);
      double sigma = Math.hypot(spread, 2 * JOINT_SIGMA) / (copper + joints);
      double source = 0.1 * Math.exp(0.7 * unknowns[boxes]) + (beforePanel ? ohms : 0);
      double heater =
          DrawnRun.VOLTS * DrawnRun.VOLTS / DrawnRun.WATTS * Math.exp(-0.05 * unknowns[boxes + 1]);
      double[] off = new double[readings.size()];
      for (int r = 0; r < off.length; r++) {
        Volts reading = readings.get(r);
        double whole = source;
        double both = source;
        for (int cable = 1; cable <= boxes && reading.heater > 0; cable++) {
          double loop =
              (copper + joints) * Math.exp(sigma * unknowns[cable - 1])
                  + (cable == badCable ? ohms : 0);
          whole += through[reading.heater][cable] ? loop : 0;
          both += through[reading.heater][cable] && through[reading.box][cable] ? loop : 0;
        }
        double tail = 2 * JOINT_OHMS + (reading.heater == badTail ? ohms : 0);
        whole += tail;
        both += reading.heater == reading.box ? tail : 0;
        double share = reading.heater == 0 ? 1 : 1 - both / (whole + heater);
        off[r] = reading.volts - DrawnRun.VOLTS * share;
      }
      return forward(root, off);
    }

    double log(double[] unknowns) {
      double sum = 0;
      for (double each : residuals(unknowns)) {
        sum += each * each;
      }
      for (double each : unknowns) {
        sum += each * each;
      }
      return -0.5 * sum;
    }

    /** Gauss-Newton with differences for slopes, then samples from a wider normal around. */
    double logIntegral() {
      int count = boxes + 2;
      double[] at = new double[count];
      double[][] hessian = new double[count][count];
      for (int step = 0; step < 80; step++) {
        double[] here = residuals(at);
        double[][] slopes = new double[count][];
        double[] gradient = new double[count];
        for (int c = 0; c < count; c++) {
          double[] moved = at.clone();
          moved[c] += 1e-5;
          slopes[c] = residuals(moved);
          for (int r = 0; r < here.length; r++) {
            slopes[c][r] = (slopes[c][r] - here[r]) / 1e-5;
            gradient[c] -= slopes[c][r] * here[r];
          }
          gradient[c] -= at[c];
        }
        for (int c = 0; c < count; c++) {
          for (int d = 0; d < count; d++) {
            hessian[c][d] = c == d ? 1 : 0;
            for (int r = 0; r < here.length; r++) {
              hessian[c][d] += slopes[c][r] * slopes[d][r];
            }
          }
        }
        double[] move = backward(cholesky(hessian), forward(cholesky(hessian), gradient));
        double longest = 0;
        for (double each : move) {
          longest = Math.max(longest, Math.abs(each));
        }
        double share = Math.min(1, LONGEST_STEP / Math.max(LONGEST_STEP, longest));
        double before = log(at);
        double[] next = along(at, move, share);
        while (share > 1e-3 && log(next) < before) {
          share /= 2;
          next = along(at, move, share);
        }
        at = next;
        if (log(at) - before < 1e-7) {
          break;
        }
      }
      return sampled(at, cholesky(hessian));
    }

    private double sampled(double[] mode, double[][] lower) {
      int count = mode.length;
      double logDeterminant = 0;
      for (int c = 0; c < count; c++) {
        logDeterminant += Math.log(lower[c][c]);
      }
      int samples = withBadJoints ? SAMPLES_AT_A_GRID_POINT : SAMPLES;
      double top = log(mode);
      double sum = 0;
      for (int sample = 0; sample < samples; sample++) {
        double chiSquare = 0;
        for (int k = 0; k < FREEDOM; k++) {
          double each = random.nextGaussian();
          chiSquare += each * each;
        }
        double[] draw = new double[count];
        double square = 0;
        for (int c = 0; c < count; c++) {
          draw[c] = random.nextGaussian() * Math.sqrt(FREEDOM / chiSquare);
          square += draw[c] * draw[c];
        }
        double[] point = along(mode, backward(lower, draw), 1);
        double density = -0.5 * (FREEDOM + count) * Math.log1p(square / FREEDOM);
        sum += Math.exp(log(point) - top - density);
      }
      // The constant of Student's density over that of the normal one.
      double constant = -0.5 * count * Math.log(0.5 * FREEDOM);
      constant += Gamma.logGamma(0.5 * (FREEDOM + count)) - Gamma.logGamma(0.5 * FREEDOM);
      double logSamples = Math.log(sum / samples) - constant;
      // Where the readings are out of reach there is nothing worth sampling.
      return top - logDeterminant + (Double.isFinite(logSamples) ? logSamples : 0);
    }
  }

  private static double[] along(double[] from, double[] move, double share) {
    double[] to = from.clone();
    for (int c = 0; c < to.length; c++) {
      to[c] += share * move[c];
    }
    return to;
  }

  private static double[] backward(double[][] lower, double[] right) {
    double[] solution = right.clone();
    for (int r = right.length - 1; r >= 0; r--) {
      for (int k = r + 1; k < right.length; k++) {
        solution[r] -= lower[k][r] * solution[k];
      }
      solution[r] /= lower[r][r];
    }
    return solution;
  }

  private double logEvidence(int[] parents) {
    double sound = new Run(parents, 0, 0, false, 0).logIntegral();
    if (!withBadJoints) {
      return sound;
    }
    // Screws weigh 1, blade contacts 1, lugs 0.3, joints of the ground a fiftieth.
    double cable = 4;
    double tail = 2;
    double supply = 2 * 0.3;
    double ground = 0.02 * 3;
    double total = boxes * (cable + tail + ground) + supply;
    double log = Math.log(soundPrior) + sound;
    for (int box = 1; box <= boxes; box++) {
      double inCable = (1 - soundPrior) * cable / total;
      double inTail = (1 - soundPrior) * tail / total;
      log = sum(log, Math.log(inCable) + logBad(parents, box, 0, false));
      log = sum(log, Math.log(inTail) + logBad(parents, 0, box, false));
    }
    return sum(log, Math.log((1 - soundPrior) * supply / total) + logBad(parents, 0, 0, true));
  }

  private double logBad(int[] parents, int cable, int tail, boolean beforePanel) {
    double range = Math.log(MOST_OHMS / LEAST_OHMS);
    double log = Double.NEGATIVE_INFINITY;
    double last = 0;
    double x = Math.log(LEAST_OHMS);
    while (x < Math.log(MOST_OHMS)) {
      double step = x < Math.log(COARSE_FROM_OHMS) ? GRID : COARSE_GRID;
      double ohms = Math.exp(x + step / 2);
      last = new Run(parents, cable, tail, beforePanel, ohms).logIntegral();
      log = sum(log, last + Math.log((1 - OPEN_SHARE) * step / range));
      x += step;
    }
    return sum(log, last + Math.log(OPEN_SHARE));
  }

  private static double sum(double one, double other) {
    double most = Math.max(one, other);
    return most == Double.NEGATIVE_INFINITY
        ? most
        : most + Math.log(Math.exp(one - most) + Math.exp(other - most));
  }
}
