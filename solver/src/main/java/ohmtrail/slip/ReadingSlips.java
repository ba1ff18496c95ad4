package ohmtrail.slip;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import ohmtrail.circuit.Box;
import ohmtrail.circuit.Circuit;
import ohmtrail.circuit.ConductorRole;
import ohmtrail.locate.Diagnosis;
import ohmtrail.locate.FittedReading;
import ohmtrail.problem.Problem;
import ohmtrail.problem.Slip;
import ohmtrail.reference.Assumption;
import ohmtrail.survey.Measurand;
import ohmtrail.survey.Meter;
import ohmtrail.survey.ProbePoints;
import ohmtrail.survey.Reading;
import ohmtrail.survey.Survey;
import ohmtrail.survey.SurveyException;
import ohmtrail.survey.Tap;
import ohmtrail.survey.Test;

/**
 * A reading that is in doubt, as what it would be if it was mistyped, taken at a neighbour of its
 * box, between other conductors or with another meter. A third of all that is wrong with a reading
 * is typing, a third its box, a third probes and meter (common practice, no source).
 */
final class ReadingSlips {
  /** A reading less doubted has no slip of its own. */
  private static final double DOUBTED = 0.02;

  /** So many readings at most, the most doubted first. */
  private static final int MOST = 3;

  /** One reading is out of line where it is so much farther off than every other, and so far. */
  private static final double TIMES_FARTHER = 2;

  private static final double FAR_VOLTS = 3;
  private static final double SHARE = 1.0 / 3;

  private final Problem stated;
  private final Diagnosis diagnosis;

  /**
   * Prepares.
   *
   * @param stated the problem as stated
   * @param diagnosis of it
   */
  ReadingSlips(Problem stated, Diagnosis diagnosis) {
    this.stated = stated;
    this.diagnosis = diagnosis;
  }

  /**
   * A reading as another one.
   *
   * @param supposition what is supposed
   * @param place of the reading in the survey
   * @param test when it was taken
   * @param reading what was really read
   */
  record Instead(Supposition supposition, int place, Test test, Reading reading) {}

  /** All that a doubted reading may be instead. */
  List<Instead> all() {
    List<Instead> all = new ArrayList<>();
    int place = 0;
    List<Integer> doubted = doubted();
    for (Test test : stated.survey().tests()) {
      for (Reading reading : test.readings()) {
        if (doubted.contains(place)
            && reading.measurand() == Measurand.VOLTAGE
            && reading.tap() instanceof Tap.Pair pair) {
          all.addAll(mistyped(place, test, reading));
          all.addAll(atNeighbours(place, test, reading, pair));
          all.addAll(probed(place, test, reading, pair));
        }
        place++;
      }
    }
    return all;
  }

  /** By place: those that the answer doubts, and one that alone is far from a sound circuit. */
  private List<Integer> doubted() {
    List<FittedReading> readings = diagnosis.readings();
    List<Integer> places = new ArrayList<>();
    for (int r = 0; r < readings.size(); r++) {
      if (readings.get(r).wrongProbability() > DOUBTED) {
        places.add(r);
      }
    }
    places.sort(
        (one, other) ->
            Double.compare(
                readings.get(other).wrongProbability(), readings.get(one).wrongProbability()));
    Stream<Integer> alone = outOfLine().stream();
    return Stream.concat(places.stream().limit(MOST), alone).distinct().toList();
  }

  private Optional<Integer> outOfLine() {
    List<FittedReading> readings = diagnosis.readings();
    int farthest = 0;
    double most = 0;
    double next = FAR_VOLTS / TIMES_FARTHER;
    for (int r = 0; r < readings.size(); r++) {
      double off = Math.abs(readings.get(r).reading().value() - readings.get(r).healthy());
      if (off > most) {
        next = Math.max(next, most);
        most = off;
        farthest = r;
      } else {
        next = Math.max(next, off);
      }
    }
    return most > TIMES_FARTHER * next ? Optional.of(farthest) : Optional.empty();
  }

  private double prior() {
    return SHARE * stated.assumptions().value(Assumption.WRONG_READING);
  }

  private List<Instead> mistyped(int place, Test test, Reading reading) {
    List<Instead> meant = new ArrayList<>();
    double resolution = stated.survey().meter(reading.meter()).resolution();
    FittedReading fitted = diagnosis.readings().get(place);
    Typing.meant(reading.value(), resolution)
        .forEach(
            (value, share) -> {
              boolean isNear =
                  Math.abs(value - fitted.fitted()) < Typing.NEAR_SHARE * fitted.healthy()
                      || Math.abs(value - fitted.healthy()) < Typing.NEAR_SHARE * fitted.healthy();
              if (isNear) {
                instead(
                        new Slip.ReadingMistyped(place, value),
                        prior() * share,
                        test,
                        reading.showing(value))
                    .ifPresent(meant::add);
              }
            });
    return meant;
  }

  private List<Instead> atNeighbours(int place, Test test, Reading reading, Tap.Pair pair) {
    Circuit circuit = stated.circuit();
    List<String> neighbours =
        circuit.cables().stream()
            .filter(cable -> cable.from().equals(pair.box()) || cable.to().equals(pair.box()))
            .map(cable -> cable.otherEnd(pair.box()))
            .filter(name -> circuit.box(name).filter(Box::hasReceptacle).isPresent())
            .toList();
    List<Instead> there = new ArrayList<>();
    for (String box : neighbours) {
      instead(
              new Slip.ReadingElsewhere(place, box),
              prior() / neighbours.size(),
              test,
              at(reading, new Tap.Pair(box, pair.between()), reading.meter()))
          .ifPresent(there::add);
    }
    return there;
  }

  private List<Instead> probed(int place, Test test, Reading reading, Tap.Pair pair) {
    Map<Slip.OfReading, Reading> ways = new LinkedHashMap<>();
    ProbePoints usual = ProbePoints.usual(stated.circuit(), pair.box());
    for (ProbePoints between :
        List.of(
            usual,
            new ProbePoints(usual.first(), ConductorRole.GROUND),
            new ProbePoints(ConductorRole.NEUTRAL, ConductorRole.GROUND))) {
      if (!between.equals(pair.between())) {
        ways.put(
            new Slip.ProbesElsewhere(place, between),
            at(reading, new Tap.Pair(pair.box(), between), reading.meter()));
      }
    }
    for (Meter meter : stated.survey().meters(reading.measurand())) {
      if (!meter.name().equals(reading.meter())) {
        ways.put(
            new Slip.OtherMeter(place, meter.name()), at(reading, reading.tap(), meter.name()));
      }
    }
    List<Instead> all = new ArrayList<>();
    ways.forEach(
        (slip, other) -> instead(slip, prior() / ways.size(), test, other).ifPresent(all::add));
    return all;
  }

  private static Reading at(Reading reading, Tap tap, String meter) {
    return new Reading(tap, reading.measurand(), meter, reading.value(), reading.halfRange());
  }

  /** Empty where the circuit has no such reading. */
  private Optional<Instead> instead(Slip.OfReading slip, double prior, Test test, Reading instead) {
    Survey survey = stated.survey();
    List<Test> tests = new ArrayList<>();
    int place = 0;
    for (Test each : survey.tests()) {
      List<Reading> readings = new ArrayList<>();
      for (Reading reading : each.readings()) {
        readings.add(place++ == slip.reading() ? instead : reading);
      }
      tests.add(each.withReadings(readings));
    }
    try {
      Problem problem = stated.withSurvey(survey.withTests(tests));
      return Optional.of(
          new Instead(Supposition.of(slip, prior, () -> problem), slip.reading(), test, instead));
    } catch (SurveyException nonsense) {
      return Optional.empty();
    }
  }
}
