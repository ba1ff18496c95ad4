package ohmtrail.advise;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import ohmtrail.survey.Meter;
import ohmtrail.survey.ProbePoints;
import ohmtrail.survey.Reading;
import ohmtrail.survey.Survey;
import ohmtrail.survey.Test;

/** Outcomes put into bands: the bound that is printed is where the answer turns. */
class BandsTest {
  private static final Meter METER = Meter.highImpedance("meter");
  private static final Survey SURVEY = new Survey(List.of(METER), List.of(), List.of());

  private static final Choice.Read VISIT =
      new Choice.Read(
          List.of(
              new Test(
                  "to come",
                  List.of(),
                  List.of(new Reading("tv", ProbePoints.HOT_NEUTRAL, METER.name(), 0)))));

  /** Half a step of the display. */
  private static final double SHOWN = 0.05 + 1e-9;

  /** A joint at the hall shows anything about 90 V, a sound circuit about 118 V. */
  private static Lookahead.Simulated given(double volts) {
    double bad = 0.3 / 12 * Math.exp(-0.5 * Math.pow((volts - 90) / 12, 2));
    double sound = 0.7 / 2 * Math.exp(-0.5 * Math.pow((volts - 118) / 2, 2));
    return new Lookahead.Simulated(
        List.of(volts), List.of(bad / (bad + sound)), sound / (bad + sound), 0);
  }

  @org.junit.jupiter.api.Test
  void theBoundIsWhereTheLikeliestPlaceTurnsAndNotHalfWayBetweenTwoSimulatedReadings() {
    List<Lookahead.Simulated> samples = new ArrayList<>();
    for (double volts : new double[] {75, 80, 84, 88, 90, 117, 117.5, 118, 118.5, 119, 119.5}) {
      samples.add(given(volts));
    }
    Function<List<Double>, Lookahead.Simulated> posterior = values -> given(values.get(0));

    List<Outcome> outcomes = Bands.of(VISIT, samples, List.of("hall"), SURVEY, posterior);

    assertEquals(2, outcomes.size());
    double turns = turning();
    assertEquals(turns, outcomes.get(0).below().orElseThrow(), SHOWN + 0.03);
    assertEquals(1, outcomes.get(1).healthyProbability(), 0.01);
  }

  /** By plain search in steps of a millivolt. */
  private static double turning() {
    double volts = 90;
    while (given(volts).masses().get(0) > given(volts).healthy()) {
      volts += 0.001;
    }
    return volts;
  }
}
