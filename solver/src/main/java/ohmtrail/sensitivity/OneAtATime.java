package ohmtrail.sensitivity;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import ohmtrail.problem.Problem;
import ohmtrail.sensitivity.AssumptionEffect.TurningPoint;

/** Varies one assumption after the other, each to both ends of its range. */
final class OneAtATime {
  private final Problem problem;
  private final Conclusion stated;
  private final Variations variations;
  private final int halvings;

  OneAtATime(Problem problem, Conclusion stated, Variations variations, int halvings) {
    this.problem = problem;
    this.stated = stated;
    this.variations = variations;
    this.halvings = halvings;
  }

  List<AssumptionEffect> effects(List<AssumptionRange> ranges) {
    List<Problem> ends = new ArrayList<>();
    for (AssumptionRange range : ranges) {
      ends.add(at(range, 0));
      ends.add(at(range, 1));
    }
    List<Conclusion> conclusions = variations.conclusions(ends);
    List<Search> searches = new ArrayList<>();
    for (int r = 0; r < ranges.size(); r++) {
      searches.add(new Search(ranges.get(r), 0, stated.to(conclusions.get(2 * r))));
      searches.add(new Search(ranges.get(r), 1, stated.to(conclusions.get(2 * r + 1))));
    }
    halve(searches.stream().filter(search -> search.change.any()).toList());
    List<AssumptionEffect> effects = new ArrayList<>();
    for (int r = 0; r < ranges.size(); r++) {
      Conclusion low = conclusions.get(2 * r);
      Conclusion high = conclusions.get(2 * r + 1);
      effects.add(
          new AssumptionEffect(
              ranges.get(r),
              low,
              high,
              searches.get(2 * r).found(),
              searches.get(2 * r + 1).found(),
              AssumptionEffect.differs(stated, low) || AssumptionEffect.differs(stated, high)));
    }
    effects.sort(
        Comparator.comparing(
                (AssumptionEffect effect) ->
                    effect.below().isPresent() || effect.above().isPresent())
            .reversed()
            .thenComparing(
                Comparator.comparingDouble(AssumptionEffect::spanOfLogOhms)
                    .thenComparingDouble(AssumptionEffect::spanOfProbability)
                    .reversed())
            .thenComparing(effect -> effect.range().assumption()));
    return effects;
  }

  private Problem at(AssumptionRange range, double share) {
    return Sensitivity.with(problem, range.assumption(), range.at(share));
  }

  /** Bisection between the stated value and an end at which the conclusion is another one. */
  private static final class Search {
    private final AssumptionRange range;
    private double same;
    private double other;
    private Change change;

    Search(AssumptionRange range, double end, Change atEnd) {
      this.range = range;
      this.same = range.statedShare();
      this.other = end;
      this.change = atEnd;
    }

    double middle() {
      return (same + other) / 2;
    }

    void narrow(Change atMiddle) {
      if (atMiddle.any()) {
        other = middle();
        change = atMiddle;
      } else {
        same = middle();
      }
    }

    Optional<TurningPoint> found() {
      return change.any()
          ? Optional.of(new TurningPoint(range.at(other), change))
          : Optional.empty();
    }
  }

  private void halve(List<Search> searches) {
    variations.expect(halvings * searches.size());
    for (int h = 0; h < halvings; h++) {
      List<Conclusion> middles =
          variations.conclusions(
              searches.stream().map(search -> at(search.range, search.middle())).toList());
      for (int s = 0; s < searches.size(); s++) {
        searches.get(s).narrow(stated.to(middles.get(s)));
      }
    }
  }
}
