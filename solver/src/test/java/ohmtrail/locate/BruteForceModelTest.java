package ohmtrail.locate;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.Random;
import java.util.stream.LongStream;
import java.util.stream.Stream;
import ohmtrail.circuit.Box;
import ohmtrail.circuit.Cable;
import ohmtrail.circuit.Circuit;
import ohmtrail.circuit.JointKind;
import ohmtrail.circuit.Supply;
import ohmtrail.predict.Degradation;
import ohmtrail.predict.Predictor;
import ohmtrail.reference.Assumption;
import ohmtrail.reference.Assumptions;
import ohmtrail.reference.Conductor;
import ohmtrail.reference.ConductorMaterial;
import ohmtrail.reference.ConductorSize;
import ohmtrail.survey.LoadInUse;
import ohmtrail.survey.Meter;
import ohmtrail.survey.ProbePoints;
import ohmtrail.survey.Reading;
import ohmtrail.survey.Survey;
import ohmtrail.survey.load.HeatingElement;
import org.junit.jupiter.api.Test;

class BruteForceModelTest {
  private static final Assumptions ASSUMPTIONS = Assumptions.defaults();

  /** The capacitances and the meter draw some microamperes that the sum by hand leaves out. */
  private static final double BY_HAND_VOLTS = 1e-3;

  /** Two different solvers on conductances twelve decades apart. */
  private static final double SOLVERS_VOLTS = 1e-5;

  /** Central differences over 2e-3 of u, of readings that are good to a microvolt or so. */
  private static final double SLOPE_VOLTS = 5e-3;

  private static final double SLOPE_STEP = 1e-3;

  @Test
  void aHeaterBehindABadJointIsADividerByHand() {
    Conductor copper =
        new Conductor(ConductorSize.parse("14 AWG").orElseThrow(), ConductorMaterial.COPPER);
    Circuit circuit =
        new Circuit(
            Supply.NORTH_AMERICA_120,
            15,
            List.of(Box.panel("panel"), Box.feedThrough("hall", JointKind.SCREW)),
            List.of(Cable.of("panel", "hall", 10, copper)));
    Survey survey =
        new Survey(
            List.of(Meter.highImpedance("meter")),
            List.of(new HeatingElement("heater", 1440, 120)),
            List.of(
                new ohmtrail.survey.Test(
                    "heater on",
                    List.of(new LoadInUse("heater", "hall")),
                    List.of(
                        new Reading("hall", ProbePoints.HOT_NEUTRAL, "meter", 0),
                        new Reading("hall", ProbePoints.NEUTRAL_GROUND, "meter", 0)))));
    BruteForceModel model = new BruteForceModel(circuit, survey, ASSUMPTIONS);
    model.evaluate(new BruteForceFault("hall/hot/incoming", 2), new double[model.parameterCount()]);

    double conductor =
        10 * copper.ohmsPerMetre(ASSUMPTIONS.value(Assumption.CONDUCTOR_TEMPERATURE))
            + 3 * ASSUMPTIONS.value(Assumption.HEALTHY_JOINT_OHMS);
    double heater = 10;
    double amperes = 120 / (heater + 2 + 2 * conductor + ASSUMPTIONS.value(Assumption.SOURCE_OHMS));
    assertEquals(amperes * heater, model.volts[0], BY_HAND_VOLTS);
    assertEquals(amperes * conductor, model.volts[1], BY_HAND_VOLTS);
  }

  /** So many circuits without a switch, and as many with one. */
  private static List<RandomCase> drawn(int count) {
    return Stream.concat(
            LongStream.rangeClosed(1, count).mapToObj(seed -> RandomCase.of(seed, ASSUMPTIONS)),
            LongStream.rangeClosed(1, count)
                .mapToObj(seed -> RandomCase.switched(seed, ASSUMPTIONS)))
        .toList();
  }

  @Test
  void theSlopesAreThoseOfDifferences() {
    for (RandomCase drawn : drawn(20)) {
      BruteForceModel model = new BruteForceModel(drawn.circuit(), drawn.survey(), ASSUMPTIONS);
      Random random = new Random(drawn.seed());
      double[] u = random.doubles(model.parameterCount(), -1, 1).toArray();
      model.evaluate(drawn.fault(), u);
      double[][] slopes = new double[model.readingCount()][];
      for (int r = 0; r < slopes.length; r++) {
        slopes[r] = model.slopes[r].clone();
      }
      for (int k = 0; k < u.length; k++) {
        double[] above = shifted(model, drawn, u, k, SLOPE_STEP);
        double[] below = shifted(model, drawn, u, k, -SLOPE_STEP);
        for (int r = 0; r < slopes.length; r++) {
          assertEquals(
              (above[r] - below[r]) / (2 * SLOPE_STEP),
              slopes[r][k],
              SLOPE_VOLTS,
              "reading " + r + ", parameter " + k + ", " + drawn.description());
        }
      }
    }
  }

  private static double[] shifted(
      BruteForceModel model, RandomCase drawn, double[] u, int k, double by) {
    double[] moved = u.clone();
    moved[k] += by;
    model.evaluate(drawn.fault(), moved);
    return model.volts.clone();
  }

  @Test
  void theLibraryPredictsTheSameReadingsWithAFaultBeforeThePanel() {
    for (long seed = 1; seed <= 20; seed++) {
      RandomCase drawn = RandomCase.of(seed, ASSUMPTIONS);
      String joint =
          drawn.circuit().panel().name() + (seed % 2 == 0 ? "/hot/supply" : "/neutral/supply");
      double ohms =
          seed % 5 == 0 ? Double.POSITIVE_INFINITY : Math.pow(10, (double) (seed % 7 - 2));
      BruteForceModel model = new BruteForceModel(drawn.circuit(), drawn.survey(), ASSUMPTIONS);
      model.evaluate(new BruteForceFault(joint, ohms), new double[model.parameterCount()]);
      List<Double> predicted =
          new Predictor(drawn.circuit(), drawn.survey(), ASSUMPTIONS)
              .readings(List.of(new Degradation(joint, ohms)));
      for (int r = 0; r < predicted.size(); r++) {
        assertEquals(
            predicted.get(r),
            model.volts[r],
            SOLVERS_VOLTS,
            "reading " + r + ", " + ohms + " ohm at " + joint + ", " + drawn.description());
      }
    }
  }

  /** The library's star-mesh network and this one, written apart, show the same volts. */
  @Test
  void theLibraryPredictsTheSameReadings() {
    for (RandomCase drawn : drawn(50)) {
      BruteForceModel model = new BruteForceModel(drawn.circuit(), drawn.survey(), ASSUMPTIONS);
      model.evaluate(drawn.fault(), new double[model.parameterCount()]);
      BruteForceFault fault = drawn.fault();
      List<Degradation> degradations =
          fault.joint().isEmpty()
              ? List.of()
              : List.of(new Degradation(fault.joint(), fault.ohms()));
      List<Double> predicted =
          new Predictor(drawn.circuit(), drawn.survey(), ASSUMPTIONS).readings(degradations);
      for (int r = 0; r < predicted.size(); r++) {
        assertEquals(
            predicted.get(r),
            model.volts[r],
            SOLVERS_VOLTS,
            "reading " + r + ", " + drawn.description());
      }
    }
  }
}
