package ohmtrail.cli.casefile.survey;

import java.util.Collection;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import ohmtrail.circuit.Box;
import ohmtrail.circuit.BoxKind;
import ohmtrail.cli.casefile.equipment.Site;
import ohmtrail.cli.casefile.text.Node.Scalar;
import ohmtrail.cli.casefile.text.Place;
import ohmtrail.cli.casefile.text.Problems;
import ohmtrail.cli.names.Names;
import ohmtrail.survey.LoadInUse;
import ohmtrail.survey.Switching;

/**
 * Reads what was switched by hand for a test: {@code hall-switch open}, {@code water-heater off}.
 */
final class SwitchingReader {

  static final String OPEN = "open";
  static final String OFF = "off";

  private static final Set<String> OPENED = Set.of(OPEN, OFF);
  private static final Set<String> CLOSED = Set.of("closed", "on");

  /** States that nothing but a switch has. */
  private static final Set<String> OF_SWITCHES = Set.of(OPEN, "closed");

  private static final Set<String> TAKEN_OUT = Set.of(OFF, "out", "removed");
  private static final String SWITCH_AT = "switch at ";

  private final Site site;
  private final Names hardWired;
  private final Problems problems;

  /** What the parts of one test have said so far. */
  static final class Draft {
    private final Set<String> open = new LinkedHashSet<>();
    private final Set<String> off = new LinkedHashSet<>();
    private final Set<String> said = new LinkedHashSet<>();

    Switching switching() {
      return new Switching(open, off);
    }
  }

  /**
   * @param hardWired the loads that are wired in
   */
  SwitchingReader(Site site, Collection<LoadInUse> hardWired, Problems problems) {
    this.site = site;
    this.hardWired = new Names(hardWired.stream().map(LoadInUse::load).toList());
    this.problems = problems;
  }

  /** Whether a text ends in a state, so that it is no mere name. */
  static boolean isState(String text) {
    return Stream.of(text.split("[+]", -1))
        .map(part -> part.strip().toLowerCase(Locale.ROOT))
        .anyMatch(
            part ->
                Stream.concat(OF_SWITCHES.stream(), TAKEN_OUT.stream())
                    .anyMatch(state -> part.endsWith(" " + state)));
  }

  /** As a case file says it: one text a switch or load. */
  static List<String> texts(Switching switching) {
    return Stream.concat(
            switching.open().stream().map(box -> box + " " + OPEN),
            switching.off().stream().map(load -> load + " " + OFF))
        .toList();
  }

  /**
   * Takes a part of what a test was taken under if it is about a switch or about what is wired in,
   * rightly or not.
   */
  boolean take(Scalar part, Draft draft) {
    String text = part.text().strip();
    int space = text.lastIndexOf(' ');
    if (space < 0) {
      return false;
    }
    String state = text.substring(space + 1).toLowerCase(Locale.ROOT);
    String name = text.substring(0, space).strip();
    boolean ofSwitch = OPENED.contains(state) || CLOSED.contains(state);
    if (!ofSwitch && !TAKEN_OUT.contains(state)) {
      return false;
    }
    Optional<String> box = switchNamed(name);
    Optional<String> load = hardWired.find(name);
    if (ofSwitch && box.isPresent()) {
      note(box.get(), OPENED.contains(state) ? draft.open : new LinkedHashSet<>(), part, draft);
      return true;
    }
    if (!OF_SWITCHES.contains(state) && load.isPresent()) {
      boolean out = TAKEN_OUT.contains(state);
      note(load.get(), out ? draft.off : new LinkedHashSet<>(), part, draft);
      return true;
    }
    boolean known = site.box(name).isPresent();
    if (OF_SWITCHES.contains(state) || known) {
      refuse(part, name, known);
      return true;
    }
    return false;
  }

  /** Whether a load is wired in, so that no test need name it. */
  boolean isHardWired(String load) {
    return hardWired.find(load).isPresent();
  }

  /** Takes the name of a box whose switch was open. */
  void open(Scalar name, Draft draft) {
    switchNamed(name.text())
        .ifPresentOrElse(
            box -> note(box, draft.open, name, draft),
            () -> refuse(name, name.text(), site.box(name.text()).isPresent()));
  }

  /** Takes the name of a load that is wired in and was off. */
  void off(Scalar name, Draft draft) {
    hardWired
        .find(name.text())
        .ifPresentOrElse(
            load -> note(load, draft.off, name, draft),
            () -> problems.unknown(name.word(), "Load that is wired in", hardWired));
  }

  private void note(String name, Set<String> into, Scalar part, Draft draft) {
    if (!draft.said.add(name)) {
      problems.error(part.place(), "Test must say once only what (" + name + ") was.");
    }
    into.add(name);
  }

  private Optional<String> switchNamed(String name) {
    return site.box(name)
        .or(
            () ->
                name.toLowerCase(Locale.ROOT).startsWith(SWITCH_AT)
                    ? site.box(name.substring(SWITCH_AT.length()))
                    : Optional.empty())
        .filter(box -> box.kind() == BoxKind.SWITCH)
        .map(Box::name);
  }

  private void refuse(Scalar part, String name, boolean known) {
    Place place = part.place();
    List<String> switches =
        site.run().boxes().values().stream()
            .filter(box -> box.kind() == BoxKind.SWITCH)
            .map(Box::name)
            .sorted()
            .toList();
    String expected =
        switches.isEmpty()
            ? "the run has none"
            : switches.stream().collect(Collectors.joining(", ", "one of ", ""));
    problems.error(
        place,
        "Switch ("
            + part.text().strip()
            + ") must be in a box with a switch: "
            + expected
            + (known ? "; " + name + " has none." : "."),
        switches.isEmpty()
            ? "write switch behind the box that it is in."
            : new Names(switches).meant(name, "write switch behind the box that it is in") + ".");
  }
}
