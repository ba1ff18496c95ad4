package ohmtrail.report;

import java.util.ArrayList;
import java.util.List;
import ohmtrail.circuit.Box;
import ohmtrail.locate.Diagnosis;
import ohmtrail.predict.SolvedSurvey;
import ohmtrail.problem.Problem;
import ohmtrail.survey.Meter;
import ohmtrail.survey.ProbePoints;
import ohmtrail.survey.Reading;
import ohmtrail.survey.Survey;
import ohmtrail.survey.Test;

/** Where a voltage is held up by next to nothing. */
final class GhostVoltage {
  /** A voltage that a low-impedance meter pulls below this share is held up by next to nothing. */
  private static final double SHARE = 0.1;

  /** Less is no voltage to speak of. */
  private static final double LEAST_VOLTS = 1;

  private static final String HIGH = "stand-in of high impedance";
  private static final String LOW = "stand-in of low impedance";

  private GhostVoltage() {}

  /**
   * The receptacles at which, with nothing plugged in, a low-impedance meter pulls down what
   * another shows, by the best explanation; everything but its ohms as stated, for the stand-in
   * meters have no fitted values.
   */
  static List<String> boxes(Problem problem, Diagnosis diagnosis) {
    if (!isPossible(diagnosis)) {
      return List.of();
    }
    List<Reading> readings = new ArrayList<>();
    for (Box box : problem.circuit().boxes()) {
      if (box.hasReceptacle()) {
        ProbePoints usual = ProbePoints.usual(problem.circuit(), box.name());
        readings.add(new Reading(box.name(), usual, HIGH, 0));
        readings.add(new Reading(box.name(), usual, LOW, 0));
      }
    }
    Test idle = new Test("idle", List.of(), readings);
    Survey survey =
        new Survey(
            List.of(Meter.highImpedance(HIGH), Meter.lowImpedance(LOW)), List.of(), List.of(idle));
    Problem stand = problem.withSurvey(survey);
    List<SolvedSurvey.PredictedReading> shown =
        SolvedSurvey.asStated(stand, diagnosis.best()).readings(idle);
    List<String> ghosts = new ArrayList<>();
    for (int r = 0; r < shown.size(); r += 2) {
      double high = shown.get(r).shown();
      if (high > LEAST_VOLTS && shown.get(r + 1).shown() < SHARE * high) {
        ghosts.add(readings.get(r).box());
      }
    }
    return ghosts;
  }

  /** Ohms that the low-impedance meter does not see through: so many times its own. */
  private static boolean isPossible(Diagnosis diagnosis) {
    double least = (1 / SHARE - 1) * Meter.LOW_IMPEDANCE_OHMS / 2;
    return diagnosis.best().stream().anyMatch(degradation -> degradation.ohms() > least);
  }
}
