package ohmtrail.predict;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import ohmtrail.circuit.Box;
import ohmtrail.circuit.Cable;
import ohmtrail.circuit.Circuit;
import ohmtrail.circuit.JointKind;
import ohmtrail.circuit.Supply;
import ohmtrail.reference.Assumptions;
import ohmtrail.survey.Meter;
import ohmtrail.survey.ProbePoints;
import org.junit.jupiter.api.Test;

/** What everybody in the trade has seen at an outlet: common practice, no source. */
class TradeChecksTest {
  private static final Meter HIGH = Meter.highImpedance("high");
  private static final Meter LOW = Meter.lowImpedance("low");

  private static final Circuit RUN =
      new Circuit(
          Supply.NORTH_AMERICA_120,
          15,
          List.of(Box.panel("panel"), Box.feedThrough("outlet", JointKind.PUSH_IN)),
          List.of(Cable.of("panel", "outlet", 15, Wires.copper("14 AWG"))));

  /** Tens of kilohms. */
  private static final double OHMS = 27e3;

  private static double volts(Meter meter, ProbePoints between, List<Degradation> degraded) {
    return Wires.volts(
        RUN, Assumptions.defaults(), List.of(), List.of(), degraded, meter, "outlet", between);
  }

  @Test
  void aSoundOutletReadsAboutTheSameHighAndLow() {
    for (ProbePoints between : List.of(ProbePoints.HOT_NEUTRAL, ProbePoints.HOT_GROUND)) {
      assertEquals(volts(HIGH, between, List.of()), volts(LOW, between, List.of()), 0.1);
    }
  }

  @Test
  void withTensOfKilohmsInTheNeutralTheLowReadingFallsToATenthAndHotToGroundStaysFull() {
    List<Degradation> neutral = List.of(new Degradation("outlet/neutral/incoming", OHMS));
    assertEquals(119.7, volts(HIGH, ProbePoints.HOT_NEUTRAL, neutral), 0.4);
    assertEquals(12, volts(LOW, ProbePoints.HOT_NEUTRAL, neutral), 1);
    assertEquals(120, volts(LOW, ProbePoints.HOT_GROUND, neutral), 0.1);
  }

  @Test
  void theSameInTheHotLeavesHotToGroundLowOnALowImpedanceMeter() {
    List<Degradation> hot = List.of(new Degradation("outlet/hot/incoming", OHMS));
    assertEquals(12, volts(LOW, ProbePoints.HOT_NEUTRAL, hot), 1);
    assertEquals(12, volts(LOW, ProbePoints.HOT_GROUND, hot), 1);
    assertEquals(119.7, volts(HIGH, ProbePoints.HOT_GROUND, hot), 0.4);
  }

  @Test
  void aConductorConnectedToNothingReadsTensOfVoltsHighAndUnderOneLow() {
    List<Degradation> open =
        List.of(new Degradation("panel/neutral/outgoing", Double.POSITIVE_INFINITY));
    double high = volts(Wires.meter(5e6), ProbePoints.NEUTRAL_GROUND, open);
    double low = volts(LOW, ProbePoints.NEUTRAL_GROUND, open);
    assertTrue(high > 20 && high < 100, high + " V");
    assertTrue(low < 1, low + " V");
  }
}
