package ohmtrail.circuit;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * What must hold of the switches of a circuit: each breaks one live conductor, and what it makes
 * live it alone makes live.
 */
final class Switches {
  private Switches() {}

  /**
   * Checks all of them.
   *
   * @param conductors those that meet in each box
   * @throws CircuitException when one breaks none or several conductors, leads nowhere, or shares
   *     its switched conductor with another
   */
  static void require(
      Map<String, Box> boxes, List<Cable> cables, Map<String, List<ConductorRole>> conductors) {
    for (Box box : boxes.values()) {
      if (box.kind() == BoxKind.SWITCH) {
        requireOneLeg(box, conductors.getOrDefault(box.name(), List.of()));
        requireAlone(box, boxes, cables);
      }
    }
  }

  private static void requireOneLeg(Box box, List<ConductorRole> there) {
    List<String> broken =
        Conductors.ofDevice(box, there).stream()
            .filter(ConductorRole::isLeg)
            .map(ConductorRole::word)
            .toList();
    if (broken.size() != 1) {
      throw new CircuitException(
          "Switch ("
              + box.name()
              + ") must break one live conductor, not "
              + broken
              + "\nMaybe it must say which of two: on leg-1; or no live conductor reaches it.");
    }
  }

  /** Follows the switched conductor from a switch. */
  private static void requireAlone(Box box, Map<String, Box> boxes, List<Cable> cables) {
    Set<String> reached = new HashSet<>(Set.of(box.name()));
    Deque<String> pending = new ArrayDeque<>(List.of(box.name()));
    while (!pending.isEmpty()) {
      String at = pending.removeFirst();
      for (Cable cable : cables) {
        boolean leads = cable.from().equals(at) || cable.to().equals(at);
        if (leads && cable.roles().contains(ConductorRole.SWITCHED)) {
          String next = cable.otherEnd(at);
          if (reached.add(next)) {
            pending.addLast(next);
          }
        }
      }
    }
    if (reached.size() == 1) {
      throw new CircuitException(
          "Switch ("
              + box.name()
              + ") must lead somewhere: no cable there has a switched conductor"
              + "\nMaybe write switched/neutral/ground behind the box that it feeds.");
    }
    reached.stream()
        .filter(other -> !other.equals(box.name()) && isSwitch(boxes, other))
        .findFirst()
        .ifPresent(other -> refuse(box, other));
  }

  private static boolean isSwitch(Map<String, Box> boxes, String name) {
    Box box = boxes.get(name);
    return box != null && box.kind() == BoxKind.SWITCH;
  }

  private static void refuse(Box box, String other) {
    throw new CircuitException(
        "Switches ("
            + box.name()
            + ") and ("
            + other
            + ") must not feed one switched conductor"
            + "\nMaybe they work from two places: then write the one through which the light is on"
            + " now as a junction.");
  }
}
