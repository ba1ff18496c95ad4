package ohmtrail.map.evidence;

import java.util.ArrayList;
import java.util.List;
import ohmtrail.map.tree.RunTree;

/** What a map explains, with the fit of its most probable hypothesis. */
final class ExplainedTree {
  private final RunTree tree;
  private final List<PlacePrior> places;
  private final double[] logs;
  private final double logSound;
  private final TreeFit best;
  private final int[] cables;

  /**
   * Holds it.
   *
   * @param logs marginal likelihood with the bad joint in each place, without its prior
   * @param logSound marginal likelihood times prior without any
   * @param best the fit of the most probable hypothesis
   * @param cables nodes that have a cable, in the order of the unknowns
   */
  ExplainedTree(
      RunTree tree,
      List<PlacePrior> places,
      double[] logs,
      double logSound,
      TreeFit best,
      int[] cables) {
    this.tree = tree;
    this.places = places;
    this.logs = logs;
    this.logSound = logSound;
    this.best = best;
    this.cables = cables;
  }

  double log() {
    double most = logSound;
    for (int p = 0; p < logs.length; p++) {
      most = Math.max(most, places.get(p).log() + logs[p]);
    }
    double sum = Math.exp(logSound - most);
    for (int p = 0; p < logs.length; p++) {
      sum += Math.exp(places.get(p).log() + logs[p] - most);
    }
    return most + Math.log(sum);
  }

  MapExplanation explanation(CableBelief belief) {
    double log = log();
    List<MapExplanation.Bad> bad = new ArrayList<>();
    for (int p = 0; p < logs.length; p++) {
      PlacePrior prior = places.get(p);
      double share = Math.exp(prior.log() + logs[p] - log) / (prior.near() + prior.far());
      bad.add(
          new MapExplanation.Bad(
              prior.place().part() == JointPlace.Part.CABLE,
              prior.place().node(),
              share * prior.near(),
              share * prior.far()));
    }
    List<MapExplanation.FittedCable> fitted = new ArrayList<>();
    for (int c = 0; c < cables.length; c++) {
      int node = cables[c];
      int feeder = tree.parent(node);
      double[] unit = new double[best.point.length];
      unit[c] = 1;
      double sigma = Math.sqrt(best.solved(unit)[c]);
      fitted.add(
          new MapExplanation.FittedCable(
              node,
              belief.ohms(feeder, node),
              belief.sigma(feeder, node),
              best.point[c],
              sigma,
              belief.jointOhms(),
              belief.ohmsPerMetre(feeder, node)));
    }
    return new MapExplanation(log, Math.exp(logSound - log), bad, fitted);
  }
}
