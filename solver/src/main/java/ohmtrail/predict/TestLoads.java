package ohmtrail.predict;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalInt;
import ohmtrail.circuit.Circuit;
import ohmtrail.network.Complex;
import ohmtrail.predict.operating.DependentLoad;
import ohmtrail.predict.operating.OperatingPoint;
import ohmtrail.predict.operating.Shunts;
import ohmtrail.survey.LoadInUse;
import ohmtrail.survey.Survey;
import ohmtrail.survey.Tap;
import ohmtrail.survey.Test;
import ohmtrail.survey.load.Load;

/**
 * The loads of one test at one point of the parameters, where they are connected: those that stay
 * what they are as admittances, the others to be settled.
 */
final class TestLoads {
  private final Parameters parameters;
  private final Shunts constant = new Shunts();
  private final List<Wiring.Element> constantElements = new ArrayList<>();

  private final List<LoadInUse> uses;

  /** All loads in the order of the uses. */
  private final List<DependentLoad> all = new ArrayList<>();

  private final List<DependentLoad> dependent = new ArrayList<>();

  /** Place of the parameter of each load that follows its voltage. */
  private final List<Integer> dependentPlaces = new ArrayList<>();

  private TestLoads(Parameters parameters, List<LoadInUse> uses) {
    this.parameters = parameters;
    this.uses = uses;
  }

  static TestLoads of(
      Test test,
      Circuit circuit,
      Survey survey,
      Parameters parameters,
      double[] point,
      Wiring wiring) {
    TestLoads loads = new TestLoads(parameters, survey.loadsOn(test));
    for (LoadInUse use : loads.uses) {
      Load load = survey.load(use.load());
      int place = parameters.place(new Parameters.LoadKey(load.name()));
      double factor = parameters.all().get(place).factor(point[place]);
      loads.add(new DependentLoad(wiring.tapPort(use.tap(circuit)), load, factor), place);
    }
    return loads;
  }

  private void add(DependentLoad load, int place) {
    all.add(load);
    if (load.load().isConstant()) {
      Complex admittance = load.admittance(load.load().ratedVolts());
      constant.add(load.port(), admittance);
      constantElements.add(element(load, admittance, place));
    } else {
      dependent.add(load);
      dependentPlaces.add(place);
    }
  }

  private Wiring.Element element(DependentLoad load, Complex admittance, int place) {
    return new Wiring.Element(load.port(), place, admittance.times(parameters.sigma(place)));
  }

  /** Those that stay what they are, across their ports. */
  Shunts constant() {
    return constant;
  }

  /** Those that follow their voltage. */
  List<DependentLoad> dependent() {
    return List.copyOf(dependent);
  }

  /** The uses, in order. */
  List<LoadInUse> uses() {
    return uses;
  }

  /** The load that a clamp is around; it must be on. */
  LoadInUse useOf(Tap.AroundLoad around) {
    return uses.stream()
        .filter(use -> use.load().equals(around.load()) && use.box().equals(around.box()))
        .findFirst()
        .orElseThrow();
  }

  /** What a load of the test is to the network once all have settled; zero where it is off. */
  Complex admittance(LoadInUse use, OperatingPoint settled) {
    DependentLoad load = all.get(uses.indexOf(use));
    if (load.load().isConstant()) {
      return load.admittance(load.load().ratedVolts());
    }
    return settled.admittance(dependentPlace(use).orElseThrow());
  }

  /** Place of a load of the test among those that follow their voltage, if it does. */
  OptionalInt dependentPlace(LoadInUse use) {
    int place = uses.indexOf(use);
    if (all.get(place).load().isConstant()) {
      return OptionalInt.empty();
    }
    long before = all.subList(0, place).stream().filter(load -> !load.load().isConstant()).count();
    return OptionalInt.of((int) before);
  }

  /** All of them as elements that depend on parameters, once the others have settled. */
  List<Wiring.Element> elements(OperatingPoint settled) {
    List<Wiring.Element> elements = new ArrayList<>(constantElements);
    for (int l = 0; l < dependent.size(); l++) {
      elements.add(element(dependent.get(l), settled.admittance(l), dependentPlaces.get(l)));
    }
    return elements;
  }
}
