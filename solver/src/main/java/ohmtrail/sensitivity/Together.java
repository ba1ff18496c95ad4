package ohmtrail.sensitivity;

import java.util.List;
import java.util.Optional;
import ohmtrail.reference.Assumption;

/**
 * The conclusion with all assumptions that have an effect drawn at once, each evenly over its
 * range, by a Latin hypercube.
 *
 * @param draws how many; 0 where no assumption has an effect
 * @param seed of the sample
 * @param varied the assumptions that were drawn
 * @param sameVerdict share of the draws with the verdict that was stated
 * @param sameBox share in which the box is among those that were stated
 * @param sameConductor share in which the conductor is
 * @param sameOhms share in which the ohms lie within the interval that was stated
 * @param probability of the conclusion that was stated, over the draws that share its verdict and
 *     its box; empty where none does
 * @param ohms their estimates, over the same draws; empty where there is none
 */
public record Together(
    int draws,
    long seed,
    List<Assumption> varied,
    double sameVerdict,
    double sameBox,
    double sameConductor,
    double sameOhms,
    Optional<Quantiles> probability,
    Optional<Quantiles> ohms) {
  /** Copies the list. */
  public Together {
    varied = List.copyOf(varied);
  }

  static Together of(
      Conclusion stated, List<Conclusion> drawn, long seed, List<Assumption> varied) {
    List<Change> changes = drawn.stream().map(stated::to).toList();
    List<Conclusion> alike =
        drawn.stream()
            .filter(each -> !stated.to(each).verdict() && !stated.to(each).box())
            .toList();
    return new Together(
        drawn.size(),
        seed,
        varied,
        share(changes.stream().filter(change -> !change.verdict()).count(), drawn.size()),
        share(changes.stream().filter(change -> !change.box()).count(), drawn.size()),
        share(changes.stream().filter(change -> !change.conductor()).count(), drawn.size()),
        share(changes.stream().filter(change -> !change.ohms()).count(), drawn.size()),
        quantiles(alike.stream().map(Conclusion::probability).toList()),
        quantiles(alike.stream().flatMap(each -> each.estimate().stream().boxed()).toList()));
  }

  private static double share(long count, int all) {
    return all == 0 ? 1 : (double) count / all;
  }

  private static Optional<Quantiles> quantiles(List<Double> values) {
    return values.isEmpty() ? Optional.empty() : Optional.of(Quantiles.of(values));
  }
}
