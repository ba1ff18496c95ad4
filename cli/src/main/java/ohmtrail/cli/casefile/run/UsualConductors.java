package ohmtrail.cli.casefile.run;

import java.util.ArrayList;
import java.util.List;
import ohmtrail.circuit.BoxKind;
import ohmtrail.circuit.ConductorRole;

/** The conductors of a cable that does not say its own. */
final class UsualConductors {
  private UsualConductors() {}

  /**
   * Those that reach the box upstream, but for what a switch is there for: it feeds a luminaire or
   * an appliance through itself, and a switch behind a luminaire is its switch leg.
   *
   * @param upstream those that reach the box upstream
   * @param from what the box upstream is
   * @param to what the box at the other end is
   */
  static List<ConductorRole> of(List<ConductorRole> upstream, BoxKind from, BoxKind to) {
    boolean hasSwitched = upstream.contains(ConductorRole.SWITCHED);
    if (from == BoxKind.SWITCH && to.isHardWired()) {
      return behind(upstream);
    }
    if (from.isHardWired() && to == BoxKind.SWITCH && !hasSwitched) {
      return loop(upstream);
    }
    return upstream;
  }

  /** What leaves a switch: the switched conductor in place of the live one. */
  private static List<ConductorRole> behind(List<ConductorRole> upstream) {
    List<ConductorRole> roles = new ArrayList<>(upstream);
    roles.removeIf(ConductorRole::isLive);
    roles.add(ConductorRole.SWITCHED);
    return roles.stream().sorted().toList();
  }

  /** What goes down to a switch and comes back: no neutral. */
  private static List<ConductorRole> loop(List<ConductorRole> upstream) {
    List<ConductorRole> roles = new ArrayList<>(upstream);
    roles.remove(ConductorRole.NEUTRAL);
    roles.add(ConductorRole.SWITCHED);
    return roles.stream().sorted().toList();
  }
}
