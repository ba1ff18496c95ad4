package ohmtrail.report;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import ohmtrail.circuit.Box;
import ohmtrail.circuit.Cable;
import ohmtrail.circuit.Circuit;
import ohmtrail.circuit.JointKind;
import ohmtrail.circuit.Supply;
import ohmtrail.locate.Locator;
import ohmtrail.locate.Verdict;
import ohmtrail.problem.Problem;
import ohmtrail.reference.Assumption;
import ohmtrail.reference.Assumptions;
import ohmtrail.reference.Conductor;
import ohmtrail.reference.ConductorMaterial;
import ohmtrail.reference.ConductorSize;
import ohmtrail.survey.Meter;
import ohmtrail.survey.ProbePoints;
import ohmtrail.survey.Reading;
import ohmtrail.survey.Survey;
import ohmtrail.survey.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class UndecidedTest {
  private static final Circuit CIRCUIT =
      new Circuit(
          Supply.NORTH_AMERICA_120,
          15,
          List.of(
              Box.panel("panel"),
              Box.feedThrough("hall", JointKind.SCREW),
              Box.feedThrough("bed", JointKind.PUSH_IN)),
          List.of(cable("panel", "hall"), cable("hall", "bed")));

  private static Cable cable(String from, String to) {
    ConductorSize size = ConductorSize.parse("14 AWG").orElseThrow();
    return Cable.of(from, to, 8, new Conductor(size, ConductorMaterial.COPPER));
  }

  private static Problem problem(double healthy, Reading... readings) {
    return new Problem(
        CIRCUIT,
        new Survey(
            List.of(Meter.highImpedance("dmm")),
            List.of(),
            List.of(new Test("idle", List.of(), List.of(readings)))),
        Assumptions.defaults().with(Assumption.HEALTHY_PRIOR, healthy));
  }

  /** What lets a verdict be given without the posterior of the same circuit unread. */
  @ParameterizedTest
  @ValueSource(doubles = {0.01, 0.3, 0.9})
  void whereNothingWasReadASoundCircuitIsAsProbableAsAssumed(double healthy) {
    assertEquals(healthy, new Locator().locate(problem(healthy)).healthyProbability(), 1e-12);
  }

  /** A voltmeter that draws nothing tells nothing of ohms in the way. */
  @ParameterizedTest
  @ValueSource(doubles = {0.3, 0.9})
  void anIdleReadingOfFullVoltageByAMeterThatDrawsNothingDecidesLittle(double healthy) {
    Reading idle = new Reading("panel", ProbePoints.HOT_NEUTRAL, "dmm", 120.1);
    assertEquals(Verdict.UNDECIDED, Report.of(problem(healthy, idle)).diagnosis().verdict());
  }
}
