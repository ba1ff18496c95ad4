package ohmtrail.cli.render.words;

import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import ohmtrail.circuit.Circuit;
import ohmtrail.circuit.ConductorRole;
import ohmtrail.report.caution.Work;
import ohmtrail.survey.Test;

/**
 * What has to be off before a hand goes into a box, as a part of the order that sends it there.
 * Immutable.
 */
public final class WorkWords {
  private final Circuit circuit;
  private final Region region;

  /** For the boxes of a circuit. */
  public WorkWords(Circuit circuit) {
    this.circuit = circuit;
    this.region = Region.of(circuit.supply());
  }

  /** The order to look into a box: "Open hall-2, the breaker off and proved dead, and ...". */
  public String open(String box) {
    return order("Open ", box, "")
        + (isPanel(box)
            ? ", and every joint of this circuit looked at"
            : why(box) + " and proved dead, and look at every joint");
  }

  /** The same where it is the first of several: "Open hall-2 first, the breaker off". */
  public String first(String box) {
    return order("Open ", box, " first");
  }

  /** The same where another was opened before: "Then open hall-2, the breaker off". */
  public String then(String box) {
    return order("Then open ", box, "");
  }

  private String order(String verb, String box, String rank) {
    return isPanel(box)
        ? (verb.startsWith("Then") ? "Then have " : "Have ")
            + box
            + " opened"
            + rank
            + " by a licensed electrician, "
            + mainSwitch()
        : verb + box + rank + ", " + off(box);
  }

  /** Behind a box that is named as one to open later; empty where its own breaker is all. */
  String later(String box) {
    if (isPanel(box)) {
      return " (for a licensed electrician, " + mainSwitch() + ")";
    }
    return Work.opening(box, circuit).breakers().size() > 1 ? " (" + off(box) + ")" : "";
  }

  /** The same with the box itself. */
  public String named(String box) {
    return box + later(box);
  }

  /** How a box stands open that somebody looks into, in brackets. */
  public String opened(String box) {
    return isPanel(box)
        ? " (open, for a licensed electrician, " + mainSwitch() + ")"
        : " (open, " + off(box) + " and proved dead)";
  }

  /** What comes before a joint is made anew there: a sentence. */
  public String remaking(String box) {
    return isPanel(box)
        ? "Have it made anew by a licensed electrician, "
            + mainSwitch()
            + ", and its neighbours looked at."
        : sentence(off(box))
            + " and proved dead, have the joint made anew, and look at its neighbours.";
  }

  private static String sentence(String clause) {
    return "With " + clause;
  }

  private boolean isPanel(String box) {
    return Work.opening(box, circuit).place() == Work.Place.PANEL;
  }

  private String mainSwitch() {
    return "the main switch off and locked, its " + region.lineSide() + " live all the same";
  }

  /** "the breaker off"; the breakers by name where the supply has two legs. */
  public String off(String box) {
    List<ConductorRole> breakers = Work.opening(box, circuit).breakers();
    if (circuit.supply().legs().conductors().size() < 2 || breakers.isEmpty()) {
      return "the breaker off";
    }
    String legs = JointWords.listed(breakers.stream().map(region::conductor).toList(), "and");
    if (breakers.size() < 2) {
      return "the breaker of " + legs + " off";
    }
    return "the breakers of " + legs + " both off";
  }

  /** Why more than one breaker has to be off for it. */
  private String why(String box) {
    boolean shared =
        Work.opening(box, circuit).breakers().size() > 1
            && circuit.conductorsAt(box).contains(ConductorRole.NEUTRAL);
    return shared ? " (its neutral is that of both)" : "";
  }

  /** "Leave this breaker off"; both where both feed the box. */
  public String leaveOff(String box) {
    List<ConductorRole> breakers = Work.opening(box, circuit).breakers();
    return breakers.size() > 1
        ? "Leave the breakers of "
            + JointWords.listed(breakers.stream().map(region::conductor).toList(), "and")
            + " off"
        : "Leave this breaker off";
  }

  /** What readings need open, in brackets; empty where they are taken from outside. */
  public String around(List<Test> tests) {
    String needs = needs(tests);
    return needs.isEmpty() ? "" : " (" + needs + ")";
  }

  /** What readings that were taken need open should they be taken again: a sentence, or none. */
  public Optional<String> again(List<Test> tests) {
    String needs = needs(tests);
    return needs.isEmpty()
        ? Optional.empty()
        : Optional.of("Before anything is read there again: " + needs + ".");
  }

  private String needs(List<Test> tests) {
    return Work.of(tests, circuit).stream()
        .filter(work -> work.live() || isPanel(work.box()))
        .map(this::need)
        .collect(Collectors.joining("; "));
  }

  private String need(Work work) {
    if (!work.live()) {
      return work.box() + " open, for a licensed electrician, " + mainSwitch();
    }
    return work.box()
        + " open and live, for a licensed electrician: "
        + (isPanel(work.box()) ? mainSwitch() : off(work.box()) + " and proved dead")
        + ", while it is opened and while probes or clamp go on and come off; no hand in it"
        + " between";
  }
}
