package ohmtrail.slip;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import ohmtrail.circuit.Box;
import ohmtrail.circuit.BoxKind;
import ohmtrail.circuit.Cable;
import ohmtrail.circuit.Circuit;
import ohmtrail.circuit.CircuitException;
import ohmtrail.problem.Problem;
import ohmtrail.problem.Slip;
import ohmtrail.reference.Assumption;
import ohmtrail.survey.Reading;
import ohmtrail.survey.SurveyException;

/**
 * Two neighbours that are written down in each other's place, each two as likely; or a box that is
 * elsewhere in the order. What is written down of the boxes themselves goes with their names, the
 * cables stay where they are; those at a box that was taken out and put in elsewhere are of unknown
 * length.
 */
final class OrderSlips {
  private final Problem problem;
  private final Circuit circuit;
  private final Set<String> used;

  OrderSlips(Problem problem) {
    this.problem = problem;
    this.circuit = problem.circuit();
    this.used =
        problem.survey().tests().stream()
            .flatMap(
                test ->
                    Stream.concat(
                        test.readings().stream().map(Reading::box),
                        test.loads().stream().map(use -> use.box())))
            .collect(Collectors.toSet());
  }

  /** Neighbours in each other's place. */
  List<Supposition> exchanges() {
    List<Cable> between =
        circuit.cables().stream()
            .filter(cable -> isMovable(cable.from()) && isMovable(cable.to()))
            .toList();
    double prior =
        problem.assumptions().value(Assumption.BOXES_EXCHANGED) / Math.max(1, between.size());
    return between.stream()
        .filter(cable -> used.contains(cable.from()) && used.contains(cable.to()))
        .flatMap(cable -> exchanged(cable, prior).stream())
        .toList();
  }

  /** A box elsewhere, further off than its neighbour. */
  List<Supposition> moves() {
    List<Slip.BoxElsewhere> moves = new ArrayList<>();
    for (Box box : circuit.boxes()) {
      for (Box after : circuit.boxes()) {
        boolean isNew =
            !box.equals(after)
                && circuit.cables().stream()
                    .noneMatch(
                        cable ->
                            cable.otherEnd(box.name()).equals(after.name())
                                && (cable.from().equals(box.name())
                                    || cable.to().equals(box.name())));
        if (isNew && isPassed(box.name()) && used.contains(box.name())) {
          moves.add(new Slip.BoxElsewhere(box.name(), after.name()));
        }
      }
    }
    double prior =
        problem.assumptions().value(Assumption.BOX_ELSEWHERE) / Math.max(1, moves.size());
    return moves.stream().flatMap(move -> moved(move, prior).stream()).toList();
  }

  private boolean isMovable(String box) {
    return circuit.box(box).filter(it -> it.kind() != BoxKind.PANEL).isPresent();
  }

  /** Whether one cable leads to a box, and one at most onward. */
  private boolean isPassed(String box) {
    return isMovable(box)
        && circuit.cables().stream().filter(cable -> cable.to().equals(box)).count() == 1
        && circuit.cables().stream().filter(cable -> cable.from().equals(box)).count() <= 1;
  }

  private Optional<Supposition> exchanged(Cable pair, double prior) {
    Slip.BoxesExchanged exchange = new Slip.BoxesExchanged(pair.from(), pair.to());
    List<Cable> cables =
        circuit.cables().stream()
            .map(
                cable ->
                    between(
                        cable, exchange.inPlaceOf(cable.from()), exchange.inPlaceOf(cable.to())))
            .toList();
    return supposed(exchange, prior, cables);
  }

  private static Cable between(Cable cable, String from, String to) {
    return new Cable(
        from,
        to,
        cable.lengthMetres(),
        cable.lengthTolerance(),
        cable.conductor(),
        cable.companion(),
        cable.roles(),
        cable.ground());
  }

  private static Cable ofUnknownLength(Cable cable, String from, String to) {
    return new Cable(
        from,
        to,
        OptionalDouble.empty(),
        OptionalDouble.empty(),
        cable.conductor(),
        cable.companion(),
        cable.roles(),
        cable.ground());
  }

  /**
   * The box leaves its cable, its neighbours are joined, and it goes into the run behind another.
   */
  private Optional<Supposition> moved(Slip.BoxElsewhere move, double prior) {
    String box = move.box();
    Cable in =
        circuit.cables().stream().filter(cable -> cable.to().equals(box)).findFirst().orElseThrow();
    Optional<Cable> out =
        circuit.cables().stream().filter(cable -> cable.from().equals(box)).findFirst();
    List<Cable> cables = new ArrayList<>();
    for (Cable cable : circuit.cables()) {
      if (!cable.equals(in) && out.filter(cable::equals).isEmpty()) {
        cables.add(cable);
      }
    }
    out.ifPresent(onward -> cables.add(ofUnknownLength(onward, in.from(), onward.to())));
    List<Cable> onward =
        cables.stream().filter(cable -> cable.from().equals(move.after())).toList();
    if (onward.size() > 1) {
      return Optional.empty();
    }
    cables.removeAll(onward);
    cables.add(ofUnknownLength(in, move.after(), box));
    onward.forEach(cable -> cables.add(ofUnknownLength(cable, box, cable.to())));
    return supposed(move, prior, cables);
  }

  /** Empty where the circuit, or a reading in it, would make no sense so. */
  private Optional<Supposition> supposed(Slip slip, double prior, List<Cable> cables) {
    try {
      Circuit other =
          new Circuit(
              circuit.supply(),
              circuit.breakerAmperes(),
              circuit.boxes(),
              cables,
              circuit.residualCurrentDevices());
      Problem reordered = new Problem(other, problem.survey(), problem.assumptions());
      return Optional.of(Supposition.of(slip, prior, () -> reordered));
    } catch (CircuitException | SurveyException nonsense) {
      return Optional.empty();
    }
  }
}
