package ohmtrail.locate;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import ohmtrail.predict.Degradation;

/**
 * Two or three degraded joints at once: the best combination, and for each of its joints what else
 * could stand in its place.
 *
 * @param combination the best combination
 * @param slots per joint of it, every joint that may stand there with the others kept, weighed
 * @param logPosterior logarithm of prior times evidence of all that the slots stand for
 */
record SeveralFaults(Combination combination, List<List<Candidate>> slots, double logPosterior) {

  static Optional<SeveralFaults> of(List<Combination> combinations, Companions companions) {
    return CombinationSearch.bestJoined(combinations).map(best -> expand(best, companions));
  }

  private static SeveralFaults expand(Combination best, Companions companions) {
    List<List<Candidate>> slots = new ArrayList<>();
    double logPosterior = best.logPosterior();
    for (Degradation degradation : best.degradations()) {
      List<Degradation> others = new ArrayList<>(best.degradations());
      others.remove(degradation);
      List<Candidate> slot = companions.weighed(others, best.fit().point());
      double own =
          slot.stream()
              .filter(candidate -> candidate.joint().id().equals(degradation.joint()))
              .mapToDouble(Candidate::logPosterior)
              .max()
              .orElse(Double.NEGATIVE_INFINITY);
      if (Double.isFinite(own)) {
        logPosterior += logSum(slot) - own;
      }
      slots.add(slot);
    }
    return new SeveralFaults(best, List.copyOf(slots), logPosterior);
  }

  /** Logarithm of the sum of a slot's posteriors. */
  static double logSum(List<Candidate> slot) {
    double sum = Double.NEGATIVE_INFINITY;
    for (Candidate candidate : slot) {
      sum = Weigher.logSum(sum, candidate.logPosterior());
    }
    return sum;
  }

  /** Probability of each box to hold a degraded joint, given that there are several. */
  Map<String, Double> boxes() {
    Map<String, Double> spared = new LinkedHashMap<>();
    for (List<Candidate> slot : slots) {
      double logSum = logSum(slot);
      Map<String, Double> here = new LinkedHashMap<>();
      slot.forEach(
          candidate ->
              here.merge(
                  candidate.joint().box(),
                  Math.exp(candidate.logPosterior() - logSum),
                  Double::sum));
      here.forEach((box, share) -> spared.merge(box, 1 - share, (a, b) -> a * b));
    }
    Map<String, Double> boxes = new LinkedHashMap<>();
    spared.forEach((box, probability) -> boxes.put(box, 1 - probability));
    return boxes;
  }
}
