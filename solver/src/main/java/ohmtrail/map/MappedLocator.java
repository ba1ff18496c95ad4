package ohmtrail.map;

import java.util.ArrayList;
import java.util.List;
import ohmtrail.locate.Posterior;
import ohmtrail.slip.AveragedLocator;
import ohmtrail.slip.PossibleProblem;

/**
 * Finds the degraded joint of a run whose map is not settled: the posterior of each probable map,
 * worked out on its full network, by its prior and its marginal likelihood there.
 *
 * <p>The answer is told on the most probable map ({@link MapReport#asLikeliest()}): a joint of
 * another map has the name of one of its conductor in its box.
 */
public final class MappedLocator {
  /** Maps are averaged over until so much of the probability is in. */
  private static final double ENOUGH = 0.97;

  private final int mostMaps;

  /** Averages over eight maps at most. */
  public MappedLocator() {
    this(8);
  }

  /**
   * Averages over other maps.
   *
   * @param mostMaps no more than so many, at least 1
   */
  public MappedLocator(int mostMaps) {
    this.mostMaps = mostMaps;
  }

  /** Locates. */
  public Posterior posterior(MapReport report) {
    double taken = 0;
    List<PossibleProblem> possible = new ArrayList<>();
    for (RankedMap map : report.maps()) {
      if (taken < ENOUGH && possible.size() < mostMaps) {
        possible.add(new PossibleProblem(report.problem().with(map.map()), map.logPrior()));
        taken += map.probability();
      }
    }
    return possible.size() == 1
        ? new AveragedLocator().posterior(possible.get(0).problem())
        : new AveragedLocator().posterior(possible);
  }
}
