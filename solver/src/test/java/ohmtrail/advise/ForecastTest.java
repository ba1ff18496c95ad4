package ohmtrail.advise;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import ohmtrail.circuit.Circuit;
import ohmtrail.locate.Locator;
import ohmtrail.locate.Posterior;
import ohmtrail.practice.LiveCircuit;
import ohmtrail.practice.PracticeCase;
import ohmtrail.predict.Degradation;
import ohmtrail.predict.Predictor;
import ohmtrail.problem.Problem;
import ohmtrail.survey.Finding;
import ohmtrail.survey.ProbePoints;
import ohmtrail.survey.Reading;
import ohmtrail.survey.ReadingError;
import ohmtrail.survey.Survey;
import org.apache.commons.math3.stat.descriptive.SummaryStatistics;
import org.junit.jupiter.api.Test;

/** What is forecast against what circuits drawn from the same tolerances show. */
class ForecastTest {
  private static final double ROUNDING = 1e-9;
  private static final int CIRCUITS = 400;

  /**
   * With 200 draws the standard deviation of a sample deviation is 5 %, and that of a mean 7 % of a
   * standard deviation: three of them, and some for the linear model.
   */
  private static final double SPREAD = 0.2;

  private static final double MEAN = 0.25;

  private final Circuit circuit = Runs.chain(4);
  private final Degradation fault = new Degradation("box-3/neutral/incoming", 0.5);

  @Test
  void withNothingReadASoundCircuitIsForecastAsItIsPredicted() {
    Survey equipment = Runs.survey(Runs.HEATER_WATTS);
    Choice.Read visit = new Choice.Read(List.of(Runs.heater("box-4", "box-2", "box-4")));
    Gaussian forecast = conditional(equipment, visit, List.of()).of(visit);

    Survey blank = Runs.survey(Runs.HEATER_WATTS, Runs.heater("box-4", "box-2", "box-4"));
    List<Double> exact = new Predictor(circuit, blank, Runs.USUAL).readings(List.of());

    assertEquals(exact.get(0), forecast.mean(0), ROUNDING);
    assertEquals(exact.get(1), forecast.mean(1), ROUNDING);
  }

  /**
   * Circuits with the same fault, everything else drawn: what was not read yet, measured in the
   * forecast's standard deviations from its mean, has the mean 0 and the deviation 1.
   */
  @Test
  void readingsToComeLieWithinTheirForecast() {
    Choice.Read visit = new Choice.Read(List.of(Runs.heater("box-4", "box-4", "box-2")));
    SummaryStatistics first = new SummaryStatistics();
    SummaryStatistics fall = new SummaryStatistics();
    for (int seed = 0; seed < CIRCUITS; seed++) {
      Survey blank =
          Runs.survey(Runs.HEATER_WATTS, Runs.idle("box-1"), Runs.heater("box-3", "box-3"));
      PracticeCase drawn = PracticeCase.staged(circuit, blank, List.of(fault), Runs.USUAL, seed);
      LiveCircuit live = new LiveCircuit(drawn, seed);
      List<Reading> shown = live.take(visit.tests().get(0)).readings();

      Gaussian forecast = conditional(drawn.survey(), visit, List.of(fault)).of(visit);

      first.addValue((shown.get(0).value() - forecast.mean(0)) / forecast.sigma(0));
      double fallen = shown.get(0).value() - shown.get(1).value();
      fall.addValue((fallen - forecast.mean(0) + forecast.mean(1)) / forecast.sigmaOfFall());
    }
    assertEquals(0, first.getMean(), MEAN);
    assertEquals(1, first.getStandardDeviation(), SPREAD);
    assertEquals(0, fall.getMean(), MEAN);
    assertEquals(1, fall.getStandardDeviation(), SPREAD);
  }

  /** The same of what other meters show, once the supply's own impedance has been read. */
  @Test
  void ohmsAndAmperesToComeLieWithinTheirForecast() {
    for (ohmtrail.survey.Test coming :
        List.of(Runs.linked("box-4", "box-2"), Runs.loop("box-4"), Runs.clamped("box-4"))) {
      Choice.Read visit = new Choice.Read(List.of(coming));
      SummaryStatistics off = new SummaryStatistics();
      for (int seed = 0; seed < CIRCUITS; seed++) {
        Survey blank = Runs.everyMeter(Runs.loop("box-1"), Runs.heater("box-3", "box-3"));
        PracticeCase drawn = PracticeCase.staged(circuit, blank, List.of(fault), Runs.USUAL, seed);
        LiveCircuit live = new LiveCircuit(drawn, seed);
        Reading shown = live.take(coming).readings().get(0);
        double number = ReadingError.number(shown.value(), blank.meter(shown.meter()));

        Gaussian forecast = conditional(drawn.survey(), visit, List.of(fault)).of(visit);

        off.addValue((number - forecast.mean(0)) / forecast.sigma(0));
      }
      assertEquals(0, off.getMean(), MEAN, coming.name());
      assertEquals(1, off.getStandardDeviation(), SPREAD, coming.name());
    }
  }

  /** The supply's voltage is known to 3 % before any reading, and to its drift after one. */
  @Test
  void aReadingNarrowsTheNextOne() {
    Choice.Read visit = new Choice.Read(List.of(Runs.idle("box-4")));
    Gaussian before = conditional(Runs.survey(Runs.HEATER_WATTS), visit, List.of()).of(visit);
    Survey one = Runs.filled(circuit, Runs.survey(Runs.HEATER_WATTS, Runs.idle("box-1")));
    Gaussian after = conditional(one, visit, List.of()).of(visit);

    assertEquals(0.03 * 120, before.sigma(0), 0.1);
    assertTrue(after.sigma(0) < 0.7, "sigma " + after.sigma(0) + " V after a reading");
  }

  /** A density that is one: by a plain sum over a grid. */
  @Test
  void densitiesSumToOne() {
    Gaussian gaussian = new Gaussian(new double[] {1, -2}, new double[][] {{0.5, 0}, {0.3, 0.4}});
    double step = 0.05;
    double sum = 0;
    for (double x = -5; x < 7; x += step) {
      for (double y = -8; y < 4; y += step) {
        sum += gaussian.density(new double[] {x, y}) * step * step;
      }
    }
    assertEquals(1, sum, 1e-6);
    assertEquals(Math.sqrt(0.5), gaussian.sigma(0), ROUNDING);
    assertEquals(Math.sqrt(0.4), gaussian.sigma(1), ROUNDING);
    assertEquals(Math.sqrt(0.5 + 0.4 - 2 * 0.3), gaussian.sigmaOfFall(), ROUNDING);
  }

  private Forecast.Conditional conditional(
      Survey survey, Choice.Read visit, List<Degradation> degraded) {
    Posterior posterior = new Locator().posterior(new Problem(circuit, survey, Runs.USUAL));
    List<Double> nowhere = new ArrayList<>();
    Beliefs.places(circuit, Finding.SUPPLY).forEach(place -> nowhere.add(0.0));
    Belief belief = new Belief(degraded, 0, 1, nowhere);
    Beliefs beliefs = new Beliefs(circuit, List.of(belief));
    double[] point = posterior.diagnosis().bestPointArray();
    return new Forecast(circuit, survey, List.of(visit), Runs.USUAL, point, beliefs).under(belief);
  }

  /** Hot to ground and neutral to ground add up to hot to neutral, as far as each is read. */
  @Test
  void readingsOfOneVisitHangTogether() {
    Choice.Read visit =
        new Choice.Read(
            List.of(
                new ohmtrail.survey.Test(
                    "idle",
                    List.of(),
                    List.of(
                        new Reading("box-2", ProbePoints.HOT_NEUTRAL, "high", 0),
                        new Reading("box-2", ProbePoints.HOT_GROUND, "high", 0)))));
    Gaussian forecast = conditional(Runs.survey(Runs.HEATER_WATTS), visit, List.of()).of(visit);
    assertTrue(
        forecast.sigmaOfFall() < 0.1 * forecast.sigma(0),
        "the two differ by " + forecast.sigmaOfFall() + " V");
  }
}
