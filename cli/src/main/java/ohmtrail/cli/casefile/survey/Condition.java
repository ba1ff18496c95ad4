package ohmtrail.cli.casefile.survey;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import ohmtrail.survey.Isolation;
import ohmtrail.survey.LoadInUse;
import ohmtrail.survey.Switching;
import ohmtrail.survey.Tap;
import ohmtrail.survey.Test;

/**
 * What a test was taken under.
 *
 * @param loads the loads that were on
 * @param isolation how the circuit was made dead; empty while the breaker was on
 * @param switching the switches that were open, and what is wired in but was off
 */
record Condition(List<LoadInUse> loads, Optional<Isolation> isolation, Switching switching) {
  /** The breaker off, as a case file says it. */
  static final String OFF = "off";

  static final String LINK = "link";
  static final String LIFT = "lift";

  /** Copies the list. */
  Condition {
    loads = List.copyOf(loads);
  }

  /** The breaker on, every switch closed. */
  static Condition live(List<LoadInUse> loads) {
    return live(loads, Switching.USUAL);
  }

  /** The breaker on. */
  static Condition live(List<LoadInUse> loads, Switching switching) {
    return new Condition(loads, Optional.empty(), switching);
  }

  /** What a test was taken under. */
  static Condition of(Test test) {
    return new Condition(test.loads(), test.isolation(), test.switching());
  }

  /** As a case file says it: what a test is called where nobody gave it a name. */
  String text() {
    List<String> parts = new ArrayList<>();
    List<String> switched = SwitchingReader.texts(switching);
    isolation.map(Condition::text).ifPresent(parts::add);
    if (isolation.isEmpty() && (!loads.isEmpty() || switched.isEmpty())) {
      parts.add(UseReader.text(loads));
    }
    parts.addAll(switched);
    return String.join(" + ", parts);
  }

  private static String text(Isolation isolation) {
    StringBuilder text = new StringBuilder(OFF);
    for (Tap link : isolation.links()) {
      text.append(" + " + LINK + " ");
      text.append(
          link instanceof Tap.Pair pair
              ? pair.between().word() + " at " + pair.box()
              : link.word());
    }
    text.append(
        isolation.lifted().stream()
            .map(joint -> " + " + LIFT + " " + joint.id())
            .collect(Collectors.joining()));
    return text.toString();
  }
}
