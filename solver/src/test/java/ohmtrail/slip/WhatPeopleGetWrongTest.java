package ohmtrail.slip;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.stream.Stream;
import ohmtrail.circuit.Box;
import ohmtrail.circuit.Cable;
import ohmtrail.circuit.Circuit;
import ohmtrail.circuit.JointKind;
import ohmtrail.circuit.Supply;
import ohmtrail.locate.Diagnosis;
import ohmtrail.locate.SlipBelief;
import ohmtrail.locate.Suspect;
import ohmtrail.practice.Population;
import ohmtrail.practice.Practice;
import ohmtrail.practice.PracticeCase;
import ohmtrail.predict.Degradation;
import ohmtrail.problem.Problem;
import ohmtrail.problem.Slip;
import ohmtrail.reference.Assumption;
import ohmtrail.reference.Assumptions;
import ohmtrail.reference.Conductor;
import ohmtrail.reference.ConductorMaterial;
import ohmtrail.reference.ConductorSize;
import ohmtrail.survey.Finding;
import ohmtrail.survey.LoadInUse;
import ohmtrail.survey.Meter;
import ohmtrail.survey.ProbePoints;
import ohmtrail.survey.Reading;
import ohmtrail.survey.Survey;
import ohmtrail.survey.Test;
import ohmtrail.survey.load.HeatingElement;
import ohmtrail.survey.load.Load;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Runs that are not as they are written down. The readings are drawn from the run as it is, or are
 * Ohm's law by hand; what is asked is what an electrician would want to hear.
 */
class WhatPeopleGetWrongTest {
  private static final long SEED = 1303;
  private static final double METRES = 6;
  private static final double HEATER_WATTS = 1500;
  private static final double HALF = 0.5;
  private static final double SURE = 0.9;
  private static final Assumptions ASSUMPTIONS = Assumptions.defaults();
  private static final Conductor COPPER =
      new Conductor(ConductorSize.parse("14 AWG").orElseThrow(), ConductorMaterial.COPPER);
  private static final Load HEATER = new HeatingElement("heater", HEATER_WATTS, 120);

  private static Circuit run(List<String> order) {
    List<Box> boxes = new ArrayList<>(List.of(Box.panel("panel")));
    List<Cable> cables = new ArrayList<>();
    for (String name : order) {
      cables.add(Cable.of(boxes.get(boxes.size() - 1).name(), name, METRES, COPPER));
      boxes.add(Box.feedThrough(name, JointKind.SCREW));
    }
    return new Circuit(Supply.NORTH_AMERICA_120, 15, boxes, cables);
  }

  /** Each box with nothing on, then with the heater there. */
  private static Survey survey(List<String> visited) {
    List<Test> tests = new ArrayList<>();
    for (String box : visited) {
      List<Reading> blank = List.of(new Reading(box, ProbePoints.HOT_NEUTRAL, "meter", 0));
      tests.add(new Test("idle at " + box, List.of(), blank));
      tests.add(new Test("heater at " + box, List.of(new LoadInUse("heater", box)), blank));
    }
    Meter meter =
        new Meter(
            "meter",
            Meter.HIGH_IMPEDANCE_OHMS,
            Meter.USUAL_INPUT_FARADS,
            Meter.USUAL_ACCURACY,
            Meter.USUAL_RESOLUTION);
    return new Survey(List.of(meter), List.of(HEATER), tests);
  }

  private static List<Double> drawn(Circuit circuit, Survey survey, Degradation... bad) {
    return PracticeCase.staged(circuit, survey, List.of(bad), ASSUMPTIONS, SEED)
        .survey()
        .tests()
        .stream()
        .flatMap(test -> test.readings().stream().map(Reading::value))
        .toList();
  }

  private static Diagnosis locate(Circuit circuit, Survey blank, List<Double> volts) {
    List<Test> tests = new ArrayList<>();
    int place = 0;
    for (Test test : blank.tests()) {
      List<Reading> read = new ArrayList<>();
      for (Reading reading : test.readings()) {
        read.add(reading.showing(Math.rint(volts.get(place++) * 10) / 10));
      }
      tests.add(test.withReadings(read));
    }
    return new AveragedLocator().locate(new Problem(circuit, blank.withTests(tests), ASSUMPTIONS));
  }

  private static Survey changed(Survey survey, Predicate<Test> which, List<LoadInUse> loads) {
    return survey.withTests(
        survey.tests().stream()
            .map(test -> which.test(test) ? test.withLoads(loads) : test)
            .toList());
  }

  private static List<Double> stepped(List<Double> volts, int from, double share) {
    List<Double> after = new ArrayList<>(volts);
    for (int place = from; place < volts.size(); place++) {
      after.set(place, share * volts.get(place));
    }
    return after;
  }

  private static List<Double> with(List<Double> volts, int place, double value) {
    List<Double> changed = new ArrayList<>(volts);
    changed.set(place, value);
    return changed;
  }

  private static void assertSaid(String kind, Diagnosis answer) {
    assertEquals(
        Optional.of(kind), answer.likelySlip().map(SlipBelief::slip).map(Slip::kind), said(answer));
  }

  private static void assertNothingIsBlamed(Diagnosis answer) {
    assertTrue(
        answer.suspects().stream().allMatch(suspect -> suspect.probability() < SURE), said(answer));
  }

  private static void assertFirst(String box, Diagnosis answer) {
    Suspect first = answer.suspects().get(0);
    assertTrue(
        first.joints().stream().anyMatch(joint -> joint.box().equals(box))
            && first.probability() > HALF,
        said(answer));
  }

  private static String said(Diagnosis answer) {
    return "sound "
        + answer.healthyProbability()
        + ", "
        + answer.slips()
        + ", "
        + answer.suspects().stream()
            .limit(2)
            .map(each -> each.first().id() + " " + each.probability())
            .toList()
        + ", seed "
        + SEED;
  }

  private static List<String> boxes(int count) {
    return Stream.of("hall", "sofa", "desk", "bed", "porch", "attic", "shed").limit(count).toList();
  }

  @ParameterizedTest
  @ValueSource(ints = {4, 5, 7})
  void aHeaterThatNeverDrewIsSaidFirstAndNoJointIsBlamed(int count) {
    Circuit circuit = run(boxes(count));
    Survey stated = survey(boxes(count));

    Diagnosis answer =
        locate(circuit, stated, drawn(circuit, changed(stated, test -> true, List.of())));

    assertSaid("load-did-not-draw", answer);
    assertNothingIsBlamed(answer);
  }

  @org.junit.jupiter.api.Test
  void aHeaterOnItsLowSettingIsSaidAndNoTwoJointsAreBlamed() {
    Circuit circuit = run(boxes(6));
    Survey stated = survey(boxes(6));
    Survey low = stated.withLoads(List.of(new HeatingElement("heater", HALF * HEATER_WATTS, 120)));

    Diagnosis answer = locate(circuit, stated, drawn(circuit, low));

    assertSaid("load-drew-less", answer);
    assertNothingIsBlamed(answer);
    assertTrue(answer.severalProbability() < 1 - SURE, said(answer));
  }

  @org.junit.jupiter.api.Test
  void whereEverythingReadsNothingTheBreakerIsLookedAtAndNoBoxOpened() {
    Survey stated = survey(boxes(5));
    Diagnosis answer =
        locate(run(boxes(5)), stated, Collections.nCopies(stated.readingCount(), 0.0));

    assertSaid("no-supply", answer);
    assertNothingIsBlamed(answer);
  }

  @org.junit.jupiter.api.Test
  void aStepOfTheSupplyHidesNoJoint() {
    Circuit circuit = run(boxes(6));
    Survey stated = survey(boxes(6));
    List<Double> volts = drawn(circuit, stated, new Degradation("desk/neutral/incoming", 4.8));

    Diagnosis answer = locate(circuit, stated, stepped(volts, 6, 0.97));

    assertSaid("supply-moved", answer);
    assertFirst("desk", answer);
  }

  @org.junit.jupiter.api.Test
  void aStepOfTheSupplyOnASoundRunIsNoJoint() {
    Circuit circuit = run(boxes(6));
    Survey stated = survey(boxes(6));

    Diagnosis answer = locate(circuit, stated, stepped(drawn(circuit, stated), 5, 0.97));

    assertSaid("supply-moved", answer);
    assertNothingIsBlamed(answer);
  }

  @org.junit.jupiter.api.Test
  void twoNeighboursInEachOthersPlaceAreOneJointAndNotTwo() {
    Circuit wired = run(List.of("hall", "desk", "sofa", "bed", "porch"));
    Survey visited = survey(boxes(5));
    List<Double> volts = drawn(wired, visited, new Degradation("sofa/hot/incoming", 6.5));

    Diagnosis answer = locate(run(boxes(5)), visited, volts);

    assertSaid("boxes-exchanged", answer);
    assertFirst("sofa", answer);
    assertEquals(1, answer.degradedJoints(), said(answer));
  }

  @org.junit.jupiter.api.Test
  void aBoxThatIsElsewhereInTheRunIsOneJointAndNotTwo() {
    Circuit wired = run(List.of("hall", "porch", "sofa", "desk", "bed", "attic"));
    Survey visited = survey(boxes(6));
    List<Double> volts = drawn(wired, visited, new Degradation("sofa/hot/incoming", 8));

    Diagnosis answer = locate(run(boxes(6)), visited, volts);

    assertSaid("box-elsewhere", answer);
    assertFirst("sofa", answer);
  }

  /** Ten volts less, one digit another one, on a sound run. */
  @org.junit.jupiter.api.Test
  void oneDigitThatIsMistypedOnASoundRunBlamesNoJointWithoutAWord() {
    Circuit circuit = run(boxes(5));
    Survey stated = survey(boxes(5));
    List<Double> volts = drawn(circuit, stated);
    int last = volts.size() - 1;

    Diagnosis answer = locate(circuit, stated, with(volts, last, volts.get(last) - 10));

    boolean isDoubted =
        answer.support().hangsOnOneReading()
            || answer.readings().get(last).wrongProbability() > HALF;
    assertTrue(isDoubted || answer.healthyProbability() > HALF, said(answer));
  }

  @org.junit.jupiter.api.Test
  void aReadingWithTwoDigitsExchangedIsSaidAsWhatWasMeant() {
    Circuit circuit = run(boxes(6));
    Survey stated = survey(boxes(6));
    List<Double> volts =
        with(drawn(circuit, stated, new Degradation("bed/hot/incoming", 3)), 4, 118.2);

    Diagnosis answer = locate(circuit, stated, with(volts, 4, 181.2));

    Slip instead = answer.instead(4).orElseThrow().slip();
    assertTrue(answer.readings().get(4).wrongProbability() > HALF, said(answer));
    assertEquals(new Slip.ReadingMistyped(4, 118.2), instead, said(answer));
  }

  /** Drawn: beyond a bad joint, with the heater on, the meter was held to the box before. */
  @org.junit.jupiter.api.Test
  void aReadingTakenAtTheBoxBeforeIsSaidToReadAsThatWould() {
    PracticeCase drawn =
        new Practice(Population.named("reading-elsewhere").orElseThrow(), ASSUMPTIONS, 20271)
            .caseOf(4);
    int wrong = drawn.truth().wrongReadings().keySet().iterator().next();

    Diagnosis answer = new AveragedLocator().locate(drawn.problem());

    assertTrue(answer.readings().get(wrong).wrongProbability() > HALF, said(answer));
    assertEquals("reading-elsewhere", answer.instead(wrong).orElseThrow().slip().kind());
  }

  @org.junit.jupiter.api.Test
  void twoSlipsAtOnceAreBothSaidWhereNeitherAloneExplainsTheReadings() {
    Circuit circuit = run(boxes(7));
    Survey stated = survey(boxes(7));
    Survey off = changed(stated, test -> test.name().equals("heater at desk"), List.of());
    List<Double> volts = drawn(circuit, off, new Degradation("sofa/hot/incoming", 5));

    Diagnosis answer = locate(circuit, stated, stepped(volts, 8, 0.965));

    List<String> said =
        answer.slips().stream()
            .filter(each -> each.ofItsKind() > HALF)
            .map(each -> each.slip().kind())
            .toList();
    assertTrue(said.containsAll(List.of("load-did-not-draw", "supply-moved")), said(answer));
    assertFirst("sofa", answer);
  }

  @org.junit.jupiter.api.Test
  void aLoadThatNobodyListedIsSaidAndTheJointFound() {
    Circuit circuit = run(boxes(6));
    Survey stated = survey(List.of("hall", "bed", "sofa", "attic", "desk", "porch"));
    Load fridge = new HeatingElement("fridge", 400, 120);
    List<Test> tests = new ArrayList<>();
    for (Test test : stated.tests()) {
      List<LoadInUse> on = new ArrayList<>(test.loads());
      on.add(new LoadInUse("fridge", "attic"));
      tests.add(test.withLoads(on));
    }
    Survey real = stated.withLoads(List.of(HEATER, fridge)).withTests(tests);

    Diagnosis answer =
        locate(circuit, stated, drawn(circuit, real, new Degradation("desk/neutral/incoming", 3)));

    assertSaid("unlisted-load", answer);
    assertFirst("desk", answer);
  }

  /**
   * By hand: 5 A of the other leg come back through the neutral from the last box, so that with 2
   * ohm in it at desk every box from there on stands 10 V too high with nothing on; a heater of 9.6
   * ohm divides that with 2 ohm, 0.1 ohm of the supply and 0.1 ohm for each cable.
   */
  @org.junit.jupiter.api.Test
  void aCurrentOfAnotherCircuitInTheNeutralIsSaidAndTheJointFound() {
    List<Double> volts = new ArrayList<>();
    List<String> visited = List.of("hall", "bed", "sofa", "attic", "desk", "porch");
    for (String name : visited) {
      int box = boxes(6).indexOf(name) + 1;
      double bad = box < 3 ? 0 : 2;
      double idle = 120 + 5 * (bad + 0.05 * box);
      volts.add(idle);
      volts.add(idle * 9.6 / (9.6 + bad + 0.1 + 0.1 * box));
    }

    Diagnosis answer = locate(run(boxes(6)), survey(visited), volts);

    assertSaid("shared-neutral", answer);
    assertFirst("desk", answer);
  }

  @org.junit.jupiter.api.Test
  void onceAJointWasMadeAnewAnotherIsAsLikelyAsAFurtherOneIs() {
    Circuit circuit = run(boxes(5));
    Survey remade =
        survey(boxes(5)).withTests(List.of()).with(new Finding("desk", Finding.State.REMADE));

    Diagnosis answer = new AveragedLocator().locate(new Problem(circuit, remade, ASSUMPTIONS));

    double further = ASSUMPTIONS.value(Assumption.FURTHER_FAULT);
    assertEquals(1 - further, answer.healthyProbability(), further / 4, said(answer));
  }
}
