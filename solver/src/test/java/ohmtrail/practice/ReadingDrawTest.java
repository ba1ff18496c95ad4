package ohmtrail.practice;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.LongStream;
import ohmtrail.predict.Parameter;
import ohmtrail.predict.Parameters;
import ohmtrail.predict.Predictor;
import ohmtrail.reference.Assumption;
import ohmtrail.reference.Assumptions;
import ohmtrail.survey.Meter;
import ohmtrail.survey.Reading;
import org.apache.commons.math3.distribution.NormalDistribution;
import org.apache.commons.math3.stat.descriptive.DescriptiveStatistics;
import org.apache.commons.math3.stat.inference.KolmogorovSmirnovTest;
import org.junit.jupiter.api.Test;

/** Every nuisance is drawn, and from the tolerance that is stated for it. */
class ReadingDrawTest {
  private static final long SEED = 99;
  private static final int CASES = 300;

  /** With fixed seeds this either always holds or never: no more than a fluke is kept out. */
  private static final double LEAST_P_VALUE = 0.001;

  /** Below this the missing sign of the display shows. */
  private static final double NEAR_ZERO_VOLTS = 1;

  private static final double EXACT = 1e-9;
  private static final Assumptions ASSUMPTIONS = Assumptions.defaults();

  private static List<PracticeCase> cases(String population) {
    Practice practice = new Practice(Population.named(population).orElseThrow(), ASSUMPTIONS, SEED);
    return LongStream.range(0, CASES).mapToObj(practice::caseOf).toList();
  }

  private static List<Parameter> parameters(PracticeCase each) {
    return Parameters.of(each.circuit(), each.survey(), ASSUMPTIONS).all();
  }

  private static void assertNormal(String what, List<Double> values) {
    double[] array = values.stream().mapToDouble(Double::doubleValue).toArray();
    double p =
        new KolmogorovSmirnovTest()
            .kolmogorovSmirnovTest(new NormalDistribution(null, 0, 1), array);
    assertTrue(p > LEAST_P_VALUE, what + ", p " + p + ", seed " + SEED);
  }

  @Test
  void everyKindOfParameterIsDrawnFromAStandardNormalDistribution() {
    Map<String, List<Double>> drawn = new LinkedHashMap<>();
    for (PracticeCase each : cases("loose")) {
      List<Parameter> parameters = parameters(each);
      assertEquals(parameters.size(), each.truth().point().size());
      for (int place = 0; place < parameters.size(); place++) {
        String kind = parameters.get(place).getClass().getSimpleName();
        drawn.computeIfAbsent(kind, k -> new ArrayList<>()).add(each.truth().point().get(place));
      }
    }
    assertEquals(9, drawn.size(), drawn.keySet().toString());
    drawn.forEach(ReadingDrawTest::assertNormal);
  }

  @Test
  void everyTestHasADriftOfItsOwn() {
    List<Double> scaled = new ArrayList<>();
    for (PracticeCase each : cases("loose")) {
      assertEquals(each.survey().tests().size(), each.truth().drifts().size());
      each.truth()
          .drifts()
          .forEach(drift -> scaled.add(drift / ASSUMPTIONS.value(Assumption.SUPPLY_DRIFT)));
    }
    assertNormal("drift", scaled);
  }

  @Test
  void whatIsLeftOfAReadingIsItsOwnErrorAndRounding() {
    DescriptiveStatistics left = new DescriptiveStatistics();
    double sigma = Double.NaN;
    for (PracticeCase each : cases("loose")) {
      Meter meter = each.survey().meters().get(0);
      sigma = Math.hypot(meter.readingSigma(), ASSUMPTIONS.value(Assumption.READING_SCATTER));
      residuals(each).forEach(left::addValue);
    }
    double count = left.getN();
    assertEquals(0, left.getMean(), 5 * sigma / Math.sqrt(count), "seed " + SEED);
    assertEquals(
        sigma, left.getStandardDeviation(), 5 * sigma / Math.sqrt(2 * count), "seed " + SEED);
  }

  @Test
  void readingsOfUnstableJointsFollowTheOhmsOfTheirTest() {
    DescriptiveStatistics left = new DescriptiveStatistics();
    cases("unstable").forEach(each -> residuals(each).forEach(left::addValue));
    // Two counts and rounding: nobody shows a volt more.
    assertTrue(left.getMax() < 1 && left.getMin() > -1, left.toString());
  }

  /** Read less what the true state gives, volts. */
  private static List<Double> residuals(PracticeCase each) {
    Truth truth = each.truth();
    double[] point = truth.point().stream().mapToDouble(Double::doubleValue).toArray();
    Predictor predictor = new Predictor(each.circuit(), each.survey(), ASSUMPTIONS);
    List<Double> loaded = predictor.readings(truth.degraded(), point);
    List<Double> idle = predictor.readings(truth.degradedIdle(), point);
    List<Double> residuals = new ArrayList<>();
    int place = 0;
    for (int t = 0; t < each.survey().tests().size(); t++) {
      ohmtrail.survey.Test test = each.survey().tests().get(t);
      for (Reading reading : test.readings()) {
        List<Double> exact = test.loads().isEmpty() ? idle : loaded;
        double volts = exact.get(place) * (1 + truth.drifts().get(t));
        if (volts > NEAR_ZERO_VOLTS) {
          residuals.add(reading.value() - volts);
        }
        place++;
      }
    }
    return residuals;
  }

  @Test
  void displaysShowWholeTenthsOfAVolt() {
    for (PracticeCase each : cases("charred")) {
      for (ohmtrail.survey.Test test : each.survey().tests()) {
        for (Reading reading : test.readings()) {
          assertEquals(Math.rint(reading.value() * 10) / 10, reading.value());
        }
      }
    }
  }

  @Test
  void oneCableIsHalfOrTwiceAsLongAsStated() {
    for (PracticeCase each : cases("wrong-length")) {
      long off =
          factors(each, Parameter.CableLength.class).stream()
              .filter(f -> Math.abs(f - 2) < EXACT || Math.abs(f - 0.5) < EXACT)
              .count();
      assertEquals(1, off);
    }
  }

  @Test
  void theHeaterDrawsAFifthLessThanItsNameplate() {
    for (PracticeCase each : cases("weak-heater")) {
      assertEquals(0.8, factors(each, Parameter.LoadRating.class).get(0), EXACT);
    }
  }

  @Test
  void oneMeterIsOffByThreeTimesItsLimit() {
    for (PracticeCase each : cases("meter-out")) {
      long off =
          factors(each, Parameter.MeterGain.class).stream()
              .filter(f -> Math.abs(Math.abs(f - 1) - 0.015) < EXACT)
              .count();
      assertEquals(1, off);
    }
  }

  private static List<Double> factors(PracticeCase each, Class<? extends Parameter> kind) {
    List<Parameter> parameters = parameters(each);
    List<Double> factors = new ArrayList<>();
    for (int place = 0; place < parameters.size(); place++) {
      if (kind.isInstance(parameters.get(place))) {
        factors.add(parameters.get(place).factor(each.truth().point().get(place)));
      }
    }
    return factors;
  }
}
