package ohmtrail.map.tree;

import java.util.HashMap;
import java.util.Map;
import java.util.OptionalDouble;
import ohmtrail.map.known.UnknownRun;
import ohmtrail.reference.Assumption;
import ohmtrail.reference.Assumptions;

/**
 * How likely a tree is before any reading, by the way in which a run is laid: one box after the
 * other, the first on the panel, each further one on the box before it or, with the probability of
 * a tee, on any other that is there already, each as likely. The boxes come in any order, so the
 * prior of a tree is the sum over the orders in which it could have been laid, over how many orders
 * there are.
 *
 * <p>Straight distances make near boxes likelier neighbours: by the density of the distance between
 * boxes that a cable joins, over that between any two. Immutable.
 */
public final class TreePrior {
  /** Plans of fewer distances tell nothing of how far boxes lie apart in general. */
  private static final int FEWEST_DISTANCES = 3;

  /**
   * Distances are known no better than to this, relative: keeps a plan of equal ones from ruling.
   */
  private static final double LEAST_SPREAD = 0.3;

  private final RunNodes nodes;
  private final double logTee;
  private final double logOn;
  private final double logForeign;
  private final double logOwn;
  private final double logHidden;
  private final double logNotHidden;
  private final double[][] logNear;
  private final boolean[] mayBeForeign;

  /**
   * Prepares.
   *
   * @param run the run
   * @param nodes its nodes
   */
  public TreePrior(UnknownRun run, RunNodes nodes, Assumptions assumptions) {
    this.nodes = nodes;
    double tee = assumptions.value(Assumption.MAP_TEE_SHARE);
    double foreign = assumptions.value(Assumption.FOREIGN_OUTLET);
    double hidden = assumptions.value(Assumption.HIDDEN_BOX);
    this.logTee = Math.log(tee);
    this.logOn = Math.log1p(-tee);
    this.logForeign = Math.log(foreign);
    this.logOwn = Math.log1p(-foreign);
    this.logHidden = Math.log(hidden);
    this.logNotHidden = Math.log1p(-hidden);
    this.logNear = logNear(run, nodes, assumptions);
    this.mayBeForeign = new boolean[nodes.count()];
    run.outlets()
        .forEach(outlet -> mayBeForeign[nodes.number(outlet.name())] = outlet.mayBeForeign());
  }

  private static double[][] logNear(UnknownRun run, RunNodes nodes, Assumptions assumptions) {
    int count = nodes.count();
    double[][] logs = new double[count][count];
    double sum = 0;
    double squares = 0;
    int known = 0;
    for (int one = 0; one < count; one++) {
      for (int other = 0; other < one; other++) {
        OptionalDouble metres = run.straightMetres(nodes.name(one), nodes.name(other));
        if (metres.isPresent() && metres.getAsDouble() > 0) {
          double log = Math.log(metres.getAsDouble());
          sum += log;
          squares += log * log;
          known++;
        }
      }
    }
    if (known < FEWEST_DISTANCES) {
      return logs;
    }
    double mean = sum / known;
    double spread = Math.max(LEAST_SPREAD, Math.sqrt(Math.max(0, squares / known - mean * mean)));
    double usual =
        Math.log(
            assumptions.value(Assumption.UNKNOWN_LENGTH)
                / assumptions.value(Assumption.CABLE_PER_DISTANCE));
    double usualSpread =
        Math.hypot(
            assumptions.value(Assumption.UNKNOWN_LENGTH_SPREAD),
            assumptions.value(Assumption.CABLE_PER_DISTANCE_SPREAD));
    for (int one = 0; one < count; one++) {
      for (int other = 0; other < one; other++) {
        OptionalDouble metres = run.straightMetres(nodes.name(one), nodes.name(other));
        if (metres.isPresent() && metres.getAsDouble() > 0) {
          double log = Math.log(metres.getAsDouble());
          double ratio = logNormal(log, usual, usualSpread) - logNormal(log, mean, spread);
          logs[one][other] = ratio;
          logs[other][one] = ratio;
        }
      }
    }
    return logs;
  }

  private static double logNormal(double value, double mean, double sigma) {
    double off = (value - mean) / sigma;
    return -0.5 * off * off - Math.log(sigma);
  }

  /** Natural logarithm of the prior of a tree that fits the rules. */
  public double log(RunTree tree) {
    double log = 0;
    boolean[] own = new boolean[tree.size()];
    int boxes = 0;
    for (int node = 1; node < tree.size(); node++) {
      boolean foreign = isForeign(tree, node);
      if (nodes.isHidden(node)) {
        log += tree.isPresent(node) ? logHidden : logNotHidden;
      }
      if (mayBeForeign[node]) {
        log += foreign ? logForeign : logOwn;
      }
      if (tree.isPresent(node) && !nodes.isAnotherCircuit(node)) {
        log += logNear[node][tree.parent(node)];
        own[node] = !foreign;
        boxes += foreign ? 0 : 1;
      }
    }
    return log + logLaid(tree, own, boxes);
  }

  private boolean isForeign(RunTree tree, int node) {
    for (int at = node; at > 0; at = tree.parent(at)) {
      if (nodes.isAnotherCircuit(at)) {
        return true;
      }
    }
    return false;
  }

  /**
   * Sums over the orders in which the boxes could have been laid, by which of them are there
   * already and which was the last: as many terms as there are ways to stop halfway.
   */
  private double logLaid(RunTree tree, boolean[] own, int boxes) {
    record Stage(long laid, int last) {}
    Map<Stage, Double> stages = new HashMap<>(Map.of(new Stage(1, 0), 1.0));
    double logOrders = 0;
    for (int count = 1; count <= boxes; count++) {
      Map<Stage, Double> further = new HashMap<>();
      double on = count == 1 ? 1 : Math.exp(logOn);
      double tee = count == 1 ? 0 : Math.exp(logTee) / (count - 1);
      for (Map.Entry<Stage, Double> entry : stages.entrySet()) {
        Stage stage = entry.getKey();
        for (int node = 1; node < own.length; node++) {
          if (own[node]
              && (stage.laid & (1L << node)) == 0
              && (stage.laid & (1L << tree.parent(node))) != 0) {
            double share = tree.parent(node) == stage.last ? on : tee;
            if (share > 0) {
              further.merge(
                  new Stage(stage.laid | (1L << node), node),
                  entry.getValue() * share,
                  Double::sum);
            }
          }
        }
      }
      stages = further;
      logOrders += Math.log(count);
    }
    double sum = stages.values().stream().mapToDouble(Double::doubleValue).sum();
    return Math.log(sum) - logOrders;
  }
}
