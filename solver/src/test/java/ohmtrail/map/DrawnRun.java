package ohmtrail.map;

import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import ohmtrail.circuit.Box;
import ohmtrail.circuit.JointKind;
import ohmtrail.circuit.Supply;
import ohmtrail.map.known.CableKind;
import ohmtrail.map.known.MapProblem;
import ohmtrail.map.known.Outlet;
import ohmtrail.map.known.RunMap;
import ohmtrail.map.known.UnknownRun;
import ohmtrail.reference.Assumption;
import ohmtrail.reference.Assumptions;
import ohmtrail.reference.Conductor;
import ohmtrail.reference.ConductorMaterial;
import ohmtrail.reference.ConductorSize;
import ohmtrail.survey.Accuracy;
import ohmtrail.survey.LoadInUse;
import ohmtrail.survey.Meter;
import ohmtrail.survey.ProbePoints;
import ohmtrail.survey.Reading;
import ohmtrail.survey.Survey;
import ohmtrail.survey.Test;
import ohmtrail.survey.load.HeatingElement;

/**
 * A run drawn by chance and read with a model of its own: a ladder of resistances, each reading a
 * sum over what two ways have in common. It shares no code with the search.
 */
final class DrawnRun {
  static final double VOLTS = 120;
  static final double WATTS = 1500;
  static final double TEE = 1.0 / 8;
  static final double LENGTH_FACTOR = 1.8;
  static final double DRIFT_VOLTS = 0.4;
  static final double NOISE_VOLTS = 0.15;
  static final double DISPLAY_VOLTS = 0.1;

  /** 14 AWG copper at 30 degC, ohm/m: NEC chapter 9 table 8 at 75 degC, brought to 30 degC. */
  static final double OHMS_PER_METRE =
      new Conductor(ConductorSize.parse("14 AWG").orElseThrow(), ConductorMaterial.COPPER)
          .ohmsPerMetre(30);

  private static final double KNOWN = 1e-4;
  private static final double MEDIAN_METRES = 6;
  private static final double JOINT_OHMS = 0.002;
  private static final double JOINT_SPREAD = 0.7;
  private static final double SOURCE_OHMS = 0.1;
  private static final double SOURCE_SPREAD = 0.7;
  private static final double HEATER_SPREAD = 0.05;
  private static final double SUPPLY_SPREAD = 0.03;

  final int boxes;
  final int[] parents;
  final double[] loop;
  final double[] tail;
  final double source;
  final double heaterOhms;
  final double supply;
  private final Random random;

  /** The box beyond the bad joint, which is in the cable to it; 0 for a sound run. */
  int badCable;

  double badOhms;
  private boolean isBadAtTheFarEnd;

  /** What is known of the house but for its lengths. */
  enum House {
    /** Supply, heater and sound joints as the assumptions have them. */
    ROUGHLY,
    /** Supply, heater and joints as stated: nothing is open but map, lengths, drift and noise. */
    EXACTLY
  }

  private final House house;

  DrawnRun(int boxes, long seed) {
    this(boxes, seed, House.ROUGHLY);
  }

  DrawnRun(int boxes, long seed, House house) {
    this.house = house;
    this.random = new Random(seed);
    this.boxes = boxes;
    this.parents = new int[boxes + 1];
    this.loop = new double[boxes + 1];
    this.tail = new double[boxes + 1];
    List<Integer> order = new ArrayList<>();
    for (int box = 1; box <= boxes; box++) {
      order.add(box);
    }
    Collections.shuffle(order, random);
    for (int place = 0; place < boxes; place++) {
      int box = order.get(place);
      boolean tee = place > 0 && random.nextDouble() < TEE;
      int earlier = tee ? random.nextInt(place) : place;
      int before = tee ? earlier - 1 : place - 1;
      parents[box] = before < 0 ? 0 : order.get(before);
      double metres = MEDIAN_METRES * Math.exp(Math.log(LENGTH_FACTOR) * random.nextGaussian());
      loop[box] = 2 * OHMS_PER_METRE * metres + joint() + joint() + joint() + joint();
      tail[box] = joint() + joint();
    }
    this.source = SOURCE_OHMS * Math.exp(roughly(SOURCE_SPREAD));
    this.heaterOhms = VOLTS * VOLTS / WATTS * Math.exp(-roughly(HEATER_SPREAD));
    this.supply = VOLTS * (1 + roughly(SUPPLY_SPREAD));
  }

  /** With a bad joint in a cable that is drawn. */
  DrawnRun bad(double lowOhms, double highOhms) {
    badCable = 1 + random.nextInt(boxes);
    badOhms = lowOhms * Math.pow(highOhms / lowOhms, random.nextDouble());
    isBadAtTheFarEnd = random.nextBoolean();
    loop[badCable] += badOhms;
    return this;
  }

  private double joint() {
    return JOINT_OHMS * Math.exp(roughly(JOINT_SPREAD));
  }

  private double roughly(double spread) {
    return house == House.ROUGHLY ? spread * random.nextGaussian() : 0;
  }

  static String name(int box) {
    return box == 0 ? "panel" : "box-" + (char) ('a' + box - 1);
  }

  private boolean leadsThrough(int box, int cable) {
    for (int at = box; at > 0; at = parents[at]) {
      if (at == cable) {
        return true;
      }
    }
    return false;
  }

  private double shared(int one, int other) {
    double sum = source;
    for (int cable = 1; cable <= boxes; cable++) {
      sum += leadsThrough(one, cable) && leadsThrough(other, cable) ? loop[cable] : 0;
    }
    return one == other ? sum + tail[one] : sum;
  }

  /** What a voltmeter shows at some boxes with the heater at one, or nowhere (0). */
  Map<Integer, Double> read(int heater, List<Integer> at) {
    double now = supply + DRIFT_VOLTS * random.nextGaussian();
    double amperes = heater == 0 ? 0 : now / (heaterOhms + shared(heater, heater));
    Map<Integer, Double> shown = new LinkedHashMap<>();
    for (int box : at) {
      double volts = now - (heater == 0 ? 0 : amperes * shared(heater, box));
      double noisy = volts + NOISE_VOLTS * random.nextGaussian();
      shown.put(box, Math.rint(noisy / DISPLAY_VOLTS) * DISPLAY_VOLTS);
    }
    return shown;
  }

  List<Integer> everyBox() {
    List<Integer> all = new ArrayList<>();
    for (int box = 1; box <= boxes; box++) {
      all.add(box);
    }
    return all;
  }

  /** A walk round with the heater at a box. */
  Test walk(int heater, List<Integer> at) {
    return test("heater at " + name(heater), heater, read(heater, at));
  }

  static Test test(String name, int heater, Map<Integer, Double> shown) {
    List<LoadInUse> on = heater == 0 ? List.of() : List.of(new LoadInUse("heater", name(heater)));
    return new Test(
        name,
        on,
        shown.entrySet().stream()
            .map(
                entry ->
                    new Reading(
                        name(entry.getKey()), ProbePoints.HOT_NEUTRAL, "meter", entry.getValue()))
            .toList());
  }

  /** The problem: names of boxes, and these tests. */
  MapProblem problem(List<Test> tests, double soundPrior) {
    List<Outlet> outlets =
        everyBox().stream()
            .map(box -> Outlet.unknown(Box.feedThrough(name(box), JointKind.SCREW)))
            .toList();
    Conductor wire =
        new Conductor(ConductorSize.parse("14 AWG").orElseThrow(), ConductorMaterial.COPPER);
    UnknownRun run =
        UnknownRun.of(
            Supply.NORTH_AMERICA_120, 15, Box.panel("panel"), outlets, CableKind.of(wire));
    Meter meter = new Meter("meter", 10e6, 100e-12, new Accuracy(0, 0), DISPLAY_VOLTS);
    Assumptions assumptions =
        Assumptions.defaults()
            .with(Assumption.READING_SCATTER, NOISE_VOLTS)
            .with(Assumption.UNKNOWN_LENGTH_SPREAD, Math.log(LENGTH_FACTOR))
            .with(Assumption.HEALTHY_PRIOR, soundPrior);
    if (house == House.EXACTLY) {
      assumptions =
          assumptions
              .with(Assumption.SUPPLY_VOLTAGE_TOLERANCE, KNOWN)
              .with(Assumption.SOURCE_OHMS_SPREAD, KNOWN)
              .with(Assumption.LOAD_POWER_TOLERANCE, KNOWN)
              .with(Assumption.HEALTHY_JOINT_SPREAD, KNOWN);
    }
    Survey survey =
        new Survey(List.of(meter), List.of(new HeatingElement("heater", WATTS, VOLTS)), tests);
    return new MapProblem(run, survey, assumptions);
  }

  /** Heaters at these boxes in turn, every box read each time. */
  List<Test> walks(List<Integer> heaters) {
    return heaters.stream().map(heater -> walk(heater, everyBox())).toList();
  }

  boolean isRight(RunMap map) {
    return rightFeeders(map) == boxes;
  }

  int rightFeeders(RunMap map) {
    int right = 0;
    for (int box = 1; box <= boxes; box++) {
      right += map.feederOf(name(box)).orElse("").equals(name(parents[box])) ? 1 : 0;
    }
    return right;
  }

  /** The box that has the bad joint: the far end of its cable, or the near one. */
  String badBox() {
    return name(isBadAtTheFarEnd ? badCable : parents[badCable]);
  }

  int number(String box) {
    return box.equals("panel") ? 0 : box.charAt(box.length() - 1) - 'a' + 1;
  }

  /** The same problem told with every feeder, lengths known no better than before. */
  MapProblem problemKnown(List<Test> tests, double soundPrior) {
    MapProblem unknown = problem(tests, soundPrior);
    UnknownRun run = unknown.run();
    List<Outlet> outlets =
        run.outlets().stream()
            .map(
                outlet ->
                    Outlet.fedBy(
                        outlet.box(),
                        run.cable(
                            name(parents[number(outlet.name())]),
                            outlet.name(),
                            unknown.assumptions())))
            .toList();
    return new MapProblem(
        UnknownRun.of(run.supply(), run.breakerAmperes(), run.panel(), outlets, run.usualCable()),
        unknown.survey(),
        unknown.assumptions());
  }

  Random random() {
    return random;
  }
}
