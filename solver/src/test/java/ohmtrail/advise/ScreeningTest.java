package ohmtrail.advise;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.stream.Collectors;
import ohmtrail.advise.safety.Harm;
import ohmtrail.advise.safety.Hazard;
import ohmtrail.advise.safety.HeatCheck;
import ohmtrail.circuit.Circuit;
import ohmtrail.circuit.ConductorRole;
import ohmtrail.circuit.ResidualCurrentDevice;
import ohmtrail.predict.Degradation;
import ohmtrail.predict.Predictor;
import ohmtrail.predict.Solved;
import ohmtrail.reference.Assumption;
import ohmtrail.reference.Minutes;
import ohmtrail.survey.Finding;
import ohmtrail.survey.LoadInUse;
import ohmtrail.survey.Measurand;
import ohmtrail.survey.Meter;
import ohmtrail.survey.ProbePoints;
import ohmtrail.survey.Reading;
import ohmtrail.survey.Survey;
import ohmtrail.survey.Tap;
import org.junit.jupiter.api.Test;

/** Each reason to rule a visit out, on a case where the network shows that it would do harm. */
class ScreeningTest {
  /** Of a prediction made with everything as stated beside one at the fitted point. */
  private static final double FITTED = 0.05;

  private final Circuit circuit = Runs.chain(3);

  @Test
  void aLoadAboveTheBreakersRatingIsRuledOut() {
    Survey survey = Runs.filled(circuit, Runs.survey(2400, Runs.idle("box-1")));
    Hazard hazard = hazard(survey, "box-1", Harm.OVERLOAD);

    double amperes =
        Solved.amperes(
            circuit, survey, Runs.USUAL, test("box-1"), new Degradation("panel/hot/outgoing", 0));

    assertTrue(amperes > circuit.breakerAmperes(), "it draws " + amperes + " A");
    assertEquals(circuit.breakerAmperes(), hazard.limit());
    assertEquals(amperes, hazard.worst(), FITTED * amperes);
  }

  /** The readings speak of some 3 ohm: a heater left on while one walks cooks the joint. */
  @Test
  void aHeaterLeftOnBehindAHotJointIsRuledOut() {
    Degradation joint = new Degradation("box-2/neutral/outgoing", 3);
    Survey survey =
        Runs.filled(
            circuit,
            Runs.survey(Runs.HEATER_WATTS, Runs.idle("box-3"), Runs.heater("box-3", "box-3")),
            joint);
    Advice advice = advise(survey);
    RuledOut left =
        advice.ruledOut().stream()
            .filter(out -> out.choice().box().equals("box-1"))
            .filter(out -> out.choice().loads().get(0).box().equals("box-3"))
            .findFirst()
            .orElseThrow();
    Hazard hazard =
        left.hazards().stream().filter(each -> each.harm() == Harm.HEAT).findFirst().orElseThrow();

    double amperes = Solved.amperes(circuit, survey, Runs.USUAL, test("box-3"), joint);
    double seconds =
        new Timetable(circuit, Minutes.defaults(), Runs.USUAL)
            .loadedSeconds(left.choice(), left.choice().tests().get(0), survey);

    assertTrue(
        HeatCheck.rise(amperes * amperes * joint.ohms(), seconds, Runs.USUAL) > hazard.limit(),
        "it makes " + amperes * amperes * joint.ohms() + " W for " + seconds + " s");
    assertTrue(hazard.probability() > Runs.USUAL.value(Assumption.BELIEVABLE_HARM));
  }

  /** Beside its own plug the heater is on for seconds only: that much the joint can take. */
  @Test
  void aShortReadingAtTheHeaterItselfIsNot() {
    Degradation joint = new Degradation("box-2/neutral/outgoing", 3);
    Survey survey =
        Runs.filled(
            circuit,
            Runs.survey(Runs.HEATER_WATTS, Runs.idle("box-3"), Runs.heater("box-3", "box-3")),
            joint);
    assertTrue(
        advise(survey).options().stream()
            .map(Option::choice)
            .filter(Choice.Read.class::isInstance)
            .map(Choice.Read.class::cast)
            .anyMatch(read -> !read.loads().isEmpty()));
  }

  /** A low-impedance meter from hot to ground takes 40 mA past the device: it trips. */
  @Test
  void aReadingThatTripsAResidualCurrentDeviceIsRuledOut() {
    assertKeptFromGround(Meter.lowImpedance("low"));
  }

  /** What a loop tester sends out by the hot comes back by the ground. */
  @Test
  void theLoopToGroundBehindAGfciIsRuledOut() {
    assertKeptFromGround(Meter.usual("loop", Measurand.LOOP_IMPEDANCE));
  }

  private static void assertKeptFromGround(Meter meter) {
    Circuit plain = Runs.chain(2);
    Circuit guarded =
        new Circuit(
            plain.supply(),
            plain.breakerAmperes(),
            plain.boxes(),
            plain.cables(),
            List.of(new ResidualCurrentDevice("panel", ResidualCurrentDevice.Rating.CLASS_A)));
    Survey atHand = new Survey(List.of(meter), List.of(), List.of());
    Tap hotGround = new Tap.Pair("box-1", ProbePoints.HOT_GROUND);
    ohmtrail.survey.Test toGround =
        new ohmtrail.survey.Test(
            "to ground",
            List.of(),
            List.of(new Reading(hotGround, meter.measurand(), meter.name(), 0, 0)));
    Predictor predictor = new Predictor(guarded, atHand.withTests(List.of(toGround)), Runs.USUAL);
    double amperes =
        predictor
            .residualCurrents(List.of(), predictor.parameters().nominalPoint())
            .get(0)
            .amperes();
    assertTrue(amperes > 0.006, "it sees " + amperes + " A");

    Advice advice =
        new Advisor(guarded, Runs.USUAL, Minutes.defaults()).next(atHand, Situation.START);

    assertTrue(
        advice.ruledOut().stream()
            .flatMap(out -> out.hazards().stream())
            .anyMatch(hazard -> hazard.harm() == Harm.TRIP));
    List<Reading> advised =
        advice.options().stream()
            .map(Option::choice)
            .filter(Choice.Read.class::isInstance)
            .flatMap(read -> ((Choice.Read) read).readings().stream())
            .toList();
    assertTrue(advised.size() > 0, "hot to neutral is left");
    assertTrue(
        advised.stream()
            .map(Reading::tap)
            .map(tap -> ((Tap.Pair) tap).between())
            .noneMatch(ProbePoints.HOT_GROUND::equals));
  }

  /** 136 V stand everywhere: nothing more is plugged in, and the utility is called. */
  @Test
  void noLoadIsPluggedInWhereTheSupplyStandsTooHigh() {
    Survey survey = atSupply(136);
    assertTrue(
        advise(survey).options().stream()
            .map(Option::choice)
            .filter(Choice.Read.class::isInstance)
            .allMatch(read -> ((Choice.Read) read).loads().isEmpty()));
    assertTrue(
        advise(survey).options().stream()
            .anyMatch(
                option ->
                    option.choice().equals(new Choice.Stop(Choice.Stop.Reason.CALL_UTILITY))));
  }

  /**
   * Before any reading a lost neutral of two legs is in question: a heater on one leg would put the
   * receptacle of the other far above its voltage.
   */
  @Test
  void aHeavyLoadOnOneLegOfASuspectedLostNeutralIsRuledOut() {
    Circuit shared = Runs.sharedNeutral();
    Survey survey = Runs.survey(Runs.HEATER_WATTS);
    Advice advice =
        new Advisor(shared, Runs.USUAL, Minutes.defaults()).next(survey, Situation.START);

    double volts =
        Solved.asStated(
                shared,
                survey.withTests(List.of(test("one"))),
                Runs.USUAL,
                List.of(new Degradation("panel/neutral/outgoing", 40)))
            .profile(test("one"))
            .points()
            .stream()
            .filter(point -> point.box().equals("two"))
            .findFirst()
            .flatMap(
                point ->
                    point
                        .volts(new ProbePoints(ConductorRole.LEG_2, ConductorRole.NEUTRAL))
                        .stream()
                        .boxed()
                        .findFirst())
            .orElseThrow();

    assertTrue(volts > 127, "the other receptacle gets " + volts + " V");
    assertTrue(
        advice.ruledOut().stream()
            .filter(out -> out.choice().loads().get(0).box().equals("one"))
            .flatMap(out -> out.hazards().stream())
            .anyMatch(hazard -> hazard.harm() == Harm.OVERVOLTAGE));
    assertTrue(
        advice.options().stream()
            .map(Option::choice)
            .filter(Choice.Read.class::isInstance)
            .allMatch(read -> ((Choice.Read) read).loads().isEmpty()));
  }

  /** Once the utility has found nothing, the search goes on in the run. */
  @Test
  void theUtilityIsCalledOnce() {
    Advice after =
        new Advisor(circuit, Runs.USUAL, Minutes.defaults())
            .next(
                atSupply(136).with(new Finding(Finding.SUPPLY, Finding.State.FINE)),
                Situation.START);
    assertTrue(
        after.options().stream()
            .noneMatch(
                option ->
                    option.choice().equals(new Choice.Stop(Choice.Stop.Reason.CALL_UTILITY))));
  }

  private static Survey atSupply(double volts) {
    Survey blank =
        Runs.survey(Runs.HEATER_WATTS, Runs.idle("box-1"), Runs.idle("box-2"), Runs.idle("box-3"));
    return new Survey(
        blank.meters(),
        blank.loads(),
        blank.tests().stream()
            .map(
                test ->
                    new ohmtrail.survey.Test(
                        test.name(),
                        test.loads(),
                        test.readings().stream().map(reading -> reading.showing(volts)).toList()))
            .toList());
  }

  private Hazard hazard(Survey survey, String heaterAt, Harm harm) {
    List<RuledOut> there =
        advise(survey).ruledOut().stream()
            .filter(out -> out.choice().loads().get(0).box().equals(heaterAt))
            .toList();
    assertTrue(!there.isEmpty(), "nothing was ruled out at " + heaterAt);
    return there.get(0).hazards().stream()
        .filter(hazard -> hazard.harm() == harm)
        .collect(Collectors.toList())
        .get(0);
  }

  private Advice advise(Survey survey) {
    return new Advisor(circuit, Runs.USUAL, Minutes.defaults()).next(survey, Situation.START);
  }

  private static ohmtrail.survey.Test test(String heaterAt) {
    return new ohmtrail.survey.Test("on", List.of(new LoadInUse("heater", heaterAt)), List.of());
  }
}
