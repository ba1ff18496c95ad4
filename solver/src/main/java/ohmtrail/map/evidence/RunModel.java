package ohmtrail.map.evidence;

import java.util.Arrays;
import java.util.List;
import ohmtrail.map.tree.RunTree;

/**
 * What the readings would be on one map after another, and how they follow each resistance. Holds
 * what it last worked out; one thread at a time.
 *
 * <p>Loads k of conductance g(k): I = (diag(1/g) + Z)^-1 V; what a meter at j shows is s V - z' I,
 * z(k) being what its two probes' ways have in common with those of k. With a = (diag(1/g) + Z)^-1
 * z, a further ohm in a cable of current i changes it by -i (1 if the way to j leads through it,
 * less the sum of a over the loads beyond it).
 */
final class RunModel {
  private final ReducedSurvey survey;
  private final CableBelief belief;
  private final double volts;
  private final int nodes;

  /** Resistance of the cable to each node, hot and neutral; of its tail; of the source. */
  final double[] hot;

  final double[] neutral;
  final double[] hotTail;
  final double[] neutralTail;
  double source;

  /** Factor on the nominal conductance of each load of the survey. */
  final double[] loadFactors;

  /** What each reading would be. */
  final double[] values;

  /** Slopes by node and reading: along the hot, along the neutral of the cable to the node. */
  final double[][] alongHot;

  final double[][] alongNeutral;
  final double[][] alongHotTail;
  final double[][] alongNeutralTail;
  final double[] alongSource;

  /** Slopes along the logarithm of each load's conductance. */
  final double[][] alongLoad;

  private long[] ways = new long[0];
  private final double[] ground;

  RunModel(ReducedSurvey survey, CableBelief belief, double volts, int nodes) {
    this.survey = survey;
    this.belief = belief;
    this.volts = volts;
    this.nodes = nodes;
    int readings = survey.readings().size();
    this.hot = new double[nodes];
    this.neutral = new double[nodes];
    this.hotTail = new double[nodes];
    this.neutralTail = new double[nodes];
    this.ground = new double[nodes];
    this.loadFactors = new double[survey.loadSigmas().size()];
    this.values = new double[readings];
    this.alongHot = new double[nodes][readings];
    this.alongNeutral = new double[nodes][readings];
    this.alongHotTail = new double[nodes][readings];
    this.alongNeutralTail = new double[nodes][readings];
    this.alongSource = new double[readings];
    this.alongLoad = new double[loadFactors.length][readings];
  }

  /** Takes a map; cables of length 0 and sound tails until they are set. */
  void on(RunTree tree) {
    ways = tree.ways();
    for (int node = 0; node < nodes; node++) {
      hotTail[node] = belief.tailOhms(node);
      neutralTail[node] = hotTail[node];
      ground[node] = node > 0 && tree.isPresent(node) ? belief.ohms(tree.parent(node), node) : 0;
    }
  }

  /** What is read in every test, without slopes. */
  void predict() {
    List<ReducedReading> readings = survey.readings();
    for (int r = 0; r < readings.size(); r++) {
      ReducedReading reading = readings.get(r);
      if (reading.kind() == ReducedReading.Kind.LIVE) {
        live(r, reading, survey.loads().get(reading.test()), false);
      } else {
        values[r] = passive(reading);
      }
    }
  }

  /** What is read in every test, and its slopes. */
  void evaluate() {
    clear(alongHot);
    clear(alongNeutral);
    clear(alongHotTail);
    clear(alongNeutralTail);
    clear(alongLoad);
    Arrays.fill(alongSource, 0);
    List<ReducedReading> readings = survey.readings();
    for (int r = 0; r < readings.size(); r++) {
      ReducedReading reading = readings.get(r);
      if (reading.kind() == ReducedReading.Kind.LIVE) {
        live(r, reading, survey.loads().get(reading.test()), true);
      } else {
        values[r] = passive(reading);
        passiveSlopes(r, reading);
      }
    }
  }

  private static void clear(double[][] columns) {
    for (double[] column : columns) {
      Arrays.fill(column, 0);
    }
  }

  private void live(int r, ReducedReading reading, List<ReducedLoad> on, boolean withSlopes) {
    int own = reading.siemens() > 0 ? 1 : 0;
    int count = on.size() + own;
    if (count == 0) {
      values[r] = reading.overSource() * volts;
      return;
    }
    int[] at = new int[count];
    double[] siemens = new double[count];
    for (int k = 0; k < on.size(); k++) {
      at[k] = on.get(k).node();
      siemens[k] = on.get(k).siemens() * loadFactors[on.get(k).number()];
    }
    if (own > 0) {
      at[count - 1] = reading.node();
      siemens[count - 1] = reading.siemens();
    }
    double[] amperes = new double[count];
    double[] a = new double[count];
    double[][] matrix = new double[count][count];
    for (int k = 0; k < count; k++) {
      for (int m = 0; m <= k; m++) {
        double both = shared(at[k], at[m], 1, 1, 1);
        matrix[k][m] = both;
        matrix[m][k] = both;
      }
      matrix[k][k] += 1 / siemens[k];
      amperes[k] = volts;
      a[k] =
          reading.load() >= 0
              ? (reading.load() == k ? -1 : 0)
              : shared(
                  reading.node(),
                  at[k],
                  reading.overSource(),
                  reading.overHot(),
                  reading.overNeutral());
    }
    double[] z = a.clone();
    SmallSystem.solve(matrix, amperes, a);
    double value = reading.overSource() * volts;
    for (int k = 0; k < count; k++) {
      value -= z[k] * amperes[k];
    }
    values[r] = value;
    if (withSlopes) {
      slopes(r, reading, on, at, siemens, amperes, a);
    }
  }

  private void slopes(
      int r,
      ReducedReading reading,
      List<ReducedLoad> on,
      int[] at,
      double[] siemens,
      double[] amperes,
      double[] a) {
    boolean isClamp = reading.load() >= 0;
    long own = isClamp ? 0 : ways[reading.node()];
    long any = 0;
    double all = 0;
    double sum = 0;
    for (int k = 0; k < at.length; k++) {
      any |= ways[at[k]];
      all += amperes[k];
      sum += a[k];
    }
    alongSource[r] = -all * (reading.overSource() - sum);
    for (long left = any; left != 0; left &= left - 1) {
      int cable = Long.numberOfTrailingZeros(left);
      long bit = 1L << cable;
      double through = 0;
      double beyond = 0;
      for (int k = 0; k < at.length; k++) {
        if ((ways[at[k]] & bit) != 0) {
          through += amperes[k];
          beyond += a[k];
        }
      }
      int mine = (own & bit) != 0 ? 1 : 0;
      alongHot[cable][r] = -through * (mine * reading.overHot() - beyond);
      alongNeutral[cable][r] = -through * (mine * reading.overNeutral() - beyond);
    }
    for (int k = 0; k < at.length; k++) {
      int mine = !isClamp && at[k] == reading.node() ? 1 : 0;
      double through = 0;
      double beyond = 0;
      for (int m = 0; m < at.length; m++) {
        if (at[m] == at[k]) {
          through += amperes[m];
          beyond += a[m];
        }
      }
      alongHotTail[at[k]][r] = -through * (mine * reading.overHot() - beyond);
      alongNeutralTail[at[k]][r] = -through * (mine * reading.overNeutral() - beyond);
      if (k < on.size()) {
        alongLoad[on.get(k).number()][r] -= a[k] * amperes[k] / siemens[k];
      }
    }
  }

  /** The sum of what the ways to two devices share, each conductor as often as it counts. */
  private double shared(int one, int other, int overSource, int overHot, int overNeutral) {
    double hots = 0;
    double neutrals = 0;
    for (long left = ways[one] & ways[other]; left != 0; left &= left - 1) {
      int cable = Long.numberOfTrailingZeros(left);
      hots += hot[cable];
      neutrals += neutral[cable];
    }
    if (one == other) {
      hots += hotTail[one];
      neutrals += neutralTail[one];
    }
    return overSource * source + overHot * hots + overNeutral * neutrals;
  }

  /** A loop, or a way up to a link: the sum of its resistances, in parallel with the range. */
  private double passive(ReducedReading reading) {
    double ohms = reading.overSource() * source;
    for (long left = wayOf(reading); left != 0; left &= left - 1) {
      int cable = Long.numberOfTrailingZeros(left);
      ohms +=
          reading.overHot() * hot[cable]
              + reading.overNeutral() * neutral[cable]
              + reading.overGround() * ground[cable];
    }
    for (int end : endsOf(reading)) {
      ohms +=
          reading.overHot() * hotTail[end]
              + reading.overNeutral() * neutralTail[end]
              + reading.overGround() * belief.tailOhms(end);
    }
    return ohms / (1 + ohms / reading.greatest());
  }

  private void passiveSlopes(int r, ReducedReading reading) {
    double share = 1 - values[r] / reading.greatest();
    double slope = share * share;
    alongSource[r] = slope * reading.overSource();
    for (long left = wayOf(reading); left != 0; left &= left - 1) {
      int cable = Long.numberOfTrailingZeros(left);
      alongHot[cable][r] = slope * reading.overHot();
      alongNeutral[cable][r] = slope * reading.overNeutral();
    }
    for (int end : endsOf(reading)) {
      alongHotTail[end][r] = slope * reading.overHot();
      alongNeutralTail[end][r] = slope * reading.overNeutral();
    }
  }

  private long wayOf(ReducedReading reading) {
    boolean isLoop = reading.kind() == ReducedReading.Kind.LOOP;
    return ways[reading.node()] ^ (isLoop ? 0 : ways[reading.link()]);
  }

  /** The devices whose tails lie in it: none where meter and link are at one box. */
  private static int[] endsOf(ReducedReading reading) {
    if (reading.kind() == ReducedReading.Kind.LOOP) {
      return new int[] {reading.node()};
    }
    return reading.link() == reading.node()
        ? new int[0]
        : new int[] {reading.node(), reading.link()};
  }
}
