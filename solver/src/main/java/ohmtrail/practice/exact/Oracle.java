package ohmtrail.practice.exact;

import java.util.Optional;
import ohmtrail.practice.Disturbance;
import ohmtrail.practice.FaultKind;
import ohmtrail.practice.Population;
import ohmtrail.practice.PracticeCase;
import ohmtrail.practice.answer.Answer;

/**
 * What the readings hold at most: a method that knows all that the cases of a population were drawn
 * from, and that no other can beat on average.
 */
public interface Oracle {
  /** Ranks the boxes of a case. Safe to ask from several threads. */
  Answer answer(PracticeCase practiceCase);

  /** The one for a population; empty where none is exact. */
  static Optional<Oracle> of(Population population) {
    FaultKind faults = population.faults();
    if (population.disturbance() != Disturbance.NONE) {
      return Optional.empty();
    }
    if (faults.joints() == 1) {
      return Optional.of(new OneJointOracle(faults));
    }
    return TwoJointOracle.knows(faults)
        ? Optional.of(new TwoJointOracle(faults))
        : Optional.empty();
  }
}
