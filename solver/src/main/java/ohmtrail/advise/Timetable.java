package ohmtrail.advise;

import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.DoubleStream;
import java.util.stream.Stream;
import ohmtrail.circuit.Circuit;
import ohmtrail.reference.Assumption;
import ohmtrail.reference.Assumptions;
import ohmtrail.reference.Chore;
import ohmtrail.reference.Minutes;
import ohmtrail.report.OpeningPlan;
import ohmtrail.survey.LoadInUse;
import ohmtrail.survey.Survey;
import ohmtrail.survey.Test;

/**
 * How long each choice takes, and where one stands after it. A load is switched on for its reading
 * and off again: plugged in elsewhere it costs the way there, to the meter and back. Immutable.
 */
public final class Timetable {
  private static final double SECONDS_PER_MINUTE = 60;
  private static final Choice CALL = new Choice.Stop(Choice.Stop.Reason.CALL_UTILITY);

  private final Circuit circuit;
  private final Minutes minutes;
  private final Assumptions assumptions;

  /**
   * For a circuit.
   *
   * @param minutes for each chore
   * @param assumptions hold how long a load is on for a reading
   */
  public Timetable(Circuit circuit, Minutes minutes, Assumptions assumptions) {
    this.circuit = circuit;
    this.minutes = minutes;
    this.assumptions = assumptions;
  }

  Circuit circuit() {
    return circuit;
  }

  /**
   * Minutes that a choice takes.
   *
   * @param survey knows which boxes are out of reach
   * @param situation where one stands
   */
  public double of(Choice choice, Survey survey, Situation situation) {
    if (choice instanceof Choice.Read read) {
      return ofReading(read, survey, situation);
    }
    if (choice instanceof Choice.Open open) {
      return walk(situation.at(), open.box()) + opening(open.box(), survey);
    }
    return choice.equals(CALL) ? minutes.of(Chore.CALL_UTILITY) : 0;
  }

  private double ofReading(Choice.Read read, Survey survey, Situation situation) {
    double sum = 0;
    Optional<String> at = situation.at();
    for (LoadInUse use : read.loads()) {
      sum += situation.fetched().contains(use.load()) ? 0 : minutes.of(Chore.FETCH_LOAD);
      sum += walk(at, use.box()) + minutes.of(Chore.PLUG_LOAD);
      at = Optional.of(use.box());
    }
    sum += walk(at, read.box()) + minutes.of(Chore.READING) * read.readings().size();
    return sum
        + wayBack(read)
        + preparing(read, survey, situation)
        + switching(read)
        + brief(read, survey);
  }

  /** To open the switches and take off what is wired in, as far as the tests of a visit ask. */
  private double switching(Choice.Read read) {
    long places =
        read.tests().stream()
            .map(Test::switching)
            .flatMap(switched -> Stream.concat(switched.open().stream(), switched.off().stream()))
            .distinct()
            .count();
    return minutes.of(Chore.WALK) * places;
  }

  /**
   * The meter is set to hold its lowest reading, once for each that is taken while anything draws,
   * and somebody may have to help.
   */
  private double brief(Choice.Read read, Survey survey) {
    if (read.look() == Choice.Read.Look.USUAL) {
      return 0;
    }
    int held =
        read.tests().stream()
            .filter(test -> !LoadInUse.drawing(test, survey, circuit).isEmpty())
            .mapToInt(test -> test.readings().size())
            .sum();
    boolean away = read.tests().stream().anyMatch(test -> isOnElsewhere(read, test, survey));
    return minutes.of(Chore.READING) * held + (away ? minutes.of(Chore.SECOND_PERSON) : 0);
  }

  /** What has to be opened, switched off, linked or laid out for readings. */
  private double preparing(Choice.Read read, Survey survey, Situation situation) {
    double sum = minutes.of(Chore.LAY_LEAD) * read.leads().size();
    if (read.isInside()) {
      boolean open = situation.openBox().filter(read.box()::equals).isPresent();
      return open ? sum : sum + opening(read.box(), survey);
    }
    if (read.isDead()) {
      sum += situation.breakerOff() ? 0 : minutes.of(Chore.BREAKER_OFF);
      long missing =
          read.links().stream().filter(link -> !situation.links().contains(link)).count();
      sum += (minutes.of(Chore.WALK) + minutes.of(Chore.PLACE_LINK)) * missing;
    }
    return sum;
  }

  /** Minutes of a visit that follows another one, its loads at hand: the way there included. */
  double following(Choice.Read read, Survey survey) {
    return brief(read, survey)
        + minutes.of(Chore.WALK)
        + minutes.of(Chore.PLUG_LOAD) * read.loads().size()
        + minutes.of(Chore.READING) * read.readings().size();
  }

  /** Minutes to fetch a load where none is at hand. */
  double fetching(Situation situation) {
    return situation.fetched().isEmpty() ? minutes.of(Chore.FETCH_LOAD) : 0;
  }

  /** To switch off and pull out what was left on elsewhere. */
  private double wayBack(Choice.Read read) {
    return read.loads().stream()
        .filter(use -> !use.box().equals(read.box()))
        .mapToDouble(use -> minutes.of(Chore.WALK))
        .sum();
  }

  private double walk(Optional<String> from, String to) {
    return from.filter(to::equals).isPresent() ? 0 : minutes.of(Chore.WALK);
  }

  /** Minutes to open a box, the way there apart. */
  double opening(String box, Survey survey) {
    return OpeningPlan.minutesFor(circuit.box(box).orElseThrow(), minutes, survey);
  }

  /**
   * Minutes to look into each box of the circuit, the way there included, in their order; and last,
   * to have the supply looked into.
   */
  double[] openings(Survey survey) {
    return DoubleStream.concat(
            circuit.boxes().stream()
                .mapToDouble(box -> minutes.of(Chore.WALK) + opening(box.name(), survey)),
            DoubleStream.of(minutes.of(Chore.CALL_UTILITY)))
        .toArray();
  }

  /** Minutes that it costs to stop at a circuit that is not sound. */
  double wrongStop() {
    return minutes.of(Chore.WRONG_STOP);
  }

  /** Where one stands after a choice. */
  public Situation after(Choice choice, Situation situation) {
    if (choice instanceof Choice.Read read) {
      Set<String> loads = read.loads().stream().map(LoadInUse::load).collect(Collectors.toSet());
      Optional<LoadInUse> elsewhere =
          read.loads().stream().filter(use -> !use.box().equals(read.box())).findFirst();
      return read.isDead()
          ? situation.dead(read.box(), read.links())
          : situation.moved(elsewhere.map(LoadInUse::box).orElse(read.box()), loads);
    }
    return choice instanceof Choice.Open open ? situation.opened(open.box()) : situation;
  }

  /**
   * Seconds that the loads of a test are on, those wired in among them: for its readings, and while
   * somebody walks from the load or its switch to the meter and back.
   *
   * @param survey knows what is wired in
   */
  public double loadedSeconds(Choice.Read read, Test test, Survey survey) {
    if (LoadInUse.drawing(test, survey, circuit).isEmpty()) {
      return 0;
    }
    int readings = test.readings().size();
    if (read.look() == Choice.Read.Look.BRIEF) {
      return assumptions.value(Assumption.BRIEF_LOOK_SECONDS) * readings;
    }
    return isOnElsewhere(read, test, survey)
        ? 2 * SECONDS_PER_MINUTE * minutes.of(Chore.WALK)
            + SECONDS_PER_MINUTE * minutes.of(Chore.READING) * readings
        : assumptions.value(Assumption.LOOK_SECONDS) * readings;
  }

  /** Whether anything that is on during a test is switched at another box than is read at. */
  private boolean isOnElsewhere(Choice.Read read, Test test, Survey survey) {
    return LoadInUse.drawing(test, survey, circuit).stream()
        .anyMatch(use -> !use.box().equals(read.box()));
  }
}
