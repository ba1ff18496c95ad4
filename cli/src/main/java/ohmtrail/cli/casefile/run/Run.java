package ohmtrail.cli.casefile.run;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;
import java.util.stream.Collectors;
import ohmtrail.circuit.Box;
import ohmtrail.circuit.Circuit;
import ohmtrail.circuit.Supply;
import ohmtrail.cli.names.Names;
import ohmtrail.map.known.UnknownRun;

/**
 * What the upper half of a case file says, as far as it can be told.
 *
 * @param supply the supply; empty where it is wrong
 * @param boxes every box by its name, also where the circuit could not be put together
 * @param names the names of the boxes
 * @param circuit the circuit, with the panel for every feeder that nobody knows; empty where
 *     something is wrong with it
 * @param unknown what is known of the run; empty where all of it is
 * @param taken what the file does not say and was taken as usual
 */
public record Run(
    Optional<Supply> supply,
    Map<String, Box> boxes,
    Names names,
    Optional<Circuit> circuit,
    Optional<UnknownRun> unknown,
    List<Unsaid> taken) {

  /** Copies the boxes and what was taken. */
  public Run {
    boxes = Map.copyOf(boxes);
    taken = List.copyOf(taken);
  }

  /** Of a circuit that is there already. */
  public static Run of(Circuit circuit) {
    return new Run(
        Optional.of(circuit.supply()),
        circuit.boxes().stream().collect(Collectors.toMap(Box::name, Function.identity())),
        new Names(circuit.boxes().stream().map(Box::name).toList()),
        Optional.of(circuit),
        Optional.empty(),
        List.of());
  }

  /** The same where what is touched is touched with wet hands or on wet ground. */
  Run inWetSurroundings() {
    return new Run(
        supply,
        boxes,
        names,
        circuit.map(Circuit::inWetSurroundings),
        unknown.map(Run::wet),
        taken);
  }

  private static UnknownRun wet(UnknownRun run) {
    return new UnknownRun(
        run.supply(),
        run.breakerAmperes(),
        run.panel(),
        run.panelPlace(),
        run.outlets(),
        run.usualCable(),
        run.distances(),
        run.mayHide(),
        run.devices(),
        true);
  }

  /** Without a single box: nothing can be held against it. */
  static Run none(Optional<Supply> supply) {
    return new Run(
        supply, Map.of(), new Names(List.of()), Optional.empty(), Optional.empty(), List.of());
  }

  /** The one box that something can be plugged in at; empty where there are others beside it. */
  public Optional<String> onlyBox() {
    return boxes.size() == 2
        ? boxes.values().stream().filter(Box::hasReceptacle).map(Box::name).findFirst()
        : Optional.empty();
  }

  /**
   * The voltage that a load's power holds for where it says none; empty where the supply has two.
   */
  public OptionalDouble loadVolts() {
    Supply known = supply.orElse(Supply.NORTH_AMERICA_120);
    return known.legs() == Supply.Legs.ONE
        ? OptionalDouble.of(known.volts())
        : OptionalDouble.empty();
  }

  /** Nominal voltage between hot and neutral; empty where the supply is wrong. */
  public OptionalDouble nominalVolts() {
    return supply.map(known -> OptionalDouble.of(known.volts())).orElse(OptionalDouble.empty());
  }
}
