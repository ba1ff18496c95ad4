package ohmtrail.cli.casefile.survey;

import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import ohmtrail.survey.Isolation;
import ohmtrail.survey.LoadInUse;
import ohmtrail.survey.Tap;

/**
 * What a test was taken under.
 *
 * @param loads the loads that were on
 * @param isolation how the circuit was made dead; empty while the breaker was on
 */
record Condition(List<LoadInUse> loads, Optional<Isolation> isolation) {
  /** The breaker off, as a case file says it. */
  static final String OFF = "off";

  static final String LINK = "link";
  static final String LIFT = "lift";

  /** Copies the list. */
  Condition {
    loads = List.copyOf(loads);
  }

  /** The breaker on. */
  static Condition live(List<LoadInUse> loads) {
    return new Condition(loads, Optional.empty());
  }

  /** As a case file says it: what a test is called where nobody gave it a name. */
  String text() {
    return isolation.map(Condition::text).orElseGet(() -> UseReader.text(loads));
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
