package ohmtrail.locate;

import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import ohmtrail.circuit.Joint;
import ohmtrail.reference.Assumption;
import ohmtrail.reference.Assumptions;
import ohmtrail.survey.Finding;
import ohmtrail.survey.Survey;

/**
 * How likely what was seen in open boxes is, given which joints are degraded. A bad joint does not
 * always look bad, and a sound one seldom does; joints are seen independently of one another.
 *
 * @param sound places where everything looked sound
 * @param burnt places where a joint looked bad
 * @param missed probability that a look misses a degraded joint
 * @param falseAlarm probability that a box without one looks as if it had one
 */
record Looks(Set<String> sound, Set<String> burnt, double missed, double falseAlarm) {
  Looks {
    sound = Set.copyOf(sound);
    burnt = Set.copyOf(burnt);
  }

  static Looks of(Survey survey, Assumptions assumptions) {
    return new Looks(
        survey.lookedSound(),
        survey.places(Finding.State.BURNT),
        assumptions.value(Assumption.MISSED_BY_LOOKING),
        assumptions.value(Assumption.FALSE_ALARM));
  }

  /** The likelihood of everything seen. */
  double likelihood(List<Joint> degraded) {
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
