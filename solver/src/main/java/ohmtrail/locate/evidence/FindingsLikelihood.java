package ohmtrail.locate.evidence;

import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import ohmtrail.circuit.Joint;
import ohmtrail.problem.Problem;
import ohmtrail.reference.Assumption;
import ohmtrail.survey.Finding;

/**
 * The likelihood of what was seen in open boxes, given which joints are degraded. A bad joint does
 * not always look bad, and a sound one seldom does; joints are seen independently of one another.
 *
 * @param sound places where everything looked sound
 * @param burnt places where a joint looked bad
 * @param missed probability that a look misses a degraded joint
 * @param falseAlarm probability that a box without one looks as if it had one
 */
public record FindingsLikelihood(
    Set<String> sound, Set<String> burnt, double missed, double falseAlarm) {
  /** Copies the sets. */
  public FindingsLikelihood {
    sound = Set.copyOf(sound);
    burnt = Set.copyOf(burnt);
  }

  /** The likelihood for the findings of a problem. */
  public static FindingsLikelihood of(Problem problem) {
    return new FindingsLikelihood(
        problem.survey().lookedSound(),
        problem.survey().places(Finding.State.BURNT),
        problem.assumptions().value(Assumption.MISSED_BY_LOOKING),
        problem.assumptions().value(Assumption.FALSE_ALARM));
  }

  /** The likelihood of everything seen. */
  public double of(List<Joint> degraded) {
    Set<String> places = degraded.stream().map(Finding::placeOf).collect(Collectors.toSet());
    double likelihood = 1;
    for (Joint joint : degraded) {
      likelihood *= sound.contains(Finding.placeOf(joint)) ? missed : 1;
    }
    for (String place : burnt) {
      likelihood *= places.contains(place) ? 1 - missed : falseAlarm;
    }
    return likelihood;
  }
}
