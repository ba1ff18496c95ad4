package ohmtrail.circuit;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** Follows the cables outward from the panel, turning each so that it leads away from it. */
record Walk(Map<String, Box> boxes, List<Cable> cables) {
  static Walk from(String panel, Map<String, Box> boxes, List<Cable> cables) {
    Map<String, List<Cable>> atBox = new LinkedHashMap<>();
    Set<Set<String>> joined = new HashSet<>();
    for (Cable cable : cables) {
      requireBox(boxes, cable.from(), cable);
      requireBox(boxes, cable.to(), cable);
      requireOnlyOne(joined, cable);
      atBox.computeIfAbsent(cable.from(), name -> new ArrayList<>()).add(cable);
      atBox.computeIfAbsent(cable.to(), name -> new ArrayList<>()).add(cable);
    }
    Map<String, Box> reached = new LinkedHashMap<>();
    List<Cable> outward = new ArrayList<>();
    Set<Cable> used = new HashSet<>();
    Deque<String> pending = new ArrayDeque<>(List.of(panel));
    reached.put(panel, boxes.get(panel));
    while (!pending.isEmpty()) {
      String at = pending.removeFirst();
      for (Cable cable : atBox.getOrDefault(at, List.of())) {
        if (used.add(cable)) {
          outward.add(cable.from().equals(at) ? cable : cable.turned());
          String next = cable.otherEnd(at);
          if (reached.putIfAbsent(next, boxes.get(next)) == null) {
            pending.addLast(next);
          }
        }
      }
    }
    requireAllReached(boxes, reached);
    return new Walk(reached, List.copyOf(outward));
  }

  private static void requireBox(Map<String, Box> boxes, String name, Cable cable) {
    if (!boxes.containsKey(name)) {
      throw new CircuitException(
          "Box ("
              + name
              + ") at an end of the cable from "
              + cable.from()
              + " to "
              + cable.to()
              + " must be one of "
              + boxes.keySet());
    }
  }

  /** A second one would have joints of the same names. */
  private static void requireOnlyOne(Set<Set<String>> joined, Cable cable) {
    if (!joined.add(Set.of(cable.from(), cable.to()))) {
      throw new CircuitException(
          "Cable from "
              + cable.from()
              + " to "
              + cable.to()
              + " must be the only one between these two boxes\n"
              + "Maybe one of its ends is at another box.");
    }
  }

  private static void requireAllReached(Map<String, Box> boxes, Map<String, Box> reached) {
    List<String> floating =
        boxes.keySet().stream().filter(name -> !reached.containsKey(name)).toList();
    if (!floating.isEmpty()) {
      throw new CircuitException(
          "Boxes "
              + floating
              + " must be reached from the panel by a cable\n"
              + "Maybe the cable that feeds them is missing.");
    }
  }
}
