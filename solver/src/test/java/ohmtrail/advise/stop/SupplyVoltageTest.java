package ohmtrail.advise.stop;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.ArrayList;
import java.util.List;
import ohmtrail.circuit.Box;
import ohmtrail.circuit.Cable;
import ohmtrail.circuit.Circuit;
import ohmtrail.circuit.JointKind;
import ohmtrail.circuit.Supply;
import ohmtrail.locate.Diagnosis;
import ohmtrail.locate.Locator;
import ohmtrail.locate.Verdict;
import ohmtrail.predict.Predictor;
import ohmtrail.problem.Problem;
import ohmtrail.reference.Assumptions;
import ohmtrail.reference.Conductor;
import ohmtrail.reference.ConductorMaterial;
import ohmtrail.reference.ConductorSize;
import ohmtrail.report.caution.SupplySide;
import ohmtrail.survey.LoadInUse;
import ohmtrail.survey.Meter;
import ohmtrail.survey.ProbePoints;
import ohmtrail.survey.Reading;
import ohmtrail.survey.Survey;
import ohmtrail.survey.Test;
import ohmtrail.survey.load.HeatingElement;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * A sound run on a supply that stands where standards let it stand, and where they do not. The
 * voltage is what the supply gives with nothing on.
 */
class SupplyVoltageTest {
  private static final double STEPS_PER_VOLT = 10;
  private static final String METER = "meter";

  private static Circuit run(double volts, double hertz) {
    Conductor copper =
        new Conductor(ConductorSize.parse("12 AWG").orElseThrow(), ConductorMaterial.COPPER);
    return new Circuit(
        new Supply(volts, hertz),
        20,
        List.of(
            Box.panel("panel"),
            Box.feedThrough("near", JointKind.SCREW),
            Box.feedThrough("far", JointKind.SCREW)),
        List.of(Cable.of("panel", "near", 9, copper), Cable.of("near", "far", 6, copper)));
  }

  /** Both boxes read, idle and with a heater on, on a supply that stands at so many volts. */
  private static Survey taken(double nominal, double hertz, double stands) {
    List<Reading> blanks =
        List.of(
            new Reading("near", ProbePoints.HOT_NEUTRAL, METER, 0),
            new Reading("far", ProbePoints.HOT_NEUTRAL, METER, 0));
    Survey plan =
        new Survey(
            List.of(Meter.highImpedance(METER)),
            List.of(new HeatingElement("heater", 1500, nominal)),
            List.of(
                new Test("idle", List.of(), blanks),
                new Test("loaded", List.of(new LoadInUse("heater", "far")), blanks)));
    List<Double> volts =
        new Predictor(run(stands, hertz), plan, Assumptions.defaults()).readings(List.of());
    List<Test> tests = new ArrayList<>();
    for (Test test : plan.tests()) {
      List<Reading> shown = new ArrayList<>();
      for (Reading blank : test.readings()) {
        double value = volts.get(2 * tests.size() + shown.size());
        shown.add(blank.showing(Math.round(STEPS_PER_VOLT * value) / STEPS_PER_VOLT));
      }
      tests.add(test.withReadings(shown));
    }
    return plan.withTests(tests);
  }

  @ParameterizedTest
  @CsvSource({
    // ANSI C84.1 range A, service, as in Maryland COMAR 20.50.07.02: 114 to 126 V.
    "120, 60, 114, false",
    "120, 60, 126, false",
    // Range B, service, from memory: 110 to 127 V.
    "120, 60, 110.5, false",
    "120, 60, 126.7, false",
    "120, 60, 109, true",
    "120, 60, 129, true",
    // IEC 60038, and EN 50160 as quoted in a secondary text: 230 V, 10 % either way.
    "230, 50, 207.5, false",
    "230, 50, 252.5, false",
    "230, 50, 204, true",
    "230, 50, 256, true",
    // The United Kingdom since 1995, as quoted in a secondary text: 216.2 to 253 V.
    "230, 50, 216.2, false"
  })
  void itIsForTheUtilityBeyondTheRangeOfItsRegionAndTheRunIsSoundAllTheSame(
      double nominal, double hertz, double stands, boolean atFault) {
    Problem problem =
        new Problem(run(nominal, hertz), taken(nominal, hertz, stands), Assumptions.defaults());
    Diagnosis diagnosis = new Locator().locate(problem);
    assertEquals(Verdict.HEALTHY, diagnosis.verdict());
    assertEquals(atFault, SupplySide.isAtFault(problem, diagnosis));
  }
}
