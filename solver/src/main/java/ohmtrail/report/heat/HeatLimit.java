package ohmtrail.report.heat;

import java.util.Comparator;
import ohmtrail.circuit.Joint;
import ohmtrail.circuit.JointRole;
import ohmtrail.locate.Suspect;
import ohmtrail.predict.SolvedSurvey;
import ohmtrail.problem.Problem;
import ohmtrail.reference.Assumption;

/**
 * What bounds the current through a joint for long: what protects it, and the voltage that can
 * drive it.
 *
 * @param by what protects it
 * @param ratedAmperes of that
 * @param drivingVolts the most voltage that can stand across the joint
 */
public record HeatLimit(By by, double ratedAmperes, double drivingVolts) {
  /** What protects a joint. */
  public enum By {
    /** The circuit's own breaker; with it off the joint carries nothing. */
    BREAKER,
    /**
     * The main breaker or the service itself: the joint lies before the panel, carries what every
     * circuit draws, and switching this circuit's breaker off does not unload it.
     */
    SERVICE
  }

  /**
   * That of a suspect: of its joints before the panel where most of its probability lies there,
   * else of the others.
   *
   * @param solved the problem, for the suspect's first joint
   */
  static HeatLimit of(Suspect suspect, Problem problem, SolvedSurvey solved) {
    boolean before = 2 * suspect.supplySideProbability() > suspect.probability();
    double loop = solved.loopSiemens(suspect.first().id());
    return suspect.joints().stream()
        .filter(joint -> (joint.role() == JointRole.SUPPLY) == before)
        .map(joint -> of(joint, problem, loop))
        .max(Comparator.comparingDouble(HeatLimit::drivingVolts))
        .orElseThrow();
  }

  /**
   * That of one joint.
   *
   * @param solved the problem, for that joint
   */
  public static HeatLimit of(Joint joint, Problem problem, SolvedSurvey solved) {
    return of(joint, problem, solved.loopSiemens(joint.id()));
  }

  /**
   * A joint in a loop has the rest of the loop beside it: with the rated current I all taken at one
   * place no more stands across it, open, than I over the admittance y that is seen in its gap.
   */
  private static HeatLimit of(Joint joint, Problem problem, double loopSiemens) {
    boolean before = joint.role() == JointRole.SUPPLY;
    double amperes =
        before
            ? problem.assumptions().value(Assumption.SERVICE_AMPERES)
            : problem.circuit().breakerAmperes();
    double volts = DrivingVolts.across(joint, problem.circuit());
    return new HeatLimit(
        before ? By.SERVICE : By.BREAKER,
        amperes,
        loopSiemens > 0 ? Math.min(volts, amperes / loopSiemens) : volts);
  }

  /**
   * The most current through a joint of so many ohms: the rating, or E/R where that is less.
   * (E²/(4R), the most that R leaves for the load, is no bound for the joint: a 1500 W heater
   * behind 20 ohm makes 330 W there, and E²/(4R) is 180 W.) The ohms of cable and supply are left
   * out: with them it is less.
   */
  double amperes(double ohms) {
    return ohms > 0 ? Math.min(ratedAmperes, drivingVolts / ohms) : ratedAmperes;
  }

  /** The worst at so many ohms. */
  public Heat worst(double ohms) {
    return Heat.of(ohms, amperes(ohms));
  }
}
