package ohmtrail.report;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import ohmtrail.circuit.Box;
import ohmtrail.circuit.Cable;
import ohmtrail.circuit.Circuit;
import ohmtrail.problem.Problem;
import ohmtrail.reference.Assumption;
import ohmtrail.survey.LoadInUse;
import ohmtrail.survey.Measurand;
import ohmtrail.survey.Reading;
import ohmtrail.survey.Survey;
import ohmtrail.survey.Test;

/**
 * Something missing in a case that would help to find the joint.
 *
 * @param what it is
 * @param boxes where, in the order in which the supply reaches them; empty where no place is meant
 */
public record Missing(What what, List<String> boxes) {
  /** What may be missing. */
  public enum What {
    /** A test with the breaker on: whatever was read was read on a dead circuit. */
    LIVE_TEST,
    /** A test with any load on. */
    LOADED_TEST,
    /** A load at ends of the run that no current has flowed to. */
    LOAD_FARTHER_OUT,
    /** Any reading at these receptacles. */
    READING_AT_RECEPTACLE,
    /** A reading with a low-impedance meter. */
    LOW_IMPEDANCE_READING,
    /** The length of the cable to these boxes. */
    CABLE_LENGTH,
    /** What is wired in at these luminaires or appliances: until then it counts as taken out. */
    HARD_WIRED_LOAD
  }

  /** Copies the list. */
  public Missing {
    boxes = List.copyOf(boxes);
  }

  /**
   * What is missing, the most telling first. Without any load on, hardly a joint shows, wherever
   * the meter is held.
   */
  public static List<Missing> in(Problem problem) {
    Circuit circuit = problem.circuit();
    Survey survey = problem.survey();
    List<Missing> missing = new ArrayList<>();
    if (isDeadOnly(survey)) {
      unread(circuit, survey).ifPresent(missing::add);
      missing.add(new Missing(What.LIVE_TEST, List.of()));
    } else {
      unloaded(circuit, survey).ifPresent(missing::add);
      unread(circuit, survey).ifPresent(missing::add);
      highImpedanceOnly(problem).ifPresent(missing::add);
    }
    unknownLengths(circuit).ifPresent(missing::add);
    unknownLuminaires(circuit, survey).ifPresent(missing::add);
    return List.copyOf(missing);
  }

  private static boolean isDeadOnly(Survey survey) {
    List<Test> read = survey.tests().stream().filter(test -> !test.readings().isEmpty()).toList();
    return !read.isEmpty() && read.stream().allMatch(Test::isDead);
  }

  private static Optional<Missing> at(What what, List<String> boxes) {
    return boxes.isEmpty() ? Optional.empty() : Optional.of(new Missing(what, boxes));
  }

  private static Optional<Missing> unread(Circuit circuit, Survey survey) {
    Set<String> read = new HashSet<>();
    survey.tests().forEach(test -> test.readings().forEach(reading -> read.add(reading.box())));
    return at(
        What.READING_AT_RECEPTACLE,
        circuit.boxes().stream()
            .filter(Box::hasReceptacle)
            .map(Box::name)
            .filter(name -> !read.contains(name))
            .toList());
  }

  private static Optional<Missing> unloaded(Circuit circuit, Survey survey) {
    Set<String> carrying = new HashSet<>();
    survey.tests().stream()
        .filter(test -> !test.readings().isEmpty())
        .flatMap(test -> survey.loadsOn(test).stream())
        .forEach(use -> circuit.pathTo(use.box()).forEach(cable -> carrying.add(cable.to())));
    if (carrying.isEmpty()) {
      return Optional.of(new Missing(What.LOADED_TEST, List.of()));
    }
    return at(
        What.LOAD_FARTHER_OUT,
        circuit.ends().stream()
            .filter(Box::hasReceptacle)
            .map(Box::name)
            .filter(name -> !carrying.contains(name))
            .toList());
  }

  private static Optional<Missing> highImpedanceOnly(Problem problem) {
    Survey survey = problem.survey();
    double limit = problem.assumptions().value(Assumption.LOW_IMPEDANCE_LIMIT);
    boolean anyLow =
        survey.tests().stream()
            .flatMap(test -> test.readings().stream())
            .filter(reading -> reading.measurand() == Measurand.VOLTAGE)
            .map(Reading::meter)
            .anyMatch(name -> survey.meter(name).inputOhms() < limit);
    return anyLow
        ? Optional.empty()
        : Optional.of(new Missing(What.LOW_IMPEDANCE_READING, List.of()));
  }

  /** A luminaire that nothing is known of draws nothing, which no luminaire that is on does. */
  private static Optional<Missing> unknownLuminaires(Circuit circuit, Survey survey) {
    Set<String> known =
        Stream.concat(
                survey.hardWired().stream(),
                survey.tests().stream().flatMap(test -> test.loads().stream()))
            .map(LoadInUse::box)
            .collect(Collectors.toSet());
    return at(
        What.HARD_WIRED_LOAD,
        circuit.boxes().stream()
            .filter(box -> box.kind().isHardWired() && !known.contains(box.name()))
            .map(Box::name)
            .toList());
  }

  private static Optional<Missing> unknownLengths(Circuit circuit) {
    return at(
        What.CABLE_LENGTH,
        circuit.cables().stream()
            .filter(cable -> cable.lengthMetres().isEmpty())
            .map(Cable::to)
            .distinct()
            .toList());
  }
}
