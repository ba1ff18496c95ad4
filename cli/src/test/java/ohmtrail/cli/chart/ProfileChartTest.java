package ohmtrail.cli.chart;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import ohmtrail.cli.chart.ProfileChart.Branch;
import ohmtrail.cli.chart.ProfileChart.Condition;
import ohmtrail.cli.chart.ProfileChart.Guide;
import ohmtrail.cli.chart.ProfileChart.Line;
import ohmtrail.cli.chart.ProfileChart.Mark;
import ohmtrail.cli.chart.ProfileChart.Panel;
import ohmtrail.cli.chart.ProfileChart.Point;
import ohmtrail.cli.chart.ProfileChart.Prominence;
import ohmtrail.cli.chart.ProfileChart.ReadingMark;
import ohmtrail.cli.chart.ProfileChart.Readings;
import ohmtrail.cli.render.words.Figures;
import ohmtrail.cli.render.words.Region;
import ohmtrail.locate.Diagnosis;
import ohmtrail.locate.FittedReading;
import ohmtrail.locate.Probabilities;
import ohmtrail.locate.Verdict;
import ohmtrail.predict.SolvedSurvey;
import ohmtrail.predict.VoltageProfile;
import ohmtrail.problem.Problem;
import ohmtrail.report.Report;
import ohmtrail.survey.LoadInUse;
import ohmtrail.survey.Meter;
import ohmtrail.survey.Reading;
import ohmtrail.survey.Survey;
import org.junit.jupiter.api.Test;

class ProfileChartTest {
  /** The readings of these tests are rounded to a tenth of a volt. */
  private static final double ROUNDING_VOLTS = 0.05 + 1e-9;

  /**
   * The diagnosis lets the supply of each test drift; the line of all tests has one supply. Three
   * times the usual drift of 0.3 % of 120 V.
   */
  private static final double DRIFT_VOLTS = 3 * 0.36;

  /** Two ways of computing the same sum of doubles. */
  private static final double ARITHMETIC = 1e-9;

  /** Ten megohms across a circuit of some ohms move nothing that can be seen. */
  private static final double METER_VOLTS = 1e-3;

  private static InventedRun chain() {
    return InventedRun.northAmerican().chain(6, 5).degraded("hall-4/neutral/incoming", 2);
  }

  private static Panel over(ProfileChart chart) {
    return chart.panels().get(0);
  }

  private static Line line(Panel panel, Prominence prominence, Condition condition) {
    return panel.lines().stream()
        .filter(line -> line.prominence() == prominence && line.condition() == condition)
        .findFirst()
        .orElseThrow();
  }

  private static double volts(Line line, String box) {
    return line.branches().stream()
        .flatMap(branch -> branch.points().stream())
        .filter(point -> point.box().equals(box))
        .mapToDouble(Point::volts)
        .findFirst()
        .orElseThrow();
  }

  @Test
  void aCarriedHeaterIsDrawnAtEveryReceptacleWithItPluggedInThere() {
    InventedRun run = chain();
    ProfileChart chart = run.carry(InventedRun.HEATER, List.of("hall-2", "hall-5")).predicted("x");
    Line predicted = line(over(chart), Prominence.MAIN, Condition.EXPLAINED);
    List<String> boxes = predicted.branches().get(0).points().stream().map(Point::box).toList();
    assertEquals(run.receptacles(), boxes);
    for (String box : boxes) {
      ohmtrail.survey.Test pluggedIn =
          new ohmtrail.survey.Test("x", List.of(new LoadInUse("heater", box)), List.of());
      VoltageProfile profile =
          SolvedSurvey.asStated(
                  new Problem(
                      run.circuit(), run.survey().withTests(List.of(pluggedIn)), run.assumptions()),
                  List.copyOf(run.degradations()))
              .profile(pluggedIn);
      double expected =
          profile.points().stream()
              .filter(point -> point.box().equals(box))
              .findFirst()
              .orElseThrow()
              .volts(ohmtrail.survey.ProbePoints.HOT_NEUTRAL)
              .orElseThrow();
      assertEquals(expected, volts(predicted, box), METER_VOLTS, box);
    }
  }

  @Test
  void readingsOfTheDegradedCircuitLieOnItsPredictedLineAndNotOnTheHealthyOne() {
    ProfileChart chart =
        chain().carry(InventedRun.HEATER, List.of("hall-2", "hall-5")).predicted("x");
    Line predicted = line(over(chart), Prominence.MAIN, Condition.EXPLAINED);
    Line healthy = line(over(chart), Prominence.MAIN, Condition.HEALTHY);
    for (ReadingMark mark : over(chart).readings().get(0).marks()) {
      assertEquals(volts(predicted, mark.box()), mark.volts(), ROUNDING_VOLTS, mark.box());
    }
    double drop = volts(healthy, "hall-5") - volts(predicted, "hall-5");
    assertTrue(drop > 15, "2 ohm under a 1500 W heater drop (" + drop + " V)");
  }

  @Test
  void aLoadAtAFixedBoxIsDrawnAlongTheWholeRunFromThePanel() {
    ProfileChart chart =
        chain()
            .read(
                "far end",
                List.of(new LoadInUse(InventedRun.HEATER, "hall-6")),
                InventedRun.DMM,
                List.of("hall-1", "hall-6"))
            .predicted("x");
    List<Point> points =
        line(over(chart), Prominence.MAIN, Condition.HEALTHY).branches().get(0).points();
    assertEquals("panel", points.get(0).box());
    assertEquals(7, points.size());
    assertEquals(30, points.get(6).metres(), ARITHMETIC);
  }

  @Test
  void aLineShowsWhatALowImpedanceMeterMakesOfAHighResistance() {
    InventedRun run =
        InventedRun.northAmerican().chain(3, 5).degraded("hall-2/hot/outgoing", 30_000);
    ProfileChart chart = run.idle(InventedRun.LOW_IMPEDANCE, run.receptacles()).predicted("x");
    double behind = volts(line(over(chart), Prominence.MAIN, Condition.EXPLAINED), "hall-3");
    double divider = 120 * Meter.LOW_IMPEDANCE_OHMS / (Meter.LOW_IMPEDANCE_OHMS + 30_000);
    assertEquals(divider, behind, 0.05, "a divider of 3 and 30 kohm, cable capacitance aside");
  }

  @Test
  void theFittedLineGoesThroughWhatTheDiagnosisSaysOfEachReading() {
    InventedRun run =
        chain().carry(InventedRun.HEATER, List.of("hall-1", "hall-3", "hall-4", "hall-6"));
    Report report = Report.of(run.problem());
    ProfileChart chart = ProfileChart.of("x", report);
    Line fitted = line(over(chart), Prominence.MAIN, Condition.EXPLAINED);
    for (FittedReading reading : report.diagnosis().readings()) {
      if (reading
          .reading()
          .between()
          .equals(java.util.Optional.of(ohmtrail.survey.ProbePoints.HOT_NEUTRAL))) {
        String box = reading.reading().box();
        assertEquals(reading.fitted(), volts(fitted, box), ARITHMETIC, box);
      }
    }
    assertEquals("fitted", fitted.word());
    assertTrue(
        chart
            .subtitle()
            .startsWith("Best explanation: 2 ohm added, the neutral between hall-3 and hall-4"));
  }

  /** 2 ohm at hall-4 take R I of what is read beyond: I is what the heater draws there. */
  @Test
  void aKnownJointIsAStepAtItsBox() {
    ProfileChart chart =
        chain().carry(InventedRun.HEATER, List.of("hall-2", "hall-5")).predicted("x");
    Line predicted = line(over(chart), Prominence.MAIN, Condition.EXPLAINED);
    ProfileChart.Step step = predicted.branches().get(0).steps().get(0);
    assertEquals("hall-4", step.toBox());
    assertEquals(ProfileChart.End.FAR, step.end());
    double amperes = volts(predicted, "hall-4") / (120 * 120 / 1500.0);
    assertEquals(2 * amperes, step.volts(), 0.001 * step.volts());
    assertTrue(chart.notes().stream().noneMatch(note -> note.startsWith("Band")));
  }

  @Test
  void aJointThatMayBeAtEitherEndIsABandBetweenBoth() {
    ProfileChart chart =
        chain()
            .carry(InventedRun.HEATER, List.of("hall-1", "hall-3", "hall-4", "hall-6"))
            .diagnosed("x");
    Line fitted = line(over(chart), Prominence.MAIN, Condition.EXPLAINED);
    ProfileChart.Step step = fitted.branches().get(0).steps().get(0);
    assertEquals(ProfileChart.End.EITHER, step.end());
    assertEquals("hall-4", step.toBox());
    assertTrue(chart.notes().stream().anyMatch(note -> note.startsWith("Band: the joint may lie")));
  }

  @Test
  void theMostProbableBoxesAreMarkedWithTheirProbability() {
    ProfileChart chart =
        chain()
            .carry(InventedRun.HEATER, List.of("hall-1", "hall-3", "hall-4", "hall-6"))
            .diagnosed("x");
    Mark first = chart.marks().get(0);
    assertEquals(15, first.fromMetres(), ARITHMETIC);
    assertEquals(20, first.toMetres(), ARITHMETIC);
    assertTrue(first.boxes().contains("hall-4"), first.boxes().toString());
    assertTrue(first.label().matches(">?\\d+ % in hall-\\d or hall-\\d"), first.label());
  }

  /** One loaded reading at the far end: the names of every box before it fit nowhere. */
  @Test
  void boxesThatAreTooManyToNameAreCounted() {
    Mark first = chain().carry(InventedRun.HEATER, List.of("hall-6")).diagnosed("x").marks().get(0);
    assertTrue(first.boxes().size() > 3, first.boxes().toString());
    assertTrue(
        first.label().endsWith(" in any of " + first.boxes().size() + " boxes"), first.label());
  }

  @Test
  void theHealthyLineOfADiagnosisPartsFromTheFittedOneAtTheBadJoint() {
    InventedRun run = chain().carry(InventedRun.HEATER, chain().receptacles());
    Survey survey = run.survey();
    List<ohmtrail.survey.Test> lower =
        survey.tests().stream().map(ProfileChartTest::lowered).toList();
    Survey lowered = new Survey(survey.meters(), survey.loads(), lower);
    Diagnosis diagnosis =
        new ohmtrail.locate.Locator()
            .locate(new Problem(run.circuit(), lowered, run.assumptions()));
    ProfileChart chart =
        ProfileChart.of(
            "x", Report.of(new Problem(run.circuit(), lowered, run.assumptions()), diagnosis));
    Line fitted = line(over(chart), Prominence.MAIN, Condition.EXPLAINED);
    Line healthy = line(over(chart), Prominence.MAIN, Condition.HEALTHY);
    double asStated =
        volts(line(over(run.plain("x")), Prominence.MAIN, Condition.HEALTHY), "hall-2");
    assertTrue(asStated - volts(healthy, "hall-2") > 2, "the supply of these readings is low");
    assertEquals(volts(healthy, "hall-2"), volts(fitted, "hall-2"), DRIFT_VOLTS);
    assertTrue(volts(healthy, "hall-5") - volts(fitted, "hall-5") > 15);
  }

  /** The same test on a supply that is 4 % lower: everything in it is proportional. */
  private static ohmtrail.survey.Test lowered(ohmtrail.survey.Test test) {
    List<Reading> readings =
        test.readings().stream()
            .map(reading -> InventedRun.withVolts(reading, 0.96 * reading.value()))
            .toList();
    return new ohmtrail.survey.Test(test.name(), test.loads(), readings);
  }

  @Test
  void aHealthyRunHasOneLineAndNoMarks() {
    InventedRun run = InventedRun.northAmerican().chain(5, 5);
    ProfileChart chart = run.carry(InventedRun.HEATER, run.receptacles()).diagnosed("x");
    assertEquals(List.of(), chart.marks());
    assertEquals("Best explanation: a sound circuit", chart.subtitle());
    assertEquals(
        List.of(Condition.HEALTHY), over(chart).lines().stream().map(Line::condition).toList());
  }

  @Test
  void readingsThatNothingExplainsAreCalledSo() {
    InventedRun run = chain().carry(InventedRun.HEATER, List.of("hall-1", "hall-4"));
    Diagnosis fitting = run.diagnosis();
    Diagnosis unexplained =
        new Diagnosis(
            Verdict.UNEXPLAINED,
            new Probabilities(0.1, 0.8, 0, 0),
            fitting.boxes(),
            fitting.suspects(),
            fitting.fit(),
            fitting.assumptions());
    ProfileChart chart = ProfileChart.of("x", Report.of(run.problem(), unexplained));
    assertTrue(chart.subtitle().contains("not to be relied on"), chart.subtitle());
    assertEquals(List.of(), chart.marks());
    assertEquals("closest fit", line(over(chart), Prominence.MAIN, Condition.EXPLAINED).word());
  }

  @Test
  void aReadingCarriesItsProbabilityOfBeingWrong() {
    InventedRun run = chain().idle(InventedRun.DMM, List.of("hall-1"));
    run.carry(InventedRun.HEATER, run.receptacles());
    int heaterAtSecondBoxNeutralToGround = 5;
    ProfileChart chart = run.of("x", run.doubting(heaterAtSecondBoxNeutralToGround));
    List<ReadingMark> doubtful =
        chart.panels().stream()
            .flatMap(panel -> panel.readings().stream())
            .flatMap(readings -> readings.marks().stream())
            .filter(PanelDrawing::isDoubtful)
            .toList();
    assertEquals(1, doubtful.size());
    assertEquals("heater at hall-2", doubtful.get(0).test());
    assertTrue(doubtful.get(0).volts() < 5, "neutral to ground, not hot to neutral");
  }

  @Test
  void theBarOfAReadingIsTheMetersAccuracyAndHalfAStepCutOffAtZero() {
    ProfileChart chart = chain().idle(InventedRun.DMM, List.of("hall-1")).plain("x");
    ReadingMark over = chart.panels().get(0).readings().get(0).marks().get(0);
    assertEquals(120, over.volts(), ROUNDING_VOLTS);
    assertEquals(0.01 * over.volts() + 3 * 0.1 + 0.05, over.above(), ARITHMETIC);
    assertEquals(over.above(), over.below(), ARITHMETIC);
    ReadingMark rise = chart.panels().get(1).readings().get(0).marks().get(0);
    assertEquals(0, rise.volts(), ARITHMETIC);
    assertEquals(0, rise.below(), ARITHMETIC);
    assertEquals(0.35, rise.above(), ARITHMETIC);
  }

  @Test
  void eachLaneOfABranchingRunHasItsOwnBranchThatStartsAtTheTee() {
    InventedRun run =
        InventedRun.northAmerican()
            .receptacle("a", "panel", 5)
            .receptacle("b", "a", 5)
            .receptacle("c", "b", 9)
            .receptacle("d", "a", 3);
    ProfileChart chart =
        run.read(
                "x",
                List.of(new LoadInUse(InventedRun.HEATER, "d")),
                InventedRun.DMM,
                List.of("c", "d"))
            .plain("x");
    List<Branch> branches = line(over(chart), Prominence.MAIN, Condition.HEALTHY).branches();
    assertEquals(
        List.of(List.of("panel", "a", "b", "c"), List.of("a", "d")),
        branches.stream()
            .map(branch -> branch.points().stream().map(Point::box).toList())
            .toList());
    assertEquals(8, branches.get(1).points().get(1).metres(), ARITHMETIC);
  }

  @Test
  void aCarriedLoadJoinsTheReceptaclesOnBothSidesOfAJunction() {
    InventedRun run =
        InventedRun.northAmerican()
            .receptacle("a", "panel", 5)
            .junction("attic", "a", 2)
            .receptacle("b", "attic", 9)
            .receptacle("c", "attic", 3);
    ProfileChart chart = run.carry(InventedRun.HEATER, run.receptacles()).plain("x");
    List<Branch> branches = line(over(chart), Prominence.MAIN, Condition.HEALTHY).branches();
    assertEquals(
        List.of(List.of("a", "b"), List.of("a", "c")),
        branches.stream()
            .map(branch -> branch.points().stream().map(Point::box).toList())
            .toList());
  }

  @Test
  void theHeavyLoadThatWasReadAtMostBoxesIsTheMainOne() {
    InventedRun run = chain();
    ProfileChart chart =
        run.idle(InventedRun.DMM, run.receptacles())
            .carry(InventedRun.HEATER, List.of("hall-1", "hall-4", "hall-6"))
            .read(
                "both",
                List.of(
                    new LoadInUse(InventedRun.HEATER, "hall-6"),
                    new LoadInUse(InventedRun.LAMP, "hall-5")),
                InventedRun.DMM,
                List.of("hall-1"))
            .predicted("x");
    assertEquals(
        "heater (1500 W) at the box read (3 tests)",
        line(over(chart), Prominence.MAIN, Condition.EXPLAINED).arrangement());
    assertEquals(
        "lamp (60 W) at hall-5 + heater (1500 W) at hall-6 (test \"both\")",
        line(over(chart), Prominence.SECOND, Condition.EXPLAINED).arrangement());
    assertEquals(
        "nothing on (test \"idle dmm\")",
        line(over(chart), Prominence.THIRD, Condition.EXPLAINED).arrangement());
  }

  @Test
  void aHeavyLoadAheadOfTheFaultYieldsToALighterOneBehindIt() {
    ProfileChart chart =
        InventedRun.northAmerican()
            .chain(6, 5)
            .degraded("hall-4/hot/incoming", 60)
            .read(
                "near",
                List.of(new LoadInUse(InventedRun.HEATER, "hall-1")),
                InventedRun.DMM,
                List.of("hall-1", "hall-2", "hall-3"))
            .read(
                "behind",
                List.of(new LoadInUse(InventedRun.LAMP, "hall-6")),
                InventedRun.DMM,
                List.of("hall-6"))
            .predicted("x");
    assertTrue(
        line(over(chart), Prominence.MAIN, Condition.EXPLAINED).arrangement().startsWith("lamp"));
  }

  @Test
  void noReadingIsLeftOutHoweverManyArrangementsThereAre() {
    InventedRun run = chain();
    for (String box : run.receptacles()) {
      run.read(
          "lamp near " + box,
          List.of(new LoadInUse(InventedRun.LAMP, box)),
          InventedRun.DMM,
          List.of("hall-2", "hall-5"));
    }
    ProfileChart chart = run.idle(InventedRun.DMM, run.receptacles()).plain("x");
    long drawn =
        chart.panels().stream()
            .flatMap(panel -> panel.readings().stream())
            .mapToLong(readings -> readings.marks().size())
            .sum();
    assertEquals(run.survey().readingCount(), drawn);
    Readings others = over(chart).readings().get(over(chart).readings().size() - 1);
    assertEquals("all other tests", others.arrangement());
  }

  @Test
  void withoutAnExplanationEveryArrangementHasItsHealthyLine() {
    InventedRun run = InventedRun.northAmerican().chain(3, 5);
    ProfileChart chart =
        run.carry(InventedRun.HEATER, run.receptacles())
            .idle(InventedRun.DMM, run.receptacles())
            .plain("x");
    assertEquals(
        List.of(Condition.HEALTHY, Condition.HEALTHY),
        over(chart).lines().stream().map(Line::condition).toList());
    assertEquals("What a sound circuit shows", chart.subtitle());
  }

  @Test
  void anEmptySurveyShowsTheIdleCircuit() {
    ProfileChart chart = InventedRun.northAmerican().chain(3, 5).plain("x");
    Line idle = line(over(chart), Prominence.MAIN, Condition.HEALTHY);
    assertEquals("nothing on", idle.arrangement());
    assertEquals(120, volts(idle, "hall-3"), METER_VOLTS);
    assertEquals(List.of(), over(chart).readings());
  }

  @Test
  void aPredictionWithNothingOnSaysWhyItShowsNothing() {
    ProfileChart chart = chain().predicted("x");
    assertTrue(
        chart.notes().stream().anyMatch(note -> note.startsWith("With nothing on")),
        chart.notes().toString());
    assertFalse(
        chain().plain("x").notes().stream().anyMatch(note -> note.startsWith("With nothing on")));
  }

  @Test
  void anOpenJointIsSaidToBeOpen() {
    ProfileChart chart =
        InventedRun.northAmerican()
            .chain(3, 5)
            .degraded("hall-2/hot/outgoing", Double.POSITIVE_INFINITY)
            .predicted("x");
    assertEquals("Predicted for fully open at the outgoing hot at hall-2", chart.subtitle());
    assertEquals("fully open", chart.marks().get(0).label());
    assertEquals(0, over(chart).lowVolts(), ARITHMETIC);
  }

  @Test
  void guidanceStandsThreeAndFivePerCentBelowNominal() {
    List<Guide> northAmerican = over(InventedRun.northAmerican().chain(1, 5).plain("x")).guides();
    assertEquals(
        116.4, northAmerican.get(0).volts(), ARITHMETIC, "NEC 210.19(A) informational note");
    assertEquals(114, northAmerican.get(1).volts(), ARITHMETIC, "NEC 210.19(A) informational note");
    List<Guide> international = over(InventedRun.international().chain(1, 5).plain("x")).guides();
    assertEquals(223.1, international.get(0).volts(), ARITHMETIC, "IEC 60364-5-52 Table G.52.1");
    assertEquals("5 % below nominal", international.get(1).label());
  }

  @Test
  void theScaleHoldsEverythingThatIsDrawnInIt() {
    InventedRun run = chain().carry(InventedRun.HEATER, chain().receptacles());
    for (Panel panel : run.predicted("x").panels()) {
      for (Line line : panel.lines()) {
        for (Branch branch : line.branches()) {
          for (Point point : branch.points()) {
            assertTrue(point.volts() >= panel.lowVolts() && point.volts() <= panel.highVolts());
          }
        }
      }
      for (ReadingMark mark : panel.readings().get(0).marks()) {
        assertTrue(mark.volts() - mark.below() >= panel.lowVolts());
        assertTrue(mark.volts() + mark.above() <= panel.highVolts());
      }
    }
  }

  @Test
  void aHotToGroundReadingIsCountedInANote() {
    InventedRun run = chain();
    Survey survey = run.blankSurvey();
    Reading reading =
        new Reading("hall-1", ohmtrail.survey.ProbePoints.HOT_GROUND, InventedRun.DMM, 119.9);
    Survey one =
        new Survey(
            survey.meters(),
            survey.loads(),
            List.of(new ohmtrail.survey.Test("idle", List.of(), List.of(reading))));
    ProfileChart chart =
        ProfileChart.of("x", new Problem(run.circuit(), one, run.assumptions()), List.of());
    assertTrue(
        chart.notes().contains("Not in the picture: 1 reading hot to ground."),
        chart.notes().toString());
  }

  @Test
  void theOtherRegionSaysLineAndProtectiveEarth() {
    ProfileChart chart =
        InventedRun.international().chain(2, 5).degraded("hall-1/hot/outgoing", 0.5).predicted("x");
    assertEquals("line to neutral", chart.panels().get(0).quantity());
    assertEquals("neutral to protective earth", chart.panels().get(1).quantity());
    assertEquals("Predicted for 0.5 ohm added at the outgoing line at hall-1", chart.subtitle());
    assertEquals(Region.IEC, chart.region());
  }

  @Test
  void theDescriptionHasTheFiguresOfEveryReading() {
    ProfileChart chart =
        chain().carry(InventedRun.HEATER, List.of("hall-2", "hall-5")).predicted("x");
    for (Panel panel : chart.panels()) {
      for (ReadingMark mark : panel.readings().get(0).marks()) {
        String figures = mark.box() + " " + Figures.volts(mark.volts()) + " (";
        assertTrue(chart.description().contains(figures), figures);
      }
    }
    assertTrue(chart.description().contains("98.4 ft to the farthest"), chart.description());
  }

  @Test
  void anUnknownJointIsRefusedByName() {
    InventedRun run = InventedRun.northAmerican().chain(2, 5).degraded("attic/hot/outgoing", 1);
    IllegalArgumentException refused =
        assertThrows(IllegalArgumentException.class, () -> run.predicted("x"));
    assertTrue(refused.getMessage().contains("(attic/hot/outgoing)"), refused.getMessage());
  }
}
