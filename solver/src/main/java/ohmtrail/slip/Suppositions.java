package ohmtrail.slip;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import ohmtrail.problem.Problem;

/**
 * Every slip that may have been made in stating a problem, each with its prior. Immutable.
 *
 * @param stated the problem as stated
 * @param near slips that leave every box its neighbours, or exchange two of them
 * @param far boxes that are further off
 */
record Suppositions(Problem stated, List<Supposition> near, List<Supposition> far) {
  Suppositions {
    near = List.copyOf(near);
    far = List.copyOf(far);
  }

  static Suppositions of(Problem stated) {
    List<Supposition> all = new ArrayList<>();
    all.addAll(new LoadSlips(stated).all());
    all.addAll(new SupplySlips(stated).all());
    all.addAll(new OrderSlips(stated).exchanges());
    return new Suppositions(stated, all, new OrderSlips(stated).moves());
  }

  /** The problem as stated, with what the slips leave it of the prior. */
  Supposition asStated() {
    double slipped =
        Stream.concat(near.stream(), far.stream())
            .mapToDouble(slip -> Math.exp(slip.logPrior()))
            .sum();
    return new Supposition(Optional.empty(), Math.log1p(-Math.min(0.9, slipped)), stated, 0);
  }
}
