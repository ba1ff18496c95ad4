package ohmtrail.report.heat;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.DoubleUnaryOperator;
import ohmtrail.circuit.ConductorRole;
import ohmtrail.circuit.Joint;
import ohmtrail.locate.OhmsInterval;
import ohmtrail.locate.Suspect;
import ohmtrail.predict.Degradation;
import ohmtrail.predict.SolvedSurvey;
import ohmtrail.problem.Problem;

/**
 * Heat in a suspect.
 *
 * @param measured in the test in which it made the most; empty where no load was on in any
 * @param could over all loads up to what protects it: an upper bound for the ohms stated, not a
 *     forecast, since a real joint is no constant resistance
 * @param limit what bounds that
 * @param beforePanel the share of the suspect's probability that lies before the panel, where this
 *     circuit's breaker does not unload it
 * @param mayBeOpen whether the readings allow that it is open: it makes none then, and may have
 *     been hot before it opened
 */
public record SuspectHeat(
    Optional<InTest> measured,
    HeatRange could,
    HeatLimit limit,
    double beforePanel,
    boolean mayBeOpen) {
  /**
   * Heat in a test that was made.
   *
   * @param test the test's name
   * @param heat over the ohms of the suspect, everything else at the report's point
   */
  public record InTest(String test, HeatRange heat) {}

  /**
   * Works it out.
   *
   * @param solved the problem at the report's point, for every joint of the suspect
   * @param best the degraded joints there
   * @return empty where every joint is on the ground, which carries current only in a fault
   */
  public static Optional<SuspectHeat> of(
      Suspect suspect, Problem problem, SolvedSurvey solved, List<Degradation> best) {
    if (suspect.joints().stream().allMatch(joint -> joint.conductor() == ConductorRole.GROUND)) {
      return Optional.empty();
    }
    HeatLimit limit = HeatLimit.of(suspect, problem, solved);
    return Optional.of(
        new SuspectHeat(
            measured(suspect, problem, solved, best),
            HeatRange.over(suspect.ohms(), limit::amperes),
            limit,
            suspect.supplySideProbability() / suspect.probability(),
            suspect.ohms().high().isEmpty()));
  }

  private static Optional<InTest> measured(
      Suspect suspect, Problem problem, SolvedSurvey solved, List<Degradation> best) {
    List<Degradation> others = others(suspect, problem, best);
    String joint = suspect.first().id();
    OhmsInterval ohms = suspect.ohms();
    double usual = ohms.estimate().orElse(ohms.low().orElse(ohms.high().orElse(1)));
    return problem.survey().tests().stream()
        .filter(test -> !test.isDead() && !problem.survey().loadsOn(test).isEmpty())
        .map(test -> new Current(test.name(), solved.jointCurrent(test, others, joint)))
        .max(Comparator.comparingDouble(current -> current.amperes().applyAsDouble(usual)))
        .map(current -> new InTest(current.test(), HeatRange.over(ohms, current.amperes())));
  }

  /** The current through the joint in a test as a function of its ohms. */
  private record Current(String test, DoubleUnaryOperator amperes) {}

  /**
   * What else is degraded while the suspect is: of several joints at once, all but the one that the
   * suspect stands for, which is its own or else the first on its conductor.
   */
  private static List<Degradation> others(
      Suspect suspect, Problem problem, List<Degradation> best) {
    List<String> degraded = best.stream().map(Degradation::joint).distinct().toList();
    if (degraded.size() < 2) {
      return List.of();
    }
    List<String> own = suspect.joints().stream().map(Joint::id).toList();
    String replaced =
        degraded.stream()
            .filter(own::contains)
            .findFirst()
            .or(
                () ->
                    degraded.stream()
                        .filter(
                            id ->
                                problem.circuit().joint(id).map(Joint::conductor).stream()
                                    .anyMatch(suspect.first().conductor()::equals))
                        .findFirst())
            .orElse(degraded.get(0));
    return best.stream().filter(each -> !each.joint().equals(replaced)).toList();
  }
}
