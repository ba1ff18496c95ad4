package ohmtrail.predict;

import java.util.List;
import ohmtrail.circuit.Circuit;
import ohmtrail.problem.Problem;
import ohmtrail.reference.Assumptions;
import ohmtrail.survey.Survey;
import ohmtrail.survey.Test;

/** A circuit under tests, everything as stated. */
public final class Solved {
  private Solved() {}

  /** A survey as stated, with ohms added. */
  public static SolvedSurvey asStated(
      Circuit circuit, Survey survey, Assumptions assumptions, List<Degradation> degradations) {
    return SolvedSurvey.asStated(new Problem(circuit, survey, assumptions), degradations);
  }

  /** The current through the first of degraded joints in a test that is made with equipment. */
  public static double amperes(
      Circuit circuit,
      Survey equipment,
      Assumptions assumptions,
      Test test,
      Degradation... degraded) {
    return asStated(circuit, equipment.withTests(List.of(test)), assumptions, List.of(degraded))
        .jointAmperes(test, degraded[0].joint());
  }
}
