package ohmtrail.advise.visit;

import java.util.List;
import ohmtrail.survey.Test;

/** One way to read a circuit. Stateless. */
public interface VisitKind {
  /**
   * The visits of this kind that could be made to a box.
   *
   * @param box a box within reach
   * @param atHand what there is to read with
   * @return the tests of each visit, in the order in which they are taken; every reading is at the
   *     box
   */
  List<List<Test>> at(String box, AtHand atHand);

  /** Every kind there is. */
  static List<VisitKind> all() {
    return List.of(
        new VoltageVisits(),
        new LoopVisits(),
        new ContinuityVisits(),
        new LeadVisits(),
        new ClampVisits(),
        new OpenBoxVisits());
  }
}
