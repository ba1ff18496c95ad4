package ohmtrail.cli.casefile;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import ohmtrail.circuit.Box;
import ohmtrail.circuit.Circuit;

/**
 * What the upper half of a case file says.
 *
 * @param boxes every box by its name, also where the circuit could not be put together
 * @param names the names of the boxes
 * @param circuit the circuit; empty where something is wrong with it
 */
record Run(Map<String, Box> boxes, Names names, Optional<Circuit> circuit) {

  /** Without a single box: nothing can be held against it. */
  static Run none() {
    return new Run(Map.of(), new Names(List.of()), Optional.empty());
  }

  Run {
    boxes = Map.copyOf(boxes);
  }
}
