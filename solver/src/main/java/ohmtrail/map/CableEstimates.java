package ohmtrail.map;

import java.util.ArrayList;
import java.util.List;
import ohmtrail.map.evidence.MapExplanation;
import ohmtrail.map.search.MapPosterior;
import ohmtrail.map.tree.RunNodes;
import ohmtrail.map.tree.RunTree;

/** The cables of a map as long as they fit best. */
final class CableEstimates {
  /** 90 % of a normal distribution lie within so many standard deviations. */
  private static final double NINETY_PER_CENT = 1.6449;

  /** A cable of whose uncertainty more than this is left was not measured. */
  private static final double MEASURED = 0.8;

  /** Hot and neutral. */
  private static final int CONDUCTORS = 2;

  private final RunNodes nodes;
  private final MapPosterior posterior;

  CableEstimates(RunNodes nodes, MapPosterior posterior) {
    this.nodes = nodes;
    this.posterior = posterior;
  }

  List<EstimatedCable> of(RunTree tree, MapExplanation explanation) {
    List<EstimatedCable> cables = new ArrayList<>();
    nodes
        .map(tree)
        .feeds()
        .forEach(
            feed ->
                explanation.cables().stream()
                    .filter(cable -> cable.node() == nodes.number(feed.box()))
                    .forEach(cable -> cables.add(estimate(tree, cable))));
    return cables;
  }

  private EstimatedCable estimate(RunTree tree, MapExplanation.FittedCable cable) {
    int feeder = tree.parent(cable.node());
    double step = NINETY_PER_CENT * cable.sigma();
    double low = ohms(cable, cable.shift() - step);
    double value = ohms(cable, cable.shift());
    double high = ohms(cable, cable.shift() + step);
    return new EstimatedCable(
        nodes.name(feeder),
        nodes.name(cable.node()),
        new Estimate(CONDUCTORS * value, CONDUCTORS * low, CONDUCTORS * high),
        new Estimate(metres(cable, value), metres(cable, low), metres(cable, high)),
        posterior.probability(cable.node(), feeder),
        cable.sigma() < MEASURED);
  }

  private static double ohms(MapExplanation.FittedCable cable, double u) {
    return cable.medianOhms() * Math.exp(cable.logSigma() * u);
  }

  private static double metres(MapExplanation.FittedCable cable, double ohms) {
    return Math.max(0, ohms - cable.jointOhms()) / cable.ohmsPerMetre();
  }
}
