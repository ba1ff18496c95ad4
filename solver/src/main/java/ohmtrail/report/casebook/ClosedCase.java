package ohmtrail.report.casebook;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import ohmtrail.circuit.Box;
import ohmtrail.circuit.Joint;
import ohmtrail.circuit.JointKind;
import ohmtrail.locate.Diagnosis;
import ohmtrail.locate.Suspect;
import ohmtrail.problem.Problem;
import ohmtrail.reference.Assumptions;
import ohmtrail.reference.Minutes;
import ohmtrail.report.OpeningPlan;
import ohmtrail.slip.AveragedLocator;
import ohmtrail.survey.Finding;
import ohmtrail.survey.Survey;

/**
 * A case of which somebody has stated where the bad joint was found, beside what would have been
 * answered without knowing it.
 *
 * @param openings how many boxes would have been opened in the advised order until the first of
 *     those found
 * @param minutes that this would have taken, walking apart
 * @param minutesInOrder the same in the order of the run from the panel
 * @param failures one per place that was found bad
 */
public record ClosedCase(
    int openings, double minutes, double minutesInOrder, List<Failure> failures) {
  /** Copies the list. */
  public ClosedCase {
    failures = List.copyOf(failures);
  }

  /**
   * A joint that failed; which of those in its place, the readings tell as far as they can.
   *
   * @param exposures per kind: how many joints of it could have failed in the circuit, each counted
   *     as often as its place fails relative to a hot joint of that kind
   * @param evidence per kind: the likelihood that it is one of these in the place that was found,
   *     summed over the joints as the exposures are; on a scale of its own
   */
  public record Failure(Map<JointKind, Double> exposures, Map<JointKind, Double> evidence) {
    /** Copies the maps. */
    public Failure {
      exposures = Map.copyOf(exposures);
      evidence = Map.copyOf(evidence);
    }
  }

  /**
   * Answers a case without its finds and holds the answer against them.
   *
   * @return empty where no place is said to be burnt or remade
   */
  public static Optional<ClosedCase> of(Problem problem) {
    Set<String> found = new TreeSet<>(problem.survey().places(Finding.State.BURNT));
    found.addAll(problem.survey().places(Finding.State.REMADE));
    if (found.isEmpty()) {
      return Optional.empty();
    }
    Problem before = problem.withSurvey(withoutFinds(problem.survey()));
    Diagnosis diagnosis = new AveragedLocator().locate(before);
    List<OpeningPlan.Step> advised =
        OpeningPlan.byProbability(
                before.circuit(), before.survey(), Minutes.defaults(), diagnosis.boxes())
            .steps();
    int openings = 0;
    double minutes = 0;
    for (OpeningPlan.Step step : advised) {
      openings++;
      minutes += step.minutes();
      if (found.contains(step.box())) {
        break;
      }
    }
    return Optional.of(
        new ClosedCase(
            openings,
            minutes,
            minutesInOrder(before, found),
            found.stream().map(place -> failure(before, diagnosis, place)).toList()));
  }

  private static Survey withoutFinds(Survey survey) {
    return new Survey(
        survey.meters(),
        survey.loads(),
        survey.tests(),
        List.of(),
        survey.hardWired(),
        survey.complaints());
  }

  private static double minutesInOrder(Problem problem, Set<String> found) {
    double minutes = 0;
    for (Box box : problem.circuit().boxes()) {
      minutes += OpeningPlan.minutesFor(box, Minutes.defaults(), problem.survey());
      if (found.contains(box.name())) {
        break;
      }
    }
    return minutes;
  }

  private static Failure failure(Problem problem, Diagnosis diagnosis, String place) {
    Map<JointKind, Double> exposures = new EnumMap<>(JointKind.class);
    Map<JointKind, Double> evidence = new EnumMap<>(JointKind.class);
    Map<JointKind, Double> there = new EnumMap<>(JointKind.class);
    for (Joint joint : problem.circuit().joints()) {
      double share = shareOfItsKind(joint);
      exposures.merge(joint.kind(), share, Double::sum);
      if (Finding.placeOf(joint).equals(place)) {
        there.merge(joint.kind(), share, Double::sum);
        double likelihood = probability(diagnosis, joint) / joint.weight(problem.assumptions());
        evidence.merge(joint.kind(), share * likelihood, Double::sum);
      }
    }
    boolean silent = evidence.values().stream().allMatch(value -> value == 0);
    return new Failure(exposures, silent ? there : evidence);
  }

  /** How often a joint fails relative to a hot one of its kind. */
  private static double shareOfItsKind(Joint joint) {
    Assumptions usual = Assumptions.defaults();
    return joint.weight(usual) / usual.value(joint.kind().weight());
  }

  private static double probability(Diagnosis diagnosis, Joint joint) {
    List<Double> found = new ArrayList<>();
    for (Suspect suspect : diagnosis.suspects()) {
      if (suspect.joints().contains(joint)) {
        found.add(suspect.probabilityOf(joint.id()));
      }
    }
    return found.stream().mapToDouble(Double::doubleValue).sum();
  }
}
