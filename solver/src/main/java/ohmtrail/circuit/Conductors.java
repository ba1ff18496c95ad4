package ohmtrail.circuit;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Stream;

/** Which conductors meet in each box; sees that the supply feeds every one of them. */
final class Conductors {
  private Conductors() {}

  /**
   * The conductors by box, in the order of {@link ConductorRole}.
   *
   * @param boxes as the supply reaches them, the panel first
   * @param cables as the supply reaches them
   */
  static Map<String, List<ConductorRole>> of(
      Supply supply, Map<String, Box> boxes, List<Cable> cables) {
    String panel = boxes.keySet().iterator().next();
    EnumSet<ConductorRole> supplied = EnumSet.copyOf(supply.conductors());
    Map<String, Set<ConductorRole>> fed = new LinkedHashMap<>();
    boxes.keySet().forEach(box -> fed.put(box, EnumSet.noneOf(ConductorRole.class)));
    at(fed, panel).addAll(supplied);
    boxes.values().stream()
        .filter(box -> box.kind() == BoxKind.SWITCH)
        .forEach(box -> at(fed, box.name()).add(ConductorRole.SWITCHED));
    spread(fed, cables);
    cables.forEach(cable -> requireFed(fed, cable, supplied));
    Map<String, List<ConductorRole>> conductors = new LinkedHashMap<>();
    fed.forEach((box, roles) -> conductors.put(box, List.copyOf(roles)));
    boxes.values().forEach(box -> requireDeviceFed(box, conductors));
    Switches.require(boxes, cables, conductors);
    return conductors;
  }

  /** The conductors that the device of a box is connected to, of those that are there. */
  static List<ConductorRole> ofDevice(Box box, List<ConductorRole> there) {
    List<ConductorRole> named = box.device().isEmpty() ? there : box.device();
    if (box.kind() == BoxKind.SWITCH) {
      return Stream.concat(
              named.stream().filter(ConductorRole::isLeg), Stream.of(ConductorRole.SWITCHED))
          .toList();
    }
    boolean behindSwitch =
        box.kind().isHardWired()
            && box.device().isEmpty()
            && there.contains(ConductorRole.SWITCHED);
    return behindSwitch ? there.stream().filter(role -> !role.isLeg()).toList() : named;
  }

  private static Set<ConductorRole> at(Map<String, Set<ConductorRole>> fed, String box) {
    return fed.computeIfAbsent(box, name -> EnumSet.noneOf(ConductorRole.class));
  }

  /** Follows every conductor from box to box: in a ring it may come from behind. */
  private static void spread(Map<String, Set<ConductorRole>> fed, List<Cable> cables) {
    Map<String, List<Cable>> atBox = new HashMap<>();
    for (Cable cable : cables) {
      atBox.computeIfAbsent(cable.from(), box -> new ArrayList<>()).add(cable);
      atBox.computeIfAbsent(cable.to(), box -> new ArrayList<>()).add(cable);
    }
    Deque<String> pending = new ArrayDeque<>(fed.keySet());
    while (!pending.isEmpty()) {
      String box = pending.removeFirst();
      for (Cable cable : atBox.getOrDefault(box, List.of())) {
        EnumSet<ConductorRole> carried = EnumSet.copyOf(cable.roles());
        carried.retainAll(at(fed, box));
        String next = cable.otherEnd(box);
        if (at(fed, next).addAll(carried)) {
          pending.addLast(next);
        }
      }
    }
  }

  private static void requireFed(
      Map<String, Set<ConductorRole>> fed, Cable cable, Set<ConductorRole> supplied) {
    List<String> floating = new ArrayList<>();
    for (ConductorRole role : cable.roles()) {
      if (!at(fed, cable.from()).contains(role)) {
        floating.add(role.word());
      }
    }
    if (!floating.isEmpty()) {
      throw new CircuitException(
          "Conductors "
              + floating
              + " of the cable from "
              + cable.from()
              + " to "
              + cable.to()
              + " must be fed from the panel, which has "
              + supplied.stream().map(ConductorRole::word).toList()
              + "\nMaybe the supply has other legs, a cable before this one lacks a conductor, or a"
              + " switch is missing.");
    }
  }

  private static void requireDeviceFed(Box box, Map<String, List<ConductorRole>> conductors) {
    List<ConductorRole> there = conductors.getOrDefault(box.name(), List.of());
    for (ConductorRole role : box.device()) {
      if (!there.contains(role)) {
        throw new CircuitException(
            "Device conductor ("
                + role.word()
                + ") at "
                + box.name()
                + " must be one of those that reach the box: "
                + there.stream().map(ConductorRole::word).toList());
      }
    }
  }
}
