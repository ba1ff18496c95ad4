package ohmtrail.advise;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import ohmtrail.advise.safety.Draw;
import ohmtrail.reference.Assumption;
import ohmtrail.reference.Assumptions;
import ohmtrail.survey.LoadInUse;
import ohmtrail.survey.Measurand;
import ohmtrail.survey.Meter;
import ohmtrail.survey.Reading;
import ohmtrail.survey.Survey;
import ohmtrail.survey.Switching;
import ohmtrail.survey.Test;

/**
 * What a circuit is exposed to at one moment of a visit: the loads that are on, plugged in and
 * wired in, with the meter that draws beside them. Two moments that are equal are the same to the
 * circuit.
 *
 * @param moment the loads and switches, with one reading whose meter draws or none
 * @param draw how current is drawn
 */
record Exposure(Test moment, Draw draw) {
  private static final String NAME = "moment";

  /**
   * The moments of a test in which anything draws. A meter draws where it could give a hand more
   * than the limited touch current.
   *
   * @param read the visit
   * @param test one of its tests
   * @param survey the meters and loads, and what is wired in
   */
  static List<Exposure> of(
      Choice.Read read, Test test, Survey survey, Timetable timetable, Assumptions assumptions) {
    if (test.isDead()) {
      return List.of();
    }
    List<Exposure> exposures = new ArrayList<>();
    double seconds = timetable.loadedSeconds(read, test, survey);
    if (seconds > 0) {
      Draw.By by = isLeftOn(read, test) ? Draw.By.LOAD_LEFT_ON : Draw.By.LOAD;
      exposures.add(new Exposure(moment(test, Optional.empty()), new Draw(by, seconds)));
      drawing(test, survey, timetable, assumptions)
          .forEach(
              reading ->
                  exposures.add(
                      new Exposure(moment(test, Optional.of(reading)), new Draw(by, seconds))));
      return exposures;
    }
    for (Reading reading : drawing(test, survey, timetable, assumptions)) {
      boolean loop = reading.measurand() == Measurand.LOOP_IMPEDANCE;
      Assumption lasts = loop ? Assumption.LOOP_TEST_SECONDS : Assumption.LOOK_SECONDS;
      Draw.By by = loop ? Draw.By.LOOP_TESTER : Draw.By.VOLTMETER;
      exposures.add(
          new Exposure(moment(test, Optional.of(reading)), new Draw(by, assumptions.value(lasts))));
    }
    return exposures;
  }

  private static List<Reading> drawing(
      Test test, Survey survey, Timetable timetable, Assumptions assumptions) {
    double volts = timetable.circuit().supply().volts();
    double most = timetable.circuit().supply().greatestVolts();
    return test.readings().stream()
        .filter(
            reading -> {
              Meter meter = survey.meter(reading.meter());
              return meter.siemens(volts) * most > assumptions.value(Assumption.TOUCH_AMPERES);
            })
        .toList();
  }

  private static boolean isLeftOn(Choice.Read read, Test test) {
    return test.loads().stream().anyMatch(use -> !use.box().equals(read.box()));
  }

  private static Test moment(Test test, Optional<Reading> reading) {
    List<Reading> drawing = reading.map(each -> List.of(each.showing(0))).orElse(List.of());
    return new Test(NAME, test.loads(), drawing).withSwitching(test.switching());
  }

  /** The same place before anybody came: nothing plugged in, and everything wired in off. */
  static Test untouched(Survey survey) {
    Switching off =
        new Switching(
            Set.of(), survey.hardWired().stream().map(LoadInUse::load).collect(Collectors.toSet()));
    return new Test(NAME, List.of(), List.of()).withSwitching(off);
  }
}
