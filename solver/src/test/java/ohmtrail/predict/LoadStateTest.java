package ohmtrail.predict;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import ohmtrail.circuit.Box;
import ohmtrail.circuit.Cable;
import ohmtrail.circuit.Circuit;
import ohmtrail.circuit.JointKind;
import ohmtrail.circuit.Supply;
import ohmtrail.reference.Assumptions;
import ohmtrail.reference.Conductor;
import ohmtrail.reference.ConductorMaterial;
import ohmtrail.reference.ConductorSize;
import ohmtrail.survey.LoadInUse;
import ohmtrail.survey.ProbePoints;
import ohmtrail.survey.Survey;
import ohmtrail.survey.Test;
import ohmtrail.survey.load.HeatingElement;

/** Currents and voltages by insertion against the same circuit solved with the ohms in place. */
class LoadStateTest {
  /** Both are exact; what is left is rounding, of an insertion up to ten decades of ohms. */
  private static final double ROUNDING = 1e-7;

  /** What 10 pF from the hot bar to each of the other two draw at 60 Hz, before the breaker. */
  private static final double OF_THE_BARS = 2 * 10e-12 * 2 * Math.PI * 60 * 130;

  private static final Conductor COPPER =
      new Conductor(ConductorSize.parse("14 AWG").orElseThrow(), ConductorMaterial.COPPER);
  private static final Circuit CIRCUIT =
      new Circuit(
          Supply.NORTH_AMERICA_120,
          15,
          List.of(
              Box.panel("panel"),
              Box.feedThrough("hall", JointKind.PUSH_IN),
              Box.pigtail("bed"),
              Box.feedThrough("bath", JointKind.SCREW)),
          List.of(
              Cable.of("panel", "hall", 12, COPPER),
              Cable.of("hall", "bed", 5, COPPER),
              Cable.of("hall", "bath", 7, COPPER)));
  private static final Test LOADED =
      new Test(
          "both",
          List.of(new LoadInUse("heater", "bed"), new LoadInUse("iron", "bath")),
          List.of());
  private static final Survey SURVEY =
      new Survey(
          List.of(),
          List.of(new HeatingElement("heater", 1000, 120), new HeatingElement("iron", 400, 120)),
          List.of(LOADED));

  private final Predictor predictor = new Predictor(CIRCUIT, SURVEY, Assumptions.defaults());
  private final LoadState state =
      predictor.states(List.of(LOADED), predictor.parameters().nominalPoint()).of(LOADED);

  private static SolvedSurvey anew(List<Degradation> degraded) {
    return Solved.asStated(CIRCUIT, SURVEY, Assumptions.defaults(), degraded);
  }

  @Property(tries = 200)
  void anInsertionGivesWhatSolvingAnewGives(
      @ForAll @IntRange(min = 0, max = 34) int place,
      @ForAll @DoubleRange(min = -3, max = 7) double exponent) {
    String joint = CIRCUIT.joints().get(place % CIRCUIT.joints().size()).id();
    double ohms = Math.pow(10, exponent);
    Degradation added = new Degradation(joint, ohms);

    SolvedSurvey anew = anew(List.of(added));
    assertEquals(
        anew.jointAmperes(LOADED, joint), state.with(List.of(added)).jointAmperes(joint), ROUNDING);
    assertEquals(
        anew.profile(LOADED).points().stream()
            .filter(point -> CIRCUIT.box(point.box()).orElseThrow().hasReceptacle())
            .mapToDouble(point -> point.volts(ProbePoints.HOT_NEUTRAL).orElseThrow())
            .max()
            .orElseThrow(),
        state.with(List.of(added)).highestVolts(),
        ROUNDING * CIRCUIT.supply().volts());
  }

  /** All of the circuit's current passes the breaker's joint, but for that of the panel's bars. */
  @Property(tries = 100)
  void theSupplyFeedsWhatPassesTheBreaker(
      @ForAll @IntRange(min = 0, max = 34) int place,
      @ForAll @DoubleRange(min = -3, max = 7) double exponent) {
    String joint = CIRCUIT.joints().get(place % CIRCUIT.joints().size()).id();
    double ohms = Math.pow(10, exponent);
    String breaker = "panel/hot/outgoing";
    Degradation added = new Degradation(joint, ohms);
    List<Degradation> both =
        joint.equals(breaker) ? List.of(added) : List.of(added, new Degradation(breaker, 0));

    assertEquals(
        anew(both).jointAmperes(LOADED, breaker),
        state.with(List.of(added)).supplyAmperes(),
        ROUNDING + OF_THE_BARS);
  }

  @org.junit.jupiter.api.Test
  void anOpenJointCarriesNothing() {
    FaultedState open =
        state.with(List.of(new Degradation("panel/hot/outgoing", Double.POSITIVE_INFINITY)));
    assertEquals(0, open.jointAmperes("panel/hot/outgoing"), ROUNDING);
    assertEquals(0, open.highestVolts(), 0.1);
  }
}
