package ohmtrail.cli.casefile.run;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import ohmtrail.circuit.Box;
import ohmtrail.circuit.Circuit;
import ohmtrail.circuit.Supply;
import ohmtrail.cli.casefile.text.Names;

/**
 * What the upper half of a case file says, as far as it can be told.
 *
 * @param supply the supply; empty where it is wrong
 * @param boxes every box by its name, also where the circuit could not be put together
 * @param names the names of the boxes
 * @param circuit the circuit; empty where something is wrong with it
 */
public record Run(
    Optional<Supply> supply, Map<String, Box> boxes, Names names, Optional<Circuit> circuit) {

  /** Copies the boxes. */
  public Run {
    boxes = Map.copyOf(boxes);
  }

  /** Without a single box: nothing can be held against it. */
  static Run none(Optional<Supply> supply) {
    return new Run(supply, Map.of(), new Names(List.of()), Optional.empty());
  }

  /** Nominal voltage between hot and neutral; empty where the supply is wrong. */
  public OptionalDouble nominalVolts() {
    return supply.map(known -> OptionalDouble.of(known.volts())).orElse(OptionalDouble.empty());
  }
}
