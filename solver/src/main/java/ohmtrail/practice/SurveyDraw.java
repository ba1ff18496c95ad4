package ohmtrail.practice;

import java.util.ArrayList;
import java.util.List;
import ohmtrail.circuit.Box;
import ohmtrail.circuit.Circuit;
import ohmtrail.circuit.ConductorRole;
import ohmtrail.survey.LoadInUse;
import ohmtrail.survey.Measurand;
import ohmtrail.survey.Meter;
import ohmtrail.survey.ProbePoints;
import ohmtrail.survey.Reading;
import ohmtrail.survey.Survey;
import ohmtrail.survey.Test;
import ohmtrail.survey.load.HeatingElement;
import ohmtrail.survey.load.Load;

/** Draws which boxes are visited and lays out what is read there; every reading is still 0 V. */
final class SurveyDraw {
  private static final String HIGH = "high-impedance meter";
  private static final String LOW = "low-impedance meter";
  private static final String HEATER = "heater";

  private final SurveyKind kind;
  private final Circuit circuit;
  private final Chance chance;

  SurveyDraw(SurveyKind kind, Circuit circuit, Chance chance) {
    this.kind = kind;
    this.circuit = circuit;
    this.chance = chance;
  }

  Survey draw() {
    List<String> receptacles =
        circuit.boxes().stream().filter(Box::hasReceptacle).map(Box::name).toList();
    int visits = (int) Math.ceil(kind.readShare() * receptacles.size());
    List<Test> tests = new ArrayList<>();
    for (String box : chance.some(receptacles, visits)) {
      addIdle(box, tests);
      addLoaded(SurveyKind.Round.HEATER_HERE, box, box, tests);
      String end = receptacles.get(receptacles.size() - 1);
      addLoaded(SurveyKind.Round.HEATER_AT_END, box, end, tests);
    }
    return new Survey(meters(), loads(), tests);
  }

  private void addIdle(String box, List<Test> tests) {
    List<Reading> readings = new ArrayList<>();
    if (kind.rounds().contains(SurveyKind.Round.IDLE_HIGH_IMPEDANCE)) {
      readings.addAll(blank(box, HIGH));
    }
    if (kind.rounds().contains(SurveyKind.Round.IDLE_LOW_IMPEDANCE)) {
      readings.addAll(blank(box, LOW));
    }
    if (!readings.isEmpty()) {
      tests.add(new Test("idle, at " + box, List.of(), readings));
    }
  }

  private void addLoaded(SurveyKind.Round round, String box, String heaterAt, List<Test> tests) {
    if (kind.rounds().contains(round)) {
      String name = "heater at " + heaterAt + ", read at " + box;
      boolean known = tests.stream().anyMatch(test -> test.name().equals(name));
      if (!known) {
        tests.add(new Test(name, List.of(new LoadInUse(HEATER, heaterAt)), blank(box, HIGH)));
      }
    }
  }

  private List<Reading> blank(String box, String meter) {
    List<Reading> readings = new ArrayList<>();
    for (ProbePoints between : kind.between()) {
      readings.add(new Reading(box, at(box, between), meter, 0));
    }
    return readings;
  }

  /** The same conductors of a box whose live one may be a leg. */
  private ProbePoints at(String box, ProbePoints between) {
    ConductorRole live = ProbePoints.usual(circuit, box).first();
    return between.first() == ConductorRole.HOT ? new ProbePoints(live, between.second()) : between;
  }

  private static String named(Measurand measurand) {
    return switch (measurand) {
      case VOLTAGE -> "voltmeter";
      case CURRENT -> "clamp";
      case LOOP_IMPEDANCE -> "loop tester";
      case RESISTANCE -> "ohmmeter";
    };
  }

  private List<Meter> meters() {
    List<Meter> meters = new ArrayList<>();
    if (kind.rounds().stream().anyMatch(r -> r != SurveyKind.Round.IDLE_LOW_IMPEDANCE)) {
      meters.add(meter(HIGH, Meter.HIGH_IMPEDANCE_OHMS));
    }
    if (kind.rounds().contains(SurveyKind.Round.IDLE_LOW_IMPEDANCE)) {
      meters.add(meter(LOW, Meter.LOW_IMPEDANCE_OHMS));
    }
    kind.unused().forEach(measurand -> meters.add(Meter.usual(named(measurand), measurand)));
    return meters;
  }

  private Meter meter(String name, double ohms) {
    return new Meter(name, ohms, Meter.USUAL_INPUT_FARADS, kind.accuracy(), kind.resolutionVolts());
  }

  private List<Load> loads() {
    boolean heater =
        kind.rounds().contains(SurveyKind.Round.HEATER_HERE)
            || kind.rounds().contains(SurveyKind.Round.HEATER_AT_END);
    double ratedVolts = circuit.supply().volts();
    return heater ? List.of(new HeatingElement(HEATER, kind.heaterWatts(), ratedVolts)) : List.of();
  }
}
