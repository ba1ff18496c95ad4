package ohmtrail.slip;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import ohmtrail.problem.Problem;
import ohmtrail.problem.Slip;
import ohmtrail.reference.Assumption;

/**
 * Every slip that may have been made in stating a problem, each with its prior. Immutable.
 *
 * @param stated the problem as stated
 * @param ofTests slips in what was on, and in the supply
 */
record Suppositions(Problem stated, List<Supposition> ofTests) {
  /** So much of the prior is left to the problem as stated at least. */
  private static final double LEAST_AS_STATED = 0.1;

  Suppositions {
    ofTests = List.copyOf(ofTests);
  }

  static Suppositions of(Problem stated) {
    return new Suppositions(
        stated,
        Stream.concat(new LoadSlips(stated).all().stream(), new SupplySlips(stated).all().stream())
            .toList());
  }

  /** A load off in one test alone. */
  List<Supposition> offInOneTest() {
    return ofTests.stream()
        .filter(each -> each.slip() instanceof Slip.LoadDidNotDraw off && off.tests().size() == 1)
        .toList();
  }

  /** Slips that exchange two neighbours; worked out anew at each call. */
  List<Supposition> exchanges() {
    return new OrderSlips(stated).exchanges();
  }

  /** Boxes that are further off; worked out anew at each call. */
  List<Supposition> moves() {
    return new OrderSlips(stated).moves();
  }

  /** The supposition of that slip among those that leave no box elsewhere. */
  Optional<Supposition> of(Slip slip) {
    return Stream.concat(ofTests.stream(), exchanges().stream())
        .filter(each -> each.slip().equals(slip))
        .findFirst();
  }

  /** The problem as stated, with what the slips leave it of the prior. */
  Supposition asStated() {
    double slipped =
        stated.assumptions().value(Assumption.BOXES_EXCHANGED)
            + stated.assumptions().value(Assumption.BOX_ELSEWHERE)
            + stated.assumptions().value(Assumption.UNLISTED_LOAD)
            + stated.assumptions().value(Assumption.SHARED_NEUTRAL)
            + ofTests.stream().mapToDouble(slip -> Math.exp(slip.logPrior())).sum();
    return new Supposition(
        List.of(), Math.log(Math.max(LEAST_AS_STATED, 1 - slipped)), () -> stated, 0);
  }
}
