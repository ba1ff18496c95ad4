package ohmtrail.predict;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Assume;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import ohmtrail.circuit.Box;
import ohmtrail.circuit.Cable;
import ohmtrail.circuit.Circuit;
import ohmtrail.circuit.ConductorRole;
import ohmtrail.circuit.Joint;
import ohmtrail.circuit.JointRole;
import ohmtrail.circuit.Supply;
import ohmtrail.reference.Assumptions;
import ohmtrail.survey.LoadInUse;
import ohmtrail.survey.Meter;
import ohmtrail.survey.ProbePoints;
import ohmtrail.survey.Reading;
import ohmtrail.survey.Survey;
import ohmtrail.survey.Test;
import ohmtrail.survey.load.HeatingElement;
import ohmtrail.survey.load.Load;

/** What must hold of any circuit, whatever is wrong with it. */
class PredictorPropertyTest {

  /** Volts. The same arithmetic in another order. */
  private static final double ROUNDING = 1e-9;

  /** Volts. The leakage of a few cables, at right angles to the load's current. */
  private static final double LEAKAGE = 1e-5;

  /**
   * Volts. The same leakage turned into the load's phase by the ohms before it: half a milliampere
   * through an ohm of copper and supply, a hundred times less than a display shows.
   */
  private static final double TURNED_LEAKAGE = 5e-4;

  private static final int TRIES = 60;

  private static final Load HEATER = new HeatingElement("heater", 1500, 120);

  @Provide
  Arbitrary<DrawnCircuit> circuits() {
    return DrawnCircuit.of(8, 2);
  }

  @Provide
  Arbitrary<DrawnCircuit> trees() {
    return DrawnCircuit.of(8, 0);
  }

  @Provide
  Arbitrary<Double> ohms() {
    return Arbitraries.of(0.05, 0.5, 5.0, 500.0, 1e5, 1e8, Double.POSITIVE_INFINITY);
  }

  private static List<Double> predict(
      Circuit circuit, Survey survey, List<Degradation> degradations) {
    return new Predictor(circuit, survey, Assumptions.defaults()).readings(degradations);
  }

  private static Joint joint(Circuit circuit, int draw) {
    return circuit.joints().get(draw % circuit.joints().size());
  }

  @Property(tries = TRIES)
  void theOrderInWhichBoxesAndCablesAreNamedMattersToNoReading(
      @ForAll("trees") DrawnCircuit drawn,
      @ForAll @IntRange(max = 999) int jointDraw,
      @ForAll("ohms") double ohms,
      @ForAll long seed) {
    Circuit circuit = drawn.circuit();
    Random random = new Random(seed);
    List<Box> boxes = new ArrayList<>(drawn.boxes());
    List<Cable> cables = new ArrayList<>();
    for (Cable cable : drawn.cables()) {
      cables.add(random.nextBoolean() ? cable : reversed(cable));
    }
    Collections.shuffle(boxes, random);
    Collections.shuffle(cables, random);
    Circuit shuffled = new Circuit(Supply.NORTH_AMERICA_120, 15, boxes, cables);
    assertEquals(new LinkedHashSet<>(circuit.joints()), new LinkedHashSet<>(shuffled.joints()));
    List<Degradation> bad = List.of(new Degradation(joint(circuit, jointDraw).id(), ohms));
    List<Double> before = predict(circuit, drawn.survey(), bad);
    List<Double> after = predict(shuffled, drawn.survey(), bad);
    for (int r = 0; r < before.size(); r++) {
      assertEquals(before.get(r), after.get(r), ROUNDING, "reading " + r + ", seed " + seed);
    }
  }

  private static Cable reversed(Cable cable) {
    return new Cable(
        cable.to(),
        cable.from(),
        cable.lengthMetres(),
        cable.lengthTolerance(),
        cable.conductor(),
        cable.companion());
  }

  @Property(tries = TRIES)
  void theOrderOfTestsAndReadingsMattersToNoReading(
      @ForAll("circuits") DrawnCircuit drawn,
      @ForAll @IntRange(max = 999) int jointDraw,
      @ForAll("ohms") double ohms) {
    Circuit circuit = drawn.circuit();
    Survey survey = drawn.survey();
    List<Degradation> bad = List.of(new Degradation(joint(circuit, jointDraw).id(), ohms));
    List<Test> backwards = new ArrayList<>(survey.tests());
    Collections.reverse(backwards);
    Survey turned = new Survey(survey.meters(), survey.loads(), backwards);
    Map<String, Double> before = byReading(survey, predict(circuit, survey, bad));
    Map<String, Double> after = byReading(turned, predict(circuit, turned, bad));
    assertEquals(before.keySet(), after.keySet());
    before.forEach((name, volts) -> assertEquals(volts, after.get(name), ROUNDING, name));
  }

  private static Map<String, Double> byReading(Survey survey, List<Double> volts) {
    Map<String, Double> seen = new TreeMap<>();
    int r = 0;
    for (Test test : survey.tests()) {
      for (Reading reading : test.readings()) {
        seen.put(test.name() + " " + reading, volts.get(r++));
      }
    }
    return seen;
  }

  @Property(tries = TRIES)
  void moreOhmsInHotOrNeutralNeverRaiseTheVoltageOfALoad(
      @ForAll("circuits") DrawnCircuit drawn,
      @ForAll @IntRange(max = 999) int jointDraw,
      @ForAll @IntRange(max = 99) int loadDraw,
      @ForAll @DoubleRange(min = -2, max = 9) double decades,
      @ForAll @DoubleRange(min = 0.01, max = 3) double moreDecades) {
    Circuit circuit = drawn.circuit();
    List<String> plugs =
        circuit.boxes().stream().filter(Box::hasReceptacle).map(Box::name).toList();
    Assume.that(!plugs.isEmpty());
    Joint joint = joint(circuit, jointDraw);
    Assume.that(joint.conductor() != ConductorRole.GROUND);
    String plug = plugs.get(loadDraw % plugs.size());
    Survey survey = loadedAt(plug, plug);
    double some = predict(circuit, survey, at(joint, Math.pow(10, decades))).get(0);
    double more = predict(circuit, survey, at(joint, Math.pow(10, decades + moreDecades))).get(0);
    assertTrue(more <= some + TURNED_LEAKAGE, joint.id() + ": " + some + " V, then " + more + " V");
  }

  private static List<Degradation> at(Joint joint, double ohms) {
    return List.of(new Degradation(joint.id(), ohms));
  }

  private static Survey loadedAt(String loaded, String read) {
    return new Survey(
        List.of(Meter.highImpedance("meter")),
        List.of(HEATER),
        List.of(
            new Test(
                "loaded",
                List.of(new LoadInUse("heater", loaded)),
                List.of(new Reading(read, ProbePoints.HOT_NEUTRAL, "meter", 0)))));
  }

  @Property(tries = TRIES)
  void ohmsBeyondEveryLoadAndMeterChangeNothing(
      @ForAll("trees") DrawnCircuit drawn,
      @ForAll @IntRange(max = 999) int jointDraw,
      @ForAll @IntRange(max = 99) int loadDraw,
      @ForAll @IntRange(max = 99) int readDraw,
      @ForAll("ohms") double ohms) {
    Circuit circuit = drawn.circuit();
    List<String> plugs =
        circuit.boxes().stream().filter(Box::hasReceptacle).map(Box::name).toList();
    Assume.that(!plugs.isEmpty());
    String loaded = plugs.get(loadDraw % plugs.size());
    String read = plugs.get(readDraw % plugs.size());
    Joint joint = joint(circuit, jointDraw);
    Assume.that(!carries(circuit, joint, loaded) && !carries(circuit, joint, read));
    Survey survey = loadedAt(loaded, read);
    assertEquals(
        predict(circuit, survey, List.of()).get(0),
        predict(circuit, survey, at(joint, ohms)).get(0),
        TURNED_LEAKAGE,
        joint.id());
  }

  /** Whether a joint lies on the way from the supply to the contacts of a box. */
  private static boolean carries(Circuit circuit, Joint joint, String box) {
    return joint.role() == JointRole.SUPPLY
        || circuit.deviceJoints(box).contains(joint)
        || circuit.pathTo(box).stream()
            .flatMap(cable -> circuit.sections(cable).stream())
            .flatMap(section -> section.joints().stream())
            .anyMatch(joint::equals);
  }

  @Property(tries = TRIES)
  void noReadingExceedsTheSupply(
      @ForAll("circuits") DrawnCircuit drawn,
      @ForAll @IntRange(max = 999) int jointDraw,
      @ForAll("ohms") double ohms) {
    // Resistances and capacitances alone raise nothing.
    Circuit circuit = drawn.circuit();
    List<Double> volts = predict(circuit, drawn.survey(), at(joint(circuit, jointDraw), ohms));
    for (double value : volts) {
      assertTrue(value >= 0 && value <= 120 + LEAKAGE, value + " V");
    }
  }

  @Property(tries = TRIES)
  void readingsFollowTheSupplyInProportion(
      @ForAll("circuits") DrawnCircuit drawn,
      @ForAll @IntRange(max = 999) int jointDraw,
      @ForAll("ohms") double ohms) {
    Circuit at120 = drawn.circuit();
    Circuit at60 = new Circuit(new Supply(60, 60), 15, drawn.boxes(), drawn.cables());
    List<Degradation> bad = at(joint(at120, jointDraw), ohms);
    List<Double> whole = predict(at120, drawn.survey(), bad);
    List<Double> half = predict(at60, drawn.survey(), bad);
    for (int r = 0; r < whole.size(); r++) {
      assertEquals(whole.get(r), 2 * half.get(r), ROUNDING);
    }
  }

  @Property(tries = TRIES)
  void hotToGroundIsHotToNeutralAndNeutralToGroundUnderALoad(
      @ForAll("circuits") DrawnCircuit drawn, @ForAll @IntRange(max = 99) int loadDraw) {
    Circuit circuit = drawn.circuit();
    List<String> plugs =
        circuit.boxes().stream().filter(Box::hasReceptacle).map(Box::name).toList();
    Assume.that(!plugs.isEmpty());
    String plug = plugs.get(loadDraw % plugs.size());
    List<Reading> readings = new ArrayList<>();
    for (String box : Wires.names(circuit)) {
      for (ProbePoints pair : DrawnCircuit.PAIRS) {
        readings.add(new Reading(box, pair, Wires.IDEAL.name(), 0));
      }
    }
    Survey survey =
        new Survey(
            List.of(Wires.IDEAL),
            List.of(HEATER),
            List.of(new Test("loaded", List.of(new LoadInUse("heater", plug)), readings)));
    List<Double> volts = predict(circuit, survey, List.of());
    for (int box = 0; box < circuit.boxes().size(); box++) {
      double hotNeutral = volts.get(3 * box);
      double hotGround = volts.get(3 * box + 1);
      double neutralGround = volts.get(3 * box + 2);
      assertEquals(hotGround, hotNeutral + neutralGround, LEAKAGE, "box " + box);
    }
  }
}
