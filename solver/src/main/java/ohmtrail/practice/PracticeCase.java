package ohmtrail.practice;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import ohmtrail.circuit.Circuit;
import ohmtrail.predict.Degradation;
import ohmtrail.problem.Problem;
import ohmtrail.reference.Assumptions;
import ohmtrail.survey.Complaint;
import ohmtrail.survey.Reading;
import ohmtrail.survey.Survey;
import ohmtrail.survey.Test;

/**
 * A circuit with readings, and what is really the matter with it.
 *
 * @param circuit as it is stated to be wired
 * @param survey the readings
 * @param assumptions what the method may take for granted
 * @param truth what it does not get to see
 */
public record PracticeCase(Circuit circuit, Survey survey, Assumptions assumptions, Truth truth) {
  /** Rejects missing parts. */
  public PracticeCase {
    Objects.requireNonNull(circuit, "circuit");
    Objects.requireNonNull(survey, "survey");
    Objects.requireNonNull(assumptions, "assumptions");
    Objects.requireNonNull(truth, "truth");
  }

  /** What is to be located: circuit, survey and assumptions. */
  public Problem problem() {
    return new Problem(circuit, survey, assumptions);
  }

  /** The same case, begun with that complaint. */
  public PracticeCase with(Complaint heard) {
    return new PracticeCase(circuit, survey.withComplaints(List.of(heard)), assumptions, truth);
  }

  /** The same case with every reading as the meter showed it. */
  public PracticeCase corrected() {
    List<Test> tests = new ArrayList<>();
    int place = 0;
    for (Test test : survey.tests()) {
      List<Reading> readings = new ArrayList<>();
      for (Reading reading : test.readings()) {
        Double shown = truth.wrongReadings().get(place++);
        readings.add(shown == null ? reading : reading.showing(shown));
      }
      tests.add(test.withReadings(readings));
    }
    Truth noneWrong =
        new Truth(truth.degraded(), truth.degradedIdle(), Map.of(), truth.point(), truth.drifts());
    return new PracticeCase(circuit, survey.withTests(tests), assumptions, noneWrong);
  }

  /**
   * A case on a circuit that was not drawn by chance: only the readings are. Every parameter, drift
   * and error is drawn from its own tolerance, and nothing else goes wrong.
   *
   * @param circuit the circuit
   * @param blank the survey; its voltages are of no effect
   * @param degraded the degraded joints with their ohms; empty for a healthy circuit
   * @param assumptions tolerances that are drawn from
   * @param seed the same seed gives the same readings
   */
  public static PracticeCase staged(
      Circuit circuit,
      Survey blank,
      List<Degradation> degraded,
      Assumptions assumptions,
      long seed) {
    return new ReadingDraw(circuit, blank, assumptions, Chance.of(seed, 0))
        .draw(degraded, Disturbance.NONE);
  }
}
