package ohmtrail.advise;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import ohmtrail.advise.safety.Harm;
import ohmtrail.advise.safety.HeatCheck;
import ohmtrail.advise.safety.OvervoltageCheck;
import ohmtrail.advise.safety.TouchVoltageCheck;
import ohmtrail.circuit.Box;
import ohmtrail.circuit.Cable;
import ohmtrail.circuit.Circuit;
import ohmtrail.circuit.ConductorRole;
import ohmtrail.circuit.JointKind;
import ohmtrail.circuit.ResidualCurrentDevice;
import ohmtrail.circuit.Supply;
import ohmtrail.predict.Degradation;
import ohmtrail.predict.Predictor;
import ohmtrail.reference.Assumption;
import ohmtrail.reference.Conductor;
import ohmtrail.reference.ConductorMaterial;
import ohmtrail.reference.ConductorSize;
import ohmtrail.reference.Minutes;
import ohmtrail.survey.Measurand;
import ohmtrail.survey.Meter;
import ohmtrail.survey.ProbePoints;
import ohmtrail.survey.Reading;
import ohmtrail.survey.Survey;
import ohmtrail.survey.load.HeatingElement;
import org.junit.jupiter.api.Test;

/**
 * Each harm on a case where a test does it under the truth: its check alone rules every such visit
 * out, and without the check nothing does.
 */
class HarmsTest {
  private static final double OPEN = Double.POSITIVE_INFINITY;

  /** From hot to an open ground a loop tester puts every case beyond it at line voltage. */
  @Test
  void aLoopTesterIsKeptFromAGroundInDoubt() {
    Circuit circuit = Runs.chain(3);
    Degradation lost = new Degradation("box-1/ground/outgoing", OPEN);
    Survey survey =
        Runs.filled(circuit, meters(Meter.usual("loop", Measurand.LOOP_IMPEDANCE)), lost);

    assertRuledOutByItAlone(Harm.TOUCH, circuit, survey, lost);
  }

  /** 120 V behind 3 kohm give 36 mA into a hand of next to nothing: ten times what is allowed. */
  @Test
  void aLowImpedanceMeterIsKeptFromAGroundInDoubt() {
    Circuit circuit = Runs.chain(3);
    Degradation lost = new Degradation("box-1/ground/outgoing", OPEN);
    Survey survey = Runs.filled(circuit, read(List.of(Meter.lowImpedance("main"))), lost);

    assertRuledOutByItAlone(Harm.TOUCH, circuit, survey, lost);
  }

  @Test
  void inWetSurroundingsHalfTheVoltageIsAllowed() {
    Circuit dry = Runs.chain(2);
    assertEquals(50, new TouchVoltageCheck().limit(dry, Runs.USUAL));
    assertEquals(25, new TouchVoltageCheck().limit(dry.inWetSurroundings(), Runs.USUAL));
  }

  /** What a meter of 10 Mohm or a cable's capacitance holds up falls away under a hand. */
  @Test
  void aHighImpedanceMeterMayBeHeldToAGroundInDoubt() {
    Circuit circuit = Runs.chain(3);
    Degradation lost = new Degradation("box-1/ground/outgoing", OPEN);
    Survey survey = Runs.filled(circuit, meters(), lost);

    Advice advice =
        new Advisor(circuit, Runs.USUAL, Minutes.defaults()).next(survey, Situation.START);

    assertTrue(
        advice.ruledOut().stream().allMatch(out -> !out.choice().loads().isEmpty()),
        advice.ruledOut().toString());
  }

  @Test
  void aHeaterLeftOnBehindAHotJointIsRuledOut() {
    Circuit circuit = Runs.chain(3);
    Degradation hot = new Degradation("box-2/neutral/outgoing", 1);
    Survey survey =
        Runs.filled(
            circuit,
            Runs.survey(Runs.HEATER_WATTS, Runs.idle("box-3"), Runs.heater("box-3", "box-3")),
            hot);

    assertRuledOutByItAlone(Harm.HEAT, circuit, survey, hot);
  }

  @Test
  void aLoadAboveTheBreakerIsRuledOut() {
    Circuit circuit = Runs.chain(3);
    Survey survey = Runs.filled(circuit, Runs.survey(2400, Runs.idle("box-1")));

    assertRuledOutByItAlone(
        Harm.OVERLOAD, circuit, survey, new Degradation("panel/hot/outgoing", 0));
  }

  /** 127 V on 120 (ANSI C84.1 range B, from memory); 253 V on 230 (IEC 60038). */
  @Test
  void aLostNeutralOfTwoLegsIsNotLoaded() {
    Circuit circuit = Runs.sharedNeutral();
    Survey survey = Runs.survey(Runs.HEATER_WATTS);

    assertEquals(127, new OvervoltageCheck().limit(circuit, Runs.USUAL), 1e-9);
    assertEquals(253, new OvervoltageCheck().limit(ring(), Runs.USUAL), 1e-9);
    assertRuledOutByItAlone(
        Harm.OVERVOLTAGE, circuit, survey, new Degradation("panel/neutral/outgoing", OPEN));
  }

  /** 28 A on 2.5 mm2, which carries 23 A; on 32 A no breaker would mind. */
  @Test
  void oneLegOfAnOpenRingIsNotLoadedBeyondItsCable() {
    Circuit circuit = ring();
    Survey survey =
        new Survey(
            List.of(Meter.highImpedance("main")),
            List.of(new HeatingElement("water heater", 6500, 230)),
            List.of());

    assertRuledOutByItAlone(Harm.CABLE, circuit, survey, new Degradation(outgoing(circuit), OPEN));
  }

  /**
   * A low-impedance meter that collapses: hot or neutral is open, and no load goes in to try it.
   */
  @Test
  void noLoadIsPluggedInToTryALostNeutral() {
    Circuit circuit = Runs.chain(3);
    Survey blank = Runs.survey(Runs.HEATER_WATTS, lowAt("box-1"), lowAt("box-3"));
    Survey survey = Runs.filled(circuit, blank, new Degradation("box-2/neutral/outgoing", OPEN));
    Set<Choice.Read> beyond =
        visits(circuit, survey)
            .filter(visit -> visit.loads().stream().anyMatch(use -> use.box().equals("box-3")))
            .collect(Collectors.toSet());

    assertRuledOutByItAlone(Harm.NEUTRAL, circuit, survey, beyond);
  }

  /**
   * 120 V through 3 kohm to ground are 40 mA, and a GFCI of class A trips at 6 mA at the latest (UL
   * 943).
   */
  @Test
  void aMeterThatTripsAGfciIsKeptFromGround() {
    Circuit chain = Runs.chain(2);
    Circuit circuit =
        new Circuit(
            chain.supply(),
            chain.breakerAmperes(),
            chain.boxes(),
            chain.cables(),
            List.of(new ResidualCurrentDevice("panel", ResidualCurrentDevice.Rating.CLASS_A)));
    Survey survey = Runs.filled(circuit, read(List.of(Meter.lowImpedance("main")), "box-1"));
    Set<Choice.Read> toGround =
        visits(circuit, survey)
            .filter(
                visit ->
                    visit.readings().stream()
                        .flatMap(reading -> reading.between().stream())
                        .anyMatch(ProbePoints.HOT_GROUND::equals))
            .collect(Collectors.toSet());

    assertRuledOutByItAlone(Harm.TRIP, circuit, survey, toGround);
  }

  /** 10 g of brass, 380 J/(kg K): 3.8 J/K, less a little for what it gives off. */
  @Test
  void tenGramsOfBrassRiseByAKelvinForLessThanFourJoules() {
    double rise = HeatCheck.rise(380, 0.5, Runs.USUAL);
    assertEquals(190 / 3.8, rise, 0.005 * rise);
    assertEquals(0, HeatCheck.rise(0, 5, Runs.USUAL));
    double steady = HeatCheck.rise(5, 3600, Runs.USUAL);
    assertEquals(5 / Runs.USUAL.value(Assumption.TERMINAL_COOLING), steady, 1e-6);
  }

  private static void assertRuledOutByItAlone(
      Harm harm, Circuit circuit, Survey survey, Degradation truth) {
    assertRuledOutByItAlone(harm, circuit, survey, harmful(harm, circuit, survey, truth));
  }

  private static void assertRuledOutByItAlone(
      Harm harm, Circuit circuit, Survey survey, Set<Choice.Read> harmful) {
    assertFalse(harmful.isEmpty(), "no visit does it");
    Set<Choice.Read> withIt = ruledOut(Set.of(harm), circuit, survey);
    Set<Choice.Read> without = ruledOut(Set.of(), circuit, survey);

    assertTrue(withIt.containsAll(harmful), "left: " + harmful);
    assertTrue(without.isEmpty(), without.toString());
  }

  private static Set<Choice.Read> ruledOut(Set<Harm> minded, Circuit circuit, Survey survey) {
    return new Advisor(circuit, Runs.USUAL, Minutes.defaults(), minded)
        .next(survey, Situation.START).ruledOut().stream()
            .map(RuledOut::choice)
            .collect(Collectors.toSet());
  }

  private static Set<Choice.Read> harmful(
      Harm harm, Circuit circuit, Survey survey, Degradation truth) {
    Timetable timetable = new Timetable(circuit, Minutes.defaults(), Runs.USUAL);
    double[] point = new Predictor(circuit, survey, Runs.USUAL).parameters().nominalPoint();
    return visits(circuit, survey)
        .filter(
            visit ->
                visit.tests().stream()
                    .flatMap(
                        test ->
                            TrueHarm.of(
                                circuit,
                                survey,
                                Runs.USUAL,
                                point,
                                List.of(truth),
                                timetable,
                                visit,
                                test)
                                .stream())
                    .anyMatch(looked -> looked.harm() == harm && looked.isDone()))
        .collect(Collectors.toSet());
  }

  private static Stream<Choice.Read> visits(Circuit circuit, Survey survey) {
    return Visits.of(circuit, survey, survey, Situation.START).stream();
  }

  /** One ordinary meter, another one, and what it read of a ground that is in doubt. */
  private static Survey meters(Meter... others) {
    List<Meter> meters = new ArrayList<>(List.of(Meter.highImpedance("main")));
    meters.addAll(List.of(others));
    return read(meters);
  }

  private static Survey read(List<Meter> meters) {
    return read(meters, "box-3");
  }

  private static Survey read(List<Meter> meters, String box) {
    ohmtrail.survey.Test idle =
        new ohmtrail.survey.Test(
            "idle",
            List.of(),
            List.of(
                new Reading(box, ProbePoints.HOT_NEUTRAL, "main", 0),
                new Reading(box, ProbePoints.HOT_GROUND, "main", 0)));
    return new Survey(meters, List.of(), List.of(idle));
  }

  private static ohmtrail.survey.Test lowAt(String box) {
    return new ohmtrail.survey.Test(
        "low at " + box, List.of(), List.of(new Reading(box, ProbePoints.HOT_NEUTRAL, "low", 0)));
  }

  private static String outgoing(Circuit ring) {
    return ring.sections().stream()
        .filter(section -> section.conductor() == ConductorRole.HOT)
        .filter(section -> section.cable().to().equals("first"))
        .map(section -> section.near().id())
        .findFirst()
        .orElseThrow();
  }

  private static Circuit ring() {
    Conductor copper =
        new Conductor(ConductorSize.parse("2.5 mm2").orElseThrow(), ConductorMaterial.COPPER);
    return new Circuit(
        Supply.IEC_230,
        32,
        List.of(
            Box.panel("panel"),
            Box.feedThrough("first", JointKind.SCREW),
            Box.feedThrough("second", JointKind.SCREW),
            Box.feedThrough("third", JointKind.SCREW)),
        List.of(
            Cable.of("panel", "first", 8, copper),
            Cable.of("first", "second", 8, copper),
            Cable.of("second", "third", 8, copper),
            Cable.of("panel", "third", 8, copper)));
  }
}
