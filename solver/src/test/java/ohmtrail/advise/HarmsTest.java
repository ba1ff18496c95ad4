package ohmtrail.advise;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import ohmtrail.advise.safety.CableCheck;
import ohmtrail.advise.safety.Harm;
import ohmtrail.advise.safety.HeatCheck;
import ohmtrail.advise.safety.LostNeutralCheck;
import ohmtrail.advise.safety.OverloadCheck;
import ohmtrail.advise.safety.OvervoltageCheck;
import ohmtrail.advise.safety.SafetyCheck;
import ohmtrail.advise.safety.TouchVoltageCheck;
import ohmtrail.circuit.Box;
import ohmtrail.circuit.Cable;
import ohmtrail.circuit.Circuit;
import ohmtrail.circuit.ConductorRole;
import ohmtrail.circuit.JointKind;
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

    assertRuledOutByItAlone(new TouchVoltageCheck(), circuit, survey, lost);
  }

  /** 120 V behind 3 kohm give 36 mA into a hand of next to nothing: ten times what is allowed. */
  @Test
  void aLowImpedanceMeterIsKeptFromAGroundInDoubt() {
    Circuit circuit = Runs.chain(3);
    Degradation lost = new Degradation("box-1/ground/outgoing", OPEN);
    Survey survey = Runs.filled(circuit, read(List.of(Meter.lowImpedance("main"))), lost);

    assertRuledOutByItAlone(new TouchVoltageCheck(), circuit, survey, lost);
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

    assertRuledOutByItAlone(new HeatCheck(), circuit, survey, hot);
  }

  @Test
  void aLoadAboveTheBreakerIsRuledOut() {
    Circuit circuit = Runs.chain(3);
    Survey survey = Runs.filled(circuit, Runs.survey(2400, Runs.idle("box-1")));

    assertRuledOutByItAlone(
        new OverloadCheck(), circuit, survey, new Degradation("panel/hot/outgoing", 0));
  }

  /** 127 V on 120 (ANSI C84.1 range B, from memory); 253 V on 230 (IEC 60038). */
  @Test
  void aLostNeutralOfTwoLegsIsNotLoaded() {
    Circuit circuit = Runs.sharedNeutral();
    Survey survey = Runs.survey(Runs.HEATER_WATTS);

    assertEquals(127, new OvervoltageCheck().limit(circuit, Runs.USUAL), 1e-9);
    assertEquals(253, new OvervoltageCheck().limit(ring(), Runs.USUAL), 1e-9);
    assertRuledOutByItAlone(
        new OvervoltageCheck(), circuit, survey, new Degradation("panel/neutral/outgoing", OPEN));
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

    assertRuledOutByItAlone(
        new CableCheck(), circuit, survey, new Degradation(outgoing(circuit), OPEN));
  }

  /**
   * A low-impedance meter that collapses: hot or neutral is open, and no load goes in to try it.
   */
  @Test
  void noLoadIsPluggedInToTryALostNeutral() {
    Circuit circuit = Runs.chain(3);
    Survey blank = Runs.survey(Runs.HEATER_WATTS, lowAt("box-1"), lowAt("box-3"));
    Survey survey = Runs.filled(circuit, blank, new Degradation("box-2/neutral/outgoing", OPEN));
    Advice advice =
        new Advisor(circuit, Runs.USUAL, Minutes.defaults()).next(survey, Situation.START);

    assertTrue(
        advice.options().stream()
            .map(Option::choice)
            .filter(Choice.Read.class::isInstance)
            .map(Choice.Read.class::cast)
            .allMatch(read -> !read.box().equals("box-3") || read.loads().isEmpty()),
        advice.options().toString());
    assertTrue(
        advice.ruledOut().stream()
            .flatMap(out -> out.hazards().stream())
            .anyMatch(hazard -> hazard.harm() == new LostNeutralCheck().harm()));
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
      SafetyCheck check, Circuit circuit, Survey survey, Degradation truth) {
    Set<Choice.Read> harmful = harmful(check.harm(), circuit, survey, truth);
    assertFalse(harmful.isEmpty(), "no visit does it");
    Set<Choice.Read> withIt = ruledOut(List.of(check), circuit, survey);
    Set<Choice.Read> without = ruledOut(List.of(), circuit, survey);

    assertTrue(withIt.containsAll(harmful), "left: " + harmful);
    assertTrue(without.isEmpty(), without.toString());
  }

  private static Set<Choice.Read> ruledOut(
      List<SafetyCheck> checks, Circuit circuit, Survey survey) {
    return new Advisor(circuit, Runs.USUAL, Minutes.defaults(), checks)
        .next(survey, Situation.START).ruledOut().stream()
            .map(RuledOut::choice)
            .collect(Collectors.toSet());
  }

  private static Set<Choice.Read> harmful(
      Harm harm, Circuit circuit, Survey survey, Degradation truth) {
    Timetable timetable = new Timetable(circuit, Minutes.defaults(), Runs.USUAL);
    double[] point = new Predictor(circuit, survey, Runs.USUAL).parameters().nominalPoint();
    return Visits.of(circuit, survey, Situation.START).stream()
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

  /** One ordinary meter, another one, and what it read of a ground that is in doubt. */
  private static Survey meters(Meter... others) {
    List<Meter> meters = new ArrayList<>(List.of(Meter.highImpedance("main")));
    meters.addAll(List.of(others));
    return read(meters);
  }

  private static Survey read(List<Meter> meters) {
    ohmtrail.survey.Test idle =
        new ohmtrail.survey.Test(
            "idle",
            List.of(),
            List.of(
                new Reading("box-3", ProbePoints.HOT_NEUTRAL, "main", 0),
                new Reading("box-3", ProbePoints.HOT_GROUND, "main", 0)));
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
