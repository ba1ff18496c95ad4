package ohmtrail.cli.casefile.run;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import ohmtrail.circuit.Box;
import ohmtrail.circuit.Cable;
import ohmtrail.circuit.Circuit;
import ohmtrail.circuit.CircuitException;
import ohmtrail.circuit.JointKind;
import ohmtrail.circuit.ResidualCurrentDevice;
import ohmtrail.circuit.Supply;
import ohmtrail.cli.casefile.text.Place;
import ohmtrail.cli.casefile.text.Problems;
import ohmtrail.cli.names.Names;
import ohmtrail.reference.Conductor;
import ohmtrail.reference.UsualValue;

/**
 * An outlet whose run nobody knows: one cable of a length known only roughly stands for everything
 * between the supply and it, so that what is upstream is one place per conductor.
 */
public final class BareOutlet {
  /** What the outlet is called. */
  public static final String BOX = "outlet";

  /** Metres of cable behind an ordinary outlet, and how well that is known (assumptions). */
  private static final double METRES = UsualValue.BARE_OUTLET_LENGTH.value();

  private static final double LENGTH_TOLERANCE = UsualValue.BARE_OUTLET_LENGTH_TOLERANCE.value();

  private final RunReader.Feed feed;
  private final Problems problems;

  /** Whether a circuit is what a bare outlet is taken to be. */
  public static boolean isOne(Circuit circuit) {
    Cable cable = circuit.cables().get(0);
    return circuit.boxes().size() == 2
        && cable.to().equals(BOX)
        && circuit.panel().equals(Box.panel(RunReader.PANEL))
        && circuit.box(BOX).equals(Optional.of(outlet(circuit)))
        && cable.lengthMetres().equals(OptionalDouble.of(METRES))
        && cable.lengthTolerance().equals(OptionalDouble.of(LENGTH_TOLERANCE))
        && cable.companion() == Cable.Companion.NONE
        && cable.ground().isEmpty();
  }

  private static Box outlet(Circuit circuit) {
    JointKind terminals = circuit.box(BOX).map(Box::terminals).orElse(JointKind.SCREW);
    return Box.feedThrough(BOX, terminals);
  }

  BareOutlet(RunReader.Feed feed, Problems problems) {
    this.feed = feed;
    this.problems = problems;
  }

  /** The run up to the outlet. */
  Run run(Place place) {
    Map<String, Box> boxes = new LinkedHashMap<>();
    boxes.put(RunReader.PANEL, Box.panel(RunReader.PANEL));
    boxes.put(BOX, Box.feedThrough(BOX, feed.terminals()));
    Names names = new Names(List.of(RunReader.PANEL, BOX));
    Unsaid length =
        new Unsaid("length", "15 m ±70 %", "nobody knows the run of a bare outlet; assumption");
    return new Run(
        feed.supply(),
        boxes,
        names,
        circuit(List.copyOf(boxes.values()), place),
        Optional.empty(),
        Stream.concat(feed.taken().stream(), Stream.of(length)).toList());
  }

  private Optional<Circuit> circuit(List<Box> boxes, Place place) {
    Optional<Supply> supply = feed.supply();
    if (supply.isEmpty() || feed.breakerAmperes().isEmpty()) {
      return Optional.empty();
    }
    double amperes = feed.breakerAmperes().getAsDouble();
    Conductor conductor = feed.cable().orElseGet(() -> feed.usual().cable(amperes));
    try {
      Cable cable =
          new Cable(
              RunReader.PANEL,
              BOX,
              OptionalDouble.of(METRES),
              OptionalDouble.of(LENGTH_TOLERANCE),
              conductor,
              Cable.Companion.NONE,
              feed.roles(),
              feed.ground());
      return Optional.of(
          new Circuit(
              supply.get(),
              amperes,
              boxes,
              List.of(cable),
              feed.protection().stream()
                  .map(rating -> new ResidualCurrentDevice(RunReader.PANEL, rating))
                  .toList()));
    } catch (CircuitException broken) {
      problems.error(place, broken);
      return Optional.empty();
    }
  }
}
