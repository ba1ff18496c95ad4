package ohmtrail.advise.stop;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import ohmtrail.advise.Advice;
import ohmtrail.advise.Advisor;
import ohmtrail.advise.Choice;
import ohmtrail.advise.Situation;
import ohmtrail.circuit.Box;
import ohmtrail.circuit.Cable;
import ohmtrail.circuit.Circuit;
import ohmtrail.circuit.ConductorRole;
import ohmtrail.circuit.JointKind;
import ohmtrail.circuit.Supply;
import ohmtrail.predict.Degradation;
import ohmtrail.predict.Predictor;
import ohmtrail.problem.Problem;
import ohmtrail.reference.Assumptions;
import ohmtrail.reference.Conductor;
import ohmtrail.reference.ConductorMaterial;
import ohmtrail.reference.ConductorSize;
import ohmtrail.reference.Minutes;
import ohmtrail.report.caution.SupplySide;
import ohmtrail.survey.Finding;
import ohmtrail.survey.LoadInUse;
import ohmtrail.survey.Meter;
import ohmtrail.survey.ProbePoints;
import ohmtrail.survey.Reading;
import ohmtrail.survey.Survey;
import ohmtrail.survey.load.HeatingElement;
import org.junit.jupiter.api.Test;

/**
 * Two legs that stand apart with nothing on are the supply's (common practice, no source): no
 * current flows in the run, and by Ohm's law no joint of it drops anything.
 */
class SupplySideFirstTest {
  private static final Conductor COPPER =
      new Conductor(ConductorSize.parse("12 AWG").orElseThrow(), ConductorMaterial.COPPER);
  private static final List<ConductorRole> BOTH =
      List.of(
          ConductorRole.LEG_1, ConductorRole.LEG_2, ConductorRole.NEUTRAL, ConductorRole.GROUND);
  private static final ProbePoints FIRST =
      new ProbePoints(ConductorRole.LEG_1, ConductorRole.NEUTRAL);
  private static final ProbePoints SECOND =
      new ProbePoints(ConductorRole.LEG_2, ConductorRole.NEUTRAL);
  private static final Choice CALL = new Choice.Stop(Choice.Stop.Reason.CALL_UTILITY);

  private static final Circuit BARN =
      new Circuit(
          Supply.NORTH_AMERICA_120_240,
          20,
          List.of(
              Box.panel("board"),
              Box.feedThrough("stall", JointKind.SCREW),
              Box.feedThrough("loft", JointKind.SCREW)),
          List.of(
              Cable.of("board", "stall", 15, COPPER).with(BOTH),
              Cable.of("stall", "loft", 8, COPPER).with(BOTH)));

  private static Problem read(String box, double first, double second, LoadInUse... loads) {
    Survey survey =
        new Survey(
            List.of(Meter.highImpedance("high"), Meter.lowImpedance("low")),
            List.of(new HeatingElement("kettle", 1200, 120)),
            List.of(
                new ohmtrail.survey.Test(
                    "read",
                    List.of(loads),
                    List.of(
                        new Reading(box, FIRST, "high", first),
                        new Reading(box, SECOND, "high", second)))));
    return new Problem(BARN, survey, Assumptions.defaults());
  }

  private static Advice advice(Problem problem) {
    return new Advisor(BARN, problem.assumptions(), Minutes.defaults())
        .next(problem.survey(), Situation.START);
  }

  @Test
  void legsApartAtThePanelWithNothingOnAreTheSupplysFirst() {
    Problem problem = read("board", 128.4, 112.9);

    assertEquals(15.5, SupplySide.unequalLegs(problem).orElseThrow().apartVolts(), 1e-9);
    assertEquals(CALL, advice(problem).best().choice());
  }

  @Test
  void noLoadIsAskedForWhileTheLegsStandApart() {
    advice(read("board", 128.4, 112.9)).options().stream()
        .map(option -> option.choice())
        .filter(Choice.Read.class::isInstance)
        .forEach(choice -> assertEquals(List.of(), ((Choice.Read) choice).loads()));
  }

  @Test
  void theSupplyIsOfferedOnce() {
    long calls =
        advice(read("board", 128.4, 112.9)).options().stream()
            .filter(option -> option.choice().equals(CALL))
            .count();

    assertEquals(1, calls);
  }

  @Test
  void whoHasLookedAtTheSupplyIsNotSentThereAgain() {
    Problem problem = read("board", 128.4, 112.9);
    Survey looked = problem.survey().with(new Finding(Finding.SUPPLY, Finding.State.FINE));

    assertTrue(SupplySide.unequalLegs(problem.withSurvey(looked)).isEmpty());
  }

  @Test
  void aDifferenceThatAHouseMakesIsNone() {
    assertTrue(SupplySide.unequalLegs(read("board", 121.4, 118.9)).isEmpty());
  }

  @Test
  void underALoadTheRunMayDoIt() {
    LoadInUse kettle = new LoadInUse("kettle", "loft", Optional.of(FIRST));

    assertTrue(SupplySide.unequalLegs(read("loft", 104.0, 133.0, kettle)).isEmpty());
  }

  /** Beyond an open neutral of the run the meters alone divide the voltage. */
  @Test
  void whatAnOpenNeutralOfTheRunShowsIsNotLaidToTheSupply() {
    Degradation open = new Degradation("stall/neutral/incoming", Double.POSITIVE_INFINITY);
    Problem blank = read("loft", 0, 0);
    List<Double> shown =
        new Predictor(BARN, blank.survey(), blank.assumptions()).readings(List.of(open));

    assertTrue(SupplySide.unequalLegs(read("loft", shown.get(0), shown.get(1))).isEmpty());
  }
}
