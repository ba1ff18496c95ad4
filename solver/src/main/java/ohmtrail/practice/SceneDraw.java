package ohmtrail.practice;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.function.UnaryOperator;
import ohmtrail.circuit.Box;
import ohmtrail.circuit.Cable;
import ohmtrail.circuit.Circuit;
import ohmtrail.circuit.ConductorRole;
import ohmtrail.circuit.JointKind;
import ohmtrail.circuit.Supply;
import ohmtrail.survey.LoadInUse;
import ohmtrail.survey.ProbePoints;
import ohmtrail.survey.Reading;
import ohmtrail.survey.Survey;
import ohmtrail.survey.Tap;
import ohmtrail.survey.Test;
import ohmtrail.survey.load.HeatingElement;
import ohmtrail.survey.load.Load;

/**
 * Draws how far what is written down is not how it was. It knows nothing of how a method thinks of
 * such slips.
 */
final class SceneDraw {
  private static final double EITHER = 0.5;
  private static final double HALF_POWER = 0.5;
  private static final double SMALLEST_STEP = 0.025;
  private static final double LARGEST_STEP = 0.05;

  /** A supply sags more often than it rises. */
  private static final double LOWER = 0.8;

  private static final double FEWEST_WATTS = 60;
  private static final double MOST_WATTS = 800;
  private static final String OTHER = "something else";
  private static final String ELSEWHERE = "elsewhere";

  private final Circuit circuit;
  private final Survey blank;
  private final Chance chance;

  SceneDraw(Circuit circuit, Survey blank, Chance chance) {
    this.circuit = circuit;
    this.blank = blank;
    this.chance = chance;
  }

  Scene draw(Disturbance disturbance) {
    return switch (disturbance) {
      case HEATER_OFF -> as(without(List.of(chance.oneOf(loaded()))));
      case HEATER_NEVER_ON -> as(without(loaded()));
      case HEATER_LOW -> as(low());
      case SUPPLY_STEP -> withSupply(chance.whole(1, blank.tests().size() - 1), step());
      case NO_SUPPLY -> withSupply(sinceWhen(), 0);
      case BOXES_SWAPPED ->
          new Scene(swapped(), circuit, blank, Collections.nCopies(blank.tests().size(), 1.0));
      case LOAD_UNLISTED -> as(unlisted());
      case NEUTRAL_SHARED -> shared();
      default -> as(blank);
    };
  }

  private Scene as(Survey survey) {
    return new Scene(circuit, circuit, survey, Collections.nCopies(blank.tests().size(), 1.0));
  }

  private Scene withSupply(int from, double share) {
    List<Double> steps = new ArrayList<>();
    for (int t = 0; t < blank.tests().size(); t++) {
      steps.add(t < from ? 1.0 : share);
    }
    return new Scene(circuit, circuit, blank, steps);
  }

  private double step() {
    double size = chance.between(SMALLEST_STEP, LARGEST_STEP);
    return chance.happens(LOWER) ? 1 - size : 1 + size;
  }

  /** The test from which on something was so: the first as often as any other. */
  private int sinceWhen() {
    return chance.happens(EITHER) ? 0 : chance.whole(0, blank.tests().size() - 1);
  }

  private List<Test> loaded() {
    return blank.tests().stream().filter(test -> !test.loads().isEmpty()).toList();
  }

  private Survey each(UnaryOperator<Test> change) {
    return each(blank, change);
  }

  private static Survey each(Survey survey, UnaryOperator<Test> change) {
    return survey.withTests(survey.tests().stream().map(change).toList());
  }

  private static Test withLoads(Test test, List<LoadInUse> loads) {
    return new Test(test.name(), loads, test.readings());
  }

  private Survey without(List<Test> tests) {
    return each(test -> tests.contains(test) ? withLoads(test, List.of()) : test);
  }

  private Survey low() {
    List<Test> loaded = loaded();
    List<Test> low = chance.happens(EITHER) ? loaded : List.of(chance.oneOf(loaded));
    Load stated = blank.loads().get(0);
    String name = stated.name() + ", low";
    Load half = new HeatingElement(name, HALF_POWER * stated.ratedWatts(), stated.ratedVolts());
    return each(
        blank.withLoads(List.of(stated, half)),
        test ->
            low.contains(test)
                ? withLoads(test, List.of(new LoadInUse(name, test.loads().get(0).box())))
                : test);
  }

  /** In the draw a box is as good a neighbour as the one behind it. */
  private Circuit swapped() {
    List<Cable> between =
        circuit.cables().stream()
            .filter(cable -> hasReceptacle(cable.from()) && hasReceptacle(cable.to()))
            .toList();
    if (between.isEmpty()) {
      return circuit;
    }
    Cable pair = chance.oneOf(between);
    UnaryOperator<String> other =
        name -> name.equals(pair.from()) ? pair.to() : name.equals(pair.to()) ? pair.from() : name;
    List<Cable> cables =
        circuit.cables().stream()
            .map(
                cable ->
                    new Cable(
                        other.apply(cable.from()),
                        other.apply(cable.to()),
                        cable.lengthMetres(),
                        cable.lengthTolerance(),
                        cable.conductor(),
                        cable.companion(),
                        cable.roles(),
                        cable.ground()))
            .toList();
    return new Circuit(circuit.supply(), circuit.breakerAmperes(), circuit.boxes(), cables);
  }

  private boolean hasReceptacle(String box) {
    return circuit.box(box).filter(Box::hasReceptacle).isPresent();
  }

  private List<String> receptacles() {
    return circuit.boxes().stream().filter(Box::hasReceptacle).map(Box::name).toList();
  }

  private Survey unlisted() {
    int from = sinceWhen();
    LoadInUse use = new LoadInUse(OTHER, chance.oneOf(receptacles()));
    List<Load> loads = new ArrayList<>(blank.loads());
    double watts = chance.logUniform(FEWEST_WATTS, MOST_WATTS);
    loads.add(new HeatingElement(OTHER, watts, circuit.supply().volts()));
    return since(blank.withLoads(loads), from, use);
  }

  private static Survey since(Survey survey, int from, LoadInUse use) {
    List<Test> tests = new ArrayList<>();
    for (Test test : survey.tests()) {
      List<LoadInUse> on = new ArrayList<>(test.loads());
      if (tests.size() >= from) {
        on.add(use);
      }
      tests.add(withLoads(test, on));
    }
    return survey.withTests(tests);
  }

  /** A multiwire circuit of which nobody knows: its second leg serves one load beyond a box. */
  private Scene shared() {
    String at = chance.oneOf(receptacles());
    List<Cable> common = circuit.pathTo(at);
    List<ConductorRole> first =
        List.of(ConductorRole.LEG_1, ConductorRole.NEUTRAL, ConductorRole.GROUND);
    List<ConductorRole> second =
        List.of(ConductorRole.LEG_2, ConductorRole.NEUTRAL, ConductorRole.GROUND);
    List<ConductorRole> both =
        List.of(
            ConductorRole.LEG_1, ConductorRole.LEG_2, ConductorRole.NEUTRAL, ConductorRole.GROUND);
    List<Cable> cables = new ArrayList<>();
    circuit.cables().forEach(each -> cables.add(each.with(common.contains(each) ? both : first)));
    Cable last = common.get(common.size() - 1);
    cables.add(
        Cable.of(at, ELSEWHERE, last.lengthMetres().orElseThrow(), last.conductor()).with(second));
    List<Box> boxes = new ArrayList<>();
    circuit.boxes().forEach(box -> boxes.add(box.hasReceptacle() ? box.on(first) : box));
    boxes.add(Box.feedThrough(ELSEWHERE, JointKind.SCREW));
    Circuit multiwire =
        new Circuit(Supply.NORTH_AMERICA_120_240, circuit.breakerAmperes(), boxes, cables);
    List<Load> loads = new ArrayList<>(blank.loads());
    double watts = chance.logUniform(FEWEST_WATTS, 2 * MOST_WATTS);
    loads.add(new HeatingElement(OTHER, watts, circuit.supply().volts()));
    Survey onTheFirst =
        each(
            blank.withLoads(loads),
            test ->
                test.withReadings(test.readings().stream().map(SceneDraw::onTheFirst).toList()));
    Survey survey = since(onTheFirst, sinceWhen(), new LoadInUse(OTHER, ELSEWHERE));
    return new Scene(circuit, multiwire, survey, Collections.nCopies(blank.tests().size(), 1.0));
  }

  private static Reading onTheFirst(Reading reading) {
    Optional<ProbePoints> between = reading.between();
    boolean isLive = between.filter(it -> it.first() == ConductorRole.HOT).isPresent();
    return isLive
        ? new Reading(
            reading.box(),
            new ProbePoints(ConductorRole.LEG_1, between.get().second()),
            reading.meter(),
            reading.value())
        : reading;
  }

  /** The same survey with every meter held at the box before, or at the one behind the first. */
  static Survey atNeighbours(Circuit circuit, Survey survey) {
    return survey.withTests(
        survey.tests().stream()
            .map(
                test ->
                    test.withReadings(
                        test.readings().stream()
                            .map(reading -> atNeighbour(circuit, reading))
                            .toList()))
            .toList());
  }

  private static Reading atNeighbour(Circuit circuit, Reading reading) {
    List<String> order =
        circuit.boxes().stream().filter(Box::hasReceptacle).map(Box::name).toList();
    int place = order.indexOf(reading.box());
    String other = order.get(place > 0 ? place - 1 : Math.min(1, order.size() - 1));
    Tap tap = new Tap.Pair(other, reading.between().orElseThrow());
    return new Reading(tap, reading.measurand(), reading.meter(), reading.value(), 0);
  }
}
