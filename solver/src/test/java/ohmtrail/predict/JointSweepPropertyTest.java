package ohmtrail.predict;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Example;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.IntRange;
import ohmtrail.circuit.Cable;
import ohmtrail.circuit.Circuit;
import ohmtrail.circuit.Joint;
import ohmtrail.circuit.Supply;
import ohmtrail.reference.Assumptions;
import ohmtrail.survey.Meter;
import ohmtrail.survey.ProbePoints;
import ohmtrail.survey.Reading;
import ohmtrail.survey.Survey;
import ohmtrail.survey.Test;
import ohmtrail.survey.load.FilamentLamp;
import ohmtrail.survey.load.HeatingElement;
import ohmtrail.survey.load.KnownCurrent;
import ohmtrail.survey.load.Load;
import ohmtrail.survey.load.NameplateCurrent;

/**
 * A sweep of ohms in one joint against the same ohms put there before anything is solved, and its
 * slopes against small steps, on random circuits with tees, rings, pigtails and junctions.
 */
class JointSweepPropertyTest {

  /** Of the reading, and of a volt where it shows next to nothing. */
  private static final double SAME = 1e-9;

  /**
   * Volts. Two open joints with a load between them leave an island of some picofarads, whose
   * admittance is a difference of currents a million times larger.
   */
  private static final double ISLAND = 1e-6;

  /**
   * Volts, amperes or ohms: an open way of a thousand gigohms is brought down to a range of ohms.
   */
  private static final double OTHERS = 1e-8;

  private static final int TRIES = 80;

  /** Every parameter is stepped both ways in each. */
  private static final int SLOPE_TRIES = 25;

  private static final Assumptions ASSUMPTIONS = Assumptions.defaults();

  /** Loads that have an operating point at every voltage: their readings have slopes everywhere. */
  private static final List<Load> FOLLOWING =
      List.of(
          new FilamentLamp("lamp", 100, 120),
          new KnownCurrent("clamped", 3, 120),
          new NameplateCurrent("plate", 5, 120),
          new HeatingElement("iron", 900, 120),
          new FilamentLamp("oven lamp", 15, 120));

  @Provide
  Arbitrary<DrawnCircuit> circuits() {
    return DrawnCircuit.of(7, 2);
  }

  @Provide
  Arbitrary<Double> ohms() {
    return Arbitraries.of(
        1e-3, 1e-2, 0.1, 0.5, 1.0, 3.0, 30.0, 1e3, 1e5, 1e7, 1e9, 1e12, Double.POSITIVE_INFINITY);
  }

  /** Everything that a sweep is made from. */
  private record Setting(Circuit circuit, Survey survey, Parameters parameters) {
    static Setting of(DrawnCircuit drawn) {
      Circuit circuit = drawn.circuit();
      Survey survey = drawn.survey();
      return new Setting(circuit, survey, Parameters.of(circuit, survey, ASSUMPTIONS));
    }

    /** On two legs; of opposite phase, or two of a star with an earth electrode. */
    static Setting twoLegs(DrawnCircuit drawn, boolean star) {
      Supply supply =
          star
              ? new Supply(120, 60, Supply.Legs.OF_A_STAR, Supply.Earthing.TT)
              : Supply.NORTH_AMERICA_120_240;
      Circuit circuit = drawn.twoLegs(supply);
      Survey survey = drawn.twoLegSurvey();
      return new Setting(circuit, survey, Parameters.of(circuit, survey, ASSUMPTIONS));
    }

    /** Readings of every quantity at every sort of tap, live and dead. */
    static Setting everyReading(DrawnCircuit drawn, int draw) {
      Circuit circuit = drawn.circuit();
      Survey survey = drawn.everyReading(draw);
      survey.requireFits(circuit);
      return new Setting(circuit, survey, Parameters.of(circuit, survey, ASSUMPTIONS));
    }

    /**
     * Voltages and currents of every sort with loads that follow their voltage: loop impedances,
     * whose slopes leave out that the loads shift, and what is read without loads are left out.
     */
    static Setting dependentAndEveryReading(DrawnCircuit drawn, int draw) {
      List<Load> loads = new ArrayList<>(FOLLOWING);
      Collections.rotate(loads, draw);
      Circuit circuit = drawn.circuit();
      Survey all = drawn.everyReading(draw, loads);
      Survey survey =
          new Survey(
              all.meters(), all.loads(), all.tests().stream().map(Setting::withoutLoops).toList());
      return new Setting(circuit, survey, Parameters.of(circuit, survey, ASSUMPTIONS));
    }

    private static ohmtrail.survey.Test withoutLoops(ohmtrail.survey.Test test) {
      return test.withReadings(
          test.readings().stream().filter(reading -> reading.measurand().followsSupply()).toList());
    }

    /** With loads that follow their voltage, on one leg or on two. */
    static Setting dependent(DrawnCircuit drawn, boolean twoLegs, int order) {
      List<Load> loads = new ArrayList<>(FOLLOWING);
      Collections.rotate(loads, order);
      Circuit circuit = twoLegs ? drawn.twoLegs(Supply.NORTH_AMERICA_120_240) : drawn.circuit();
      Survey survey = twoLegs ? drawn.twoLegSurvey(loads) : drawn.survey(loads);
      return new Setting(circuit, survey, Parameters.of(circuit, survey, ASSUMPTIONS));
    }

    Joint joint(int draw) {
      return circuit.joints().get(draw % circuit.joints().size());
    }

    double[] point(long seed) {
      Random random = new Random(seed);
      double[] point = parameters.nominalPoint();
      for (int p = 0; p < point.length; p++) {
        point[p] = random.nextGaussian();
      }
      return point;
    }

    SurveyModel model(double[] point, List<Joint> swept, List<Degradation> degradations) {
      return SurveyModel.of(circuit, survey, ASSUMPTIONS, parameters, point, swept, degradations);
    }

    double[] readings(double[] point, List<Degradation> degradations) {
      SurveyModel model = model(point, List.of(), degradations);
      Evaluation evaluation = model.buffer();
      model.evaluate(evaluation);
      return evaluation.volts();
    }
  }

  private static void assertSame(double[] expected, double[] shown, String what) {
    assertSame(expected, shown, SAME, what);
  }

  private static void assertSame(double[] expected, double[] shown, double same, String what) {
    for (int r = 0; r < expected.length; r++) {
      double tolerance = same * Math.max(1, expected[r]);
      assertEquals(expected[r], shown[r], tolerance, what + ", reading " + r);
    }
  }

  @Property(tries = TRIES)
  void aSweepShowsWhatTheSameOhmsPutThereBeforehandShow(
      @ForAll("circuits") DrawnCircuit drawn,
      @ForAll @IntRange(max = 999) int jointDraw,
      @ForAll long seed) {
    Setting setting = Setting.of(drawn);
    Joint joint = setting.joint(jointDraw);
    double[] point = setting.point(seed);
    JointSweep sweep = setting.model(point, List.of(joint), List.of()).sweep(joint);
    double[] swept = new double[setting.survey().readingCount()];
    for (double ohms : ohms().allValues().orElseThrow().toList()) {
      sweep.volts(ohms, swept);
      double[] expected = setting.readings(point, List.of(new Degradation(joint.id(), ohms)));
      assertSame(expected, swept, joint.id() + " with " + ohms + " ohm, seed " + seed);
    }
  }

  @Property(tries = SLOPE_TRIES)
  void aSweepOnTwoLegsAndItsSlopesAreThoseOfTheOhmsPutThere(
      @ForAll("circuits") DrawnCircuit drawn,
      @ForAll boolean star,
      @ForAll @IntRange(max = 999) int jointDraw,
      @ForAll("ohms") double ohms,
      @ForAll long seed) {
    Setting setting = Setting.twoLegs(drawn, star);
    Joint joint = setting.joint(jointDraw);
    double[] point = setting.point(seed);
    List<Degradation> bad = List.of(new Degradation(joint.id(), ohms));
    Evaluation evaluation = setting.model(point, List.of(joint), List.of()).buffer();
    setting.model(point, List.of(joint), List.of()).sweep(joint).evaluate(ohms, evaluation);
    String what = joint.id() + " with " + ohms + " ohm, seed " + seed;
    assertSame(setting.readings(point, bad), evaluation.volts(), what);
    assertSlopes(setting, point, bad, evaluation, what);
  }

  @Property(tries = 2 * SLOPE_TRIES)
  void aSweepOfEveryQuantityAndItsSlopesAreThoseOfTheOhmsPutThere(
      @ForAll("circuits") DrawnCircuit drawn,
      @ForAll @IntRange(max = 999) int tapDraw,
      @ForAll @IntRange(max = 999) int jointDraw,
      @ForAll("ohms") double ohms,
      @ForAll long seed) {
    Setting setting = Setting.everyReading(drawn, tapDraw);
    Joint joint = setting.joint(jointDraw);
    double[] point = setting.point(seed);
    List<Degradation> bad = List.of(new Degradation(joint.id(), ohms));
    SurveyModel model = setting.model(point, List.of(joint), List.of());
    Evaluation evaluation = model.buffer();
    model.sweep(joint).evaluate(ohms, evaluation);
    String what = joint.id() + " with " + ohms + " ohm, seed " + seed;
    assertSame(setting.readings(point, bad), evaluation.volts(), OTHERS, what);
    assertSlopes(setting, point, bad, evaluation, what);
    SurveyModel fixed = setting.model(point, List.of(), bad);
    Evaluation beforehand = fixed.buffer();
    fixed.evaluate(beforehand);
    assertSlopes(setting, point, bad, beforehand, "beforehand, " + what);
    if (Double.isFinite(ohms)) {
      double[] slopes = new double[fixed.readings()];
      fixed.ohmsSlope(bad.get(0), slopes);
      for (int r = 0; r < slopes.length; r++) {
        double expected = evaluation.ohmsSlope()[r];
        assertEquals(expected, slopes[r], OTHERS * Math.max(1, Math.abs(expected)), what);
      }
    }
  }

  @Property(tries = TRIES)
  void loadsThatFollowTheirVoltageSettleInASweepWhereTheySettleWithTheOhmsPutThere(
      @ForAll("circuits") DrawnCircuit drawn,
      @ForAll boolean twoLegs,
      @ForAll @IntRange(max = 4) int order,
      @ForAll @IntRange(max = 999) int jointDraw,
      @ForAll long seed) {
    Setting setting = Setting.dependent(drawn, twoLegs, order);
    Joint joint = setting.joint(jointDraw);
    double[] point = setting.point(seed);
    SurveyModel model = setting.model(point, List.of(joint), List.of());
    JointSweep sweep = model.sweep(joint);
    double[] swept = new double[setting.survey().readingCount()];
    Evaluation whole = model.buffer();
    for (double ohms : ohms().allValues().orElseThrow().toList()) {
      sweep.volts(ohms, swept);
      sweep.evaluate(ohms, whole);
      double[] expected = setting.readings(point, List.of(new Degradation(joint.id(), ohms)));
      String what = joint.id() + " with " + ohms + " ohm, seed " + seed;
      assertSame(expected, swept, ISLAND, what);
      assertSame(expected, whole.volts(), what);
    }
  }

  @Property(tries = SLOPE_TRIES)
  void slopesWithLoadsThatFollowTheirVoltageAreTheLimitsOfSmallSteps(
      @ForAll("circuits") DrawnCircuit drawn,
      @ForAll boolean twoLegs,
      @ForAll @IntRange(max = 4) int order,
      @ForAll @IntRange(max = 999) int jointDraw,
      @ForAll @IntRange(max = 999) int otherDraw,
      @ForAll("ohms") double ohms,
      @ForAll long seed) {
    Setting setting = Setting.dependent(drawn, twoLegs, order);
    Joint joint = setting.joint(jointDraw);
    Joint other = setting.joint(otherDraw);
    double[] point = setting.point(seed);
    List<Degradation> beside =
        joint.equals(other) ? List.of() : List.of(new Degradation(other.id(), 2));
    SurveyModel model = setting.model(point, List.of(joint), beside);
    Evaluation evaluation = model.buffer();
    model.sweep(joint).evaluate(ohms, evaluation);
    String what = joint.id() + " with " + ohms + " ohm beside " + beside + ", seed " + seed;
    List<Degradation> all = new ArrayList<>(beside);
    all.add(new Degradation(joint.id(), ohms));
    assertSlopes(setting, point, all, evaluation, what);
    assertOhmsSlope(setting, model.sweep(joint), ohms, evaluation, what);
    assertPerSupply(setting, point, all, evaluation, what);
  }

  @Property(tries = SLOPE_TRIES)
  void slopesOfEveryReadingWithLoadsThatFollowTheirVoltageAreTheLimitsOfSmallSteps(
      @ForAll("circuits") DrawnCircuit drawn,
      @ForAll @IntRange(max = 99) int draw,
      @ForAll @IntRange(max = 999) int jointDraw,
      @ForAll("ohms") double ohms,
      @ForAll long seed) {
    Setting setting = Setting.dependentAndEveryReading(drawn, draw);
    Joint joint = setting.joint(jointDraw);
    double[] point = setting.point(seed);
    SurveyModel model = setting.model(point, List.of(joint), List.of());
    Evaluation evaluation = model.buffer();
    model.sweep(joint).evaluate(ohms, evaluation);
    List<Degradation> bad = List.of(new Degradation(joint.id(), ohms));
    String what = joint.id() + " with " + ohms + " ohm, draw " + draw + ", seed " + seed;
    double[] swept = new double[model.readings()];
    model.sweep(joint).volts(ohms, swept);
    assertSame(setting.readings(point, bad), swept, ISLAND, what);
    assertSlopes(setting, point, bad, evaluation, what);
    assertOhmsSlope(setting, model.sweep(joint), ohms, evaluation, what);
  }

  private static void assertOhmsSlope(
      Setting setting, JointSweep sweep, double ohms, Evaluation evaluation, String what) {
    Evaluation moved = new Evaluation(evaluation.readings(), evaluation.parameters());
    SmallSteps.assertSlopes(
        setting.survey(),
        evaluation.ohmsSlope(),
        step -> {
          sweep.evaluate(ohms * Math.exp(step), moved);
          return moved.volts().clone();
        },
        r -> what + ", reading " + r);
  }

  /** The parameter of the supply voltage moves it by its tolerance times u. */
  private static void assertPerSupply(
      Setting setting,
      double[] point,
      List<Degradation> degradations,
      Evaluation evaluation,
      String what) {
    int place = setting.parameters().place(Parameters.Single.SUPPLY_VOLTAGE);
    double sigma = setting.parameters().sigma(place);
    SmallSteps.assertSlopes(
        setting.survey(),
        evaluation.perSupply(),
        step -> setting.readings(moved(point, place, step / sigma), degradations),
        r -> what + ", reading " + r + " by the supply");
  }

  @Property(tries = TRIES)
  void aSweepBesideAnotherDegradedJointShowsWhatBothShow(
      @ForAll("circuits") DrawnCircuit drawn,
      @ForAll @IntRange(max = 999) int jointDraw,
      @ForAll @IntRange(max = 999) int otherDraw,
      @ForAll("ohms") double ohms,
      @ForAll("ohms") double otherOhms) {
    Setting setting = Setting.of(drawn);
    Joint joint = setting.joint(jointDraw);
    Joint other = setting.joint(otherDraw);
    if (joint.equals(other)) {
      return;
    }
    double[] point = setting.parameters().nominalPoint();
    Degradation beside = new Degradation(other.id(), otherOhms);
    JointSweep sweep = setting.model(point, List.of(joint), List.of(beside)).sweep(joint);
    double[] swept = new double[setting.survey().readingCount()];
    sweep.volts(ohms, swept);
    double[] expected = setting.readings(point, List.of(beside, new Degradation(joint.id(), ohms)));
    assertSame(expected, swept, ISLAND, joint.id() + " with " + ohms + " ohm beside " + beside);
  }

  @Property(tries = TRIES)
  void readingsAloneAndReadingsWithSlopesAreTheSameNumbers(
      @ForAll("circuits") DrawnCircuit drawn,
      @ForAll @IntRange(max = 999) int jointDraw,
      @ForAll("ohms") double ohms) {
    Setting setting = Setting.of(drawn);
    Joint joint = setting.joint(jointDraw);
    SurveyModel model =
        setting.model(setting.parameters().nominalPoint(), List.of(joint), List.of());
    double[] alone = new double[model.readings()];
    model.sweep(joint).volts(ohms, alone);
    Evaluation whole = model.buffer();
    model.sweep(joint).evaluate(ohms, whole);
    for (int r = 0; r < alone.length; r++) {
      assertEquals(whole.volts()[r], alone[r], 0, "reading " + r);
      assertTrue(Double.isFinite(alone[r]), "reading " + r + " is " + alone[r]);
    }
  }

  @Property(tries = TRIES)
  void nothingAddedShowsTheHealthyReadings(
      @ForAll("circuits") DrawnCircuit drawn, @ForAll @IntRange(max = 999) int jointDraw) {
    Setting setting = Setting.of(drawn);
    Joint joint = setting.joint(jointDraw);
    SurveyModel model =
        setting.model(setting.parameters().nominalPoint(), List.of(joint), List.of());
    double[] swept = new double[model.readings()];
    model.sweep(joint).volts(0, swept);
    Evaluation healthy = model.buffer();
    model.evaluate(healthy);
    assertSame(healthy.volts(), swept, joint.id());
  }

  @Property(tries = SLOPE_TRIES)
  void slopesAreTheLimitsOfSmallStepsInEveryParameter(
      @ForAll("circuits") DrawnCircuit drawn,
      @ForAll @IntRange(max = 999) int jointDraw,
      @ForAll("ohms") double ohms,
      @ForAll long seed) {
    Setting setting = Setting.of(drawn);
    Joint joint = setting.joint(jointDraw);
    double[] point = setting.point(seed);
    SurveyModel model = setting.model(point, List.of(joint), List.of());
    Evaluation evaluation = model.buffer();
    model.sweep(joint).evaluate(ohms, evaluation);
    List<Degradation> bad = List.of(new Degradation(joint.id(), ohms));
    assertSlopes(setting, point, bad, evaluation, joint.id() + " with " + ohms + ", seed " + seed);
  }

  @Property(tries = SLOPE_TRIES)
  void slopesOfTheReadingsWithNothingSweptAreTheLimitsOfSmallSteps(
      @ForAll("circuits") DrawnCircuit drawn,
      @ForAll @IntRange(max = 999) int jointDraw,
      @ForAll("ohms") double ohms,
      @ForAll long seed) {
    Setting setting = Setting.of(drawn);
    double[] point = setting.point(seed);
    List<Degradation> bad = List.of(new Degradation(setting.joint(jointDraw).id(), ohms));
    SurveyModel model = setting.model(point, List.of(), bad);
    Evaluation evaluation = model.buffer();
    model.evaluate(evaluation);
    assertSlopes(setting, point, bad, evaluation, bad + ", seed " + seed);
    for (double slope : evaluation.ohmsSlope()) {
      assertEquals(0, slope, 0, "nothing is swept");
    }
  }

  /**
   * A few metres behind an open neutral, read with a megohm: resistance and capacitance weigh alike
   * and every response is complex.
   */
  @Example
  void slopesOfAGhostVoltageAreTheLimitsOfSmallSteps() {
    DrawnCircuit drawn =
        new DrawnCircuit(
            List.of(new DrawnCircuit.Stop(0, DrawnCircuit.Build.PIGTAIL, 4, Cable.Companion.NONE)),
            List.of(),
            List.of());
    Circuit circuit = drawn.circuit();
    Meter megohm = Wires.meter(1e6);
    List<Reading> readings =
        List.of(
            new Reading("box-1", ProbePoints.NEUTRAL_GROUND, megohm.name(), 0),
            new Reading("box-1", ProbePoints.HOT_NEUTRAL, megohm.name(), 0));
    Survey survey =
        new Survey(List.of(megohm), List.of(), List.of(new Test("ghost", List.of(), readings)));
    Setting setting = new Setting(circuit, survey, Parameters.of(circuit, survey, ASSUMPTIONS));
    Joint joint = circuit.joint("panel/neutral/outgoing").orElseThrow();
    double[] point = setting.parameters().nominalPoint();
    // A megohm that is there already, before or behind the cable, turns every phase.
    for (Degradation beside :
        List.of(
            new Degradation("box-1/neutral/tail", 0.1),
            new Degradation("box-1/neutral/tail", 1e6),
            new Degradation("box-1/neutral/incoming", 1e6),
            new Degradation("panel/ground/outgoing", 1e6))) {
      for (double ohms : new double[] {1e4, 1e5, 1e6, 1e7, Double.POSITIVE_INFINITY}) {
        SurveyModel model = setting.model(point, List.of(joint), List.of(beside));
        Evaluation evaluation = model.buffer();
        model.sweep(joint).evaluate(ohms, evaluation);
        List<Degradation> both = List.of(beside, new Degradation(joint.id(), ohms));
        assertSlopes(setting, point, both, evaluation, both.toString());
      }
    }
  }

  private static void assertSlopes(
      Setting setting,
      double[] point,
      List<Degradation> degradations,
      Evaluation evaluation,
      String what) {
    int parameters = setting.parameters().size();
    for (int p = 0; p < parameters; p++) {
      int place = p;
      double[] slopes = new double[evaluation.readings()];
      for (int r = 0; r < slopes.length; r++) {
        slopes[r] = evaluation.jacobian()[r * parameters + p];
      }
      SmallSteps.assertSlopes(
          setting.survey(),
          slopes,
          step -> setting.readings(moved(point, place, step), degradations),
          r ->
              what + ", reading " + r + ", " + setting.parameters().all().get(place).description());
    }
  }

  private static double[] moved(double[] point, int place, double step) {
    double[] moved = point.clone();
    moved[place] += step;
    return moved;
  }

  @Property(tries = TRIES)
  void theSlopeInTheOhmsIsTheLimitOfSmallSteps(
      @ForAll("circuits") DrawnCircuit drawn,
      @ForAll @IntRange(max = 999) int jointDraw,
      @ForAll("ohms") double ohms) {
    Setting setting = Setting.of(drawn);
    Joint joint = setting.joint(jointDraw);
    SurveyModel model =
        setting.model(setting.parameters().nominalPoint(), List.of(joint), List.of());
    JointSweep sweep = model.sweep(joint);
    Evaluation evaluation = model.buffer();
    sweep.evaluate(ohms, evaluation);
    SmallSteps.assertSlopes(
        setting.survey(),
        evaluation.ohmsSlope(),
        step -> {
          double[] moved = new double[model.readings()];
          sweep.volts(ohms * Math.exp(step), moved);
          return moved;
        },
        r -> joint.id() + " with " + ohms + ", reading " + r);
  }
}
