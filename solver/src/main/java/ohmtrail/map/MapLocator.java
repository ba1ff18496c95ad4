package ohmtrail.map;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.DoubleConsumer;
import ohmtrail.map.evidence.MapEvidence;
import ohmtrail.map.evidence.MapExplanation;
import ohmtrail.map.known.MapProblem;
import ohmtrail.map.search.MapPosterior;
import ohmtrail.map.search.MapSearch;
import ohmtrail.map.search.SearchEffort;
import ohmtrail.map.search.WeighedTree;
import ohmtrail.map.tree.RunNodes;
import ohmtrail.map.tree.RunTree;
import ohmtrail.map.tree.TreeRules;
import ohmtrail.survey.Finding;

/**
 * Finds which box feeds which: the posterior over the maps of a run by Bayes' theorem, prior times
 * marginal likelihood. The same problem always gets the same answer. Immutable; safe for use by
 * several threads.
 */
public final class MapLocator {
  /** What the sampler draws from; the answer says so. */
  private static final long SEED = 14;

  /** Maps and feeders below this probability are not in the report. */
  private static final double SHOWN = 0.001;

  private static final int MOST_MAPS = 200;

  /** Where a joint may be bad is averaged over maps until so much of the probability is in. */
  private static final double ENOUGH = 0.995;

  private static final int MOST_EXPLAINED = 400;

  private final SearchEffort effort;

  /** Locates with the usual effort. */
  public MapLocator() {
    this(SearchEffort.usual());
  }

  /** Locates with another effort, as a study of the method does. */
  public MapLocator(SearchEffort effort) {
    this.effort = effort;
  }

  /**
   * Finds the map.
   *
   * @throws ohmtrail.circuit.CircuitException when no map fits all that is known
   */
  public MapReport map(MapProblem problem) {
    return map(problem, done -> {});
  }

  /**
   * Finds the map, and says how far it has come.
   *
   * @param progress told the share that is done, 0 to 1, never less than before by much
   * @throws ohmtrail.circuit.CircuitException when no map fits all that is known
   */
  public MapReport map(MapProblem problem, DoubleConsumer progress) {
    MapEvidence evidence = new MapEvidence(problem);
    MapPosterior posterior = new MapSearch(problem, evidence, effort, SEED, progress).posterior();
    RunNodes nodes = RunNodes.of(problem.run());
    RunTree best = posterior.trees().get(0).tree();
    return new MapReport(
        problem,
        maps(posterior, nodes),
        boxes(posterior, nodes),
        new CableEstimates(nodes, posterior).of(best, evidence.explanation(best)),
        new Alike(TreeRules.of(problem.run()), evidence).in(best),
        badJoint(posterior, nodes, evidence),
        new MapReport.Search(
            posterior.isExact(), posterior.weighed(), SEED, posterior.drawn(), evidence.leftOut()));
  }

  private static List<RankedMap> maps(MapPosterior posterior, RunNodes nodes) {
    List<RankedMap> maps = new ArrayList<>();
    for (WeighedTree each : posterior.trees()) {
      if (maps.isEmpty() || (each.probability() >= SHOWN && maps.size() < MOST_MAPS)) {
        maps.add(
            new RankedMap(
                nodes.map(each.tree()), each.probability(), each.logPrior(), each.logEvidence()));
      }
    }
    return maps;
  }

  private static List<BoxFeeders> boxes(MapPosterior posterior, RunNodes nodes) {
    List<BoxFeeders> boxes = new ArrayList<>();
    nodes
        .map(posterior.trees().get(0).tree())
        .feeds()
        .forEach(feed -> boxes.add(feeders(posterior, nodes, nodes.number(feed.box()))));
    return boxes;
  }

  private static BoxFeeders feeders(MapPosterior posterior, RunNodes nodes, int node) {
    double[] shares = new double[nodes.count()];
    double there = 0;
    for (WeighedTree each : posterior.trees()) {
      if (each.tree().isPresent(node)) {
        shares[each.tree().parent(node)] += each.probability();
        there += each.probability();
      }
    }
    List<BoxFeeders.Share> feeders = new ArrayList<>();
    for (int feeder = 0; feeder < shares.length; feeder++) {
      if (shares[feeder] >= SHOWN * there) {
        feeders.add(new BoxFeeders.Share(nodes.name(feeder), shares[feeder] / there));
      }
    }
    feeders.sort(Comparator.comparingDouble(BoxFeeders.Share::probability).reversed());
    return new BoxFeeders(nodes.name(node), feeders);
  }

  private static BadJoint badJoint(MapPosterior posterior, RunNodes nodes, MapEvidence evidence) {
    Map<String, Double> boxes = new LinkedHashMap<>();
    Map<List<String>, Double> stretches = new HashMap<>();
    double sound = 0;
    double taken = 0;
    int explained = 0;
    for (WeighedTree each : posterior.trees()) {
      if (taken > ENOUGH || explained++ == MOST_EXPLAINED) {
        break;
      }
      taken += each.probability();
      MapExplanation explanation = evidence.explanation(each.tree());
      sound += each.probability() * explanation.soundShare();
      for (MapExplanation.Bad bad : explanation.bad()) {
        double near = each.probability() * bad.near();
        double far = each.probability() * bad.far();
        String box = bad.node() == 0 ? Finding.SUPPLY : nodes.name(bad.node());
        boxes.merge(box, far, Double::sum);
        if (bad.onCable()) {
          String feeder = nodes.name(each.tree().parent(bad.node()));
          boxes.merge(feeder, near, Double::sum);
          stretches.merge(List.of(feeder, box), near + far, Double::sum);
        }
      }
    }
    double all = taken;
    return new BadJoint(
        sound / all,
        boxes.entrySet().stream()
            .map(entry -> new BadJoint.Place(entry.getKey(), entry.getValue() / all))
            .sorted(Comparator.comparingDouble(BadJoint.Place::probability).reversed())
            .toList(),
        stretches.entrySet().stream()
            .filter(entry -> entry.getValue() >= SHOWN * all)
            .map(
                entry ->
                    new BadJoint.Stretch(
                        entry.getKey().get(0), entry.getKey().get(1), entry.getValue() / all))
            .sorted(
                Comparator.comparingDouble(BadJoint.Stretch::probability)
                    .reversed()
                    .thenComparing(BadJoint.Stretch::feeder)
                    .thenComparing(BadJoint.Stretch::box))
            .toList());
  }
}
