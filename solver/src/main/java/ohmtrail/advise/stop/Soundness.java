package ohmtrail.advise.stop;

import java.util.List;
import ohmtrail.circuit.ConductorRole;
import ohmtrail.circuit.JointRole;
import ohmtrail.locate.Diagnosis;
import ohmtrail.locate.Verdict;
import ohmtrail.predict.Degradation;
import ohmtrail.predict.Predictor;
import ohmtrail.problem.Problem;
import ohmtrail.reference.Assumption;
import ohmtrail.report.caution.SupplySide;
import ohmtrail.survey.Finding;
import ohmtrail.survey.Measurand;
import ohmtrail.survey.Meter;
import ohmtrail.survey.Reading;
import ohmtrail.survey.ReadingError;
import ohmtrail.survey.Survey;
import ohmtrail.survey.Test;

/** Whether a circuit may be called sound. Whatever says so asks here. */
public final class Soundness {
  /** A reading more probably wrong than this has shown nothing. */
  private static final double PROBABLY_WRONG = 0.5;

  private Soundness() {}

  /**
   * Whether it may: more probably than assumed, after a reading under load that could have shown a
   * joint, where no box was found burnt and nothing speaks against the supply.
   */
  public static boolean mayBeCalled(Problem problem, Diagnosis diagnosis) {
    return diagnosis.verdict() == Verdict.HEALTHY
        && diagnosis.healthyProbability()
            > problem.assumptions().value(Assumption.SOUND_PROBABILITY)
        && problem.survey().places(Finding.State.BURNT).isEmpty()
        && !SupplySide.isAtFault(problem, diagnosis)
        && wasTriedUnderLoad(problem, diagnosis);
  }

  private static boolean wasTriedUnderLoad(Problem problem, Diagnosis diagnosis) {
    double trial = problem.assumptions().value(Assumption.SOUND_TRIAL_OHMS);
    Predictor predictor = new Predictor(problem.circuit(), problem.survey(), problem.assumptions());
    double[] point = diagnosis.bestPointArray();
    List<Double> sound = predictor.readings(List.of(), point);
    return problem.circuit().joints().stream()
        .filter(joint -> joint.role() != JointRole.SUPPLY)
        .filter(joint -> joint.conductor() != ConductorRole.GROUND)
        .map(joint -> List.of(new Degradation(joint.id(), trial)))
        .map(bad -> predictor.readings(bad, point))
        .anyMatch(bad -> isMoved(sound, bad, problem, diagnosis));
  }

  private static boolean isMoved(
      List<Double> sound, List<Double> bad, Problem problem, Diagnosis diagnosis) {
    double sigmas = problem.assumptions().value(Assumption.SOUND_TRIAL_SIGMAS);
    int place = 0;
    for (Test test : problem.survey().tests()) {
      for (Reading reading : test.readings()) {
        double moved = Math.abs(bad.get(place) - sound.get(place));
        boolean counts = diagnosis.readings().get(place).wrongProbability() < PROBABLY_WRONG;
        place++;
        if (counts
            && isUnderLoad(test, reading, problem.survey())
            && moved > sigmas * sigma(reading, problem)) {
          return true;
        }
      }
    }
    return false;
  }

  /** While a load is on, or by a tester that draws its own. */
  private static boolean isUnderLoad(Test test, Reading reading, Survey survey) {
    return !test.isDead()
        && (!survey.loadsOn(test).isEmpty() || reading.measurand() == Measurand.LOOP_IMPEDANCE);
  }

  private static double sigma(Reading reading, Problem problem) {
    Meter meter = problem.survey().meter(reading.meter());
    ReadingError error = ReadingError.of(reading, meter, problem.assumptions());
    return Math.hypot(Math.sqrt(error.variance()), error.driftSigma() * reading.value());
  }
}
