package ohmtrail.predict;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import ohmtrail.circuit.Box;
import ohmtrail.circuit.Cable;
import ohmtrail.circuit.Circuit;
import ohmtrail.circuit.ConductorRole;
import ohmtrail.circuit.Joint;
import ohmtrail.reference.Assumption;
import ohmtrail.reference.Assumptions;
import ohmtrail.survey.Measurand;
import ohmtrail.survey.Meter;
import ohmtrail.survey.Survey;
import ohmtrail.survey.Test;
import ohmtrail.survey.load.Load;
import ohmtrail.survey.load.Rating;

/** Every parameter of a circuit and the survey made of it, in a fixed order. Immutable. */
public final class Parameters {
  private final List<Parameter> all;
  private final Map<Object, Integer> places;

  private Parameters(List<Parameter> all, Map<Object, Integer> places) {
    this.all = List.copyOf(all);
    this.places = places;
  }

  /** Lists them. */
  public static Parameters of(Circuit circuit, Survey survey, Assumptions assumptions) {
    Collector collector = new Collector(assumptions);
    collector.addSupply(circuit);
    collector.addEarth(circuit);
    survey.tests().stream().filter(Test::supplyMoved).forEach(collector::addStep);
    survey.loads().forEach(collector::addLoad);
    survey.meters().forEach(collector::addMeter);
    circuit.cables().forEach(collector::addCable);
    circuit.boxes().forEach(box -> collector.addDevice(circuit, box));
    return new Parameters(collector.all, collector.places);
  }

  /** The parameters. */
  public List<Parameter> all() {
    return all;
  }

  /** How many there are. */
  public int size() {
    return all.size();
  }

  /** The point at which everything is as stated: all zeros. */
  public double[] nominalPoint() {
    return new double[all.size()];
  }

  int place(Object key) {
    Integer place = places.get(key);
    if (place == null) {
      throw new IllegalArgumentException("No parameter for (" + key + ")");
    }
    return place;
  }

  double value(int place, double[] point) {
    Parameter parameter = all.get(place);
    return parameter.nominal() * parameter.factor(point[place]);
  }

  /** The voltage behind the supply impedance, volts. */
  public double sourceVolts(double[] point) {
    return value(place(Single.SUPPLY_VOLTAGE), point);
  }

  /** The same in a test: times every step of the supply up to then. */
  double sourceVolts(double[] point, Survey survey, Test test) {
    double volts = sourceVolts(point);
    for (int step : steps(survey, test)) {
      volts *= value(step, point);
    }
    return volts;
  }

  /** Places of the steps of the supply up to a test. */
  List<Integer> steps(Survey survey, Test test) {
    List<Integer> steps = new ArrayList<>();
    for (Test each : survey.tests()) {
      if (each.supplyMoved()) {
        steps.add(place(new StepKey(each.name())));
      }
      if (each.equals(test)) {
        break;
      }
    }
    return steps;
  }

  double sigma(int place) {
    return all.get(place).sigma();
  }

  /** Slope of the logarithm of a parameter's value along its u. */
  double slope(int place, double[] point) {
    return all.get(place).slope(point[place]);
  }

  /**
   * These and the ohms of some joints, so that they give way as everything else known roughly does.
   *
   * @param degradations ohms found before; those of an open joint stay as they are
   * @param sigma standard deviation of the logarithm of each
   */
  public Parameters with(List<Degradation> degradations, double sigma) {
    List<Parameter> more = new ArrayList<>(all);
    Map<Object, Integer> found = new LinkedHashMap<>(places);
    for (Degradation each : degradations) {
      if (each.ohms() > 0 && Double.isFinite(each.ohms())) {
        found.put(new DegradedKey(each.joint(), each.when()), more.size());
        more.add(new Parameter.DegradedOhms(each.joint(), each.ohms(), sigma));
      }
    }
    return new Parameters(more, found);
  }

  /** The place of a degraded joint's ohms, where they are among the parameters. */
  public OptionalInt placeOf(Degradation degradation) {
    Integer place = places.get(new DegradedKey(degradation.joint(), degradation.when()));
    return place == null ? OptionalInt.empty() : OptionalInt.of(place);
  }

  /** Keys under which a parameter is found again. */
  enum Single {
    SUPPLY_VOLTAGE,
    SOURCE_OHMS,
    EARTH_OHMS,
    CAPACITANCE
  }

  record StepKey(String test) {}

  record LoadKey(String load) {}

  record GainKey(String meter) {}

  record MeterOhmsKey(String meter) {}

  record CableKey(String from, String to) {}

  record SectionKey(String from, String to, ConductorRole conductor) {}

  record DeviceKey(String box, ConductorRole conductor) {}

  private record DegradedKey(String joint, Degradation.When when) {}

  private static final class Collector {
    /** Something sound can have at least so many times what it usually has. */
    private static final double LEAST_ROOM = 2;

    private final Assumptions assumptions;
    private final List<Parameter> all = new ArrayList<>();
    private final Map<Object, Integer> places = new LinkedHashMap<>();

    Collector(Assumptions assumptions) {
      this.assumptions = assumptions;
    }

    private void add(Object key, Parameter parameter) {
      places.put(key, all.size());
      all.add(parameter);
    }

    private double value(Assumption assumption) {
      return assumptions.value(assumption);
    }

    void addSupply(Circuit circuit) {
      add(
          Single.SUPPLY_VOLTAGE,
          new Parameter.SupplyVoltage(
              circuit.supply().volts(), value(Assumption.SUPPLY_VOLTAGE_TOLERANCE)));
      add(
          Single.SOURCE_OHMS,
          new Parameter.SourceOhms(
              value(Assumption.SOURCE_OHMS),
              value(Assumption.SOURCE_OHMS_SPREAD),
              limit(Assumption.SOURCE_OHMS_LIMIT, Assumption.SOURCE_OHMS)));
      add(
          Single.CAPACITANCE,
          new Parameter.CableCapacitance(
              value(Assumption.CABLE_CAPACITANCE), value(Assumption.CAPACITANCE_SPREAD)));
    }

    /** Where current can return through the earth, and a meter feels it. */
    void addEarth(Circuit circuit) {
      if (Layout.hasEarthPath(circuit.supply())) {
        add(
            Single.EARTH_OHMS,
            new Parameter.EarthOhms(
                value(Assumption.EARTH_PATH_OHMS), value(Assumption.EARTH_PATH_SPREAD)));
      }
    }

    void addStep(Test test) {
      add(
          new StepKey(test.name()),
          new Parameter.SupplyStep(test.name(), value(Assumption.SUPPLY_STEP_SIZE)));
    }

    void addLoad(Load load) {
      Rating rating = load.rating();
      add(
          new LoadKey(load.name()),
          new Parameter.LoadRating(
              load.name(), rating.quantity(), rating.value(), value(rating.tolerance())));
    }

    void addMeter(Meter meter) {
      add(
          new GainKey(meter.name()),
          new Parameter.MeterGain(meter.name(), meter.accuracy().gainSigma()));
      if (meter.measurand() == Measurand.VOLTAGE) {
        add(
            new MeterOhmsKey(meter.name()),
            new Parameter.MeterOhms(
                meter.name(), meter.inputOhms(), value(Assumption.METER_OHMS_TOLERANCE)));
      }
    }

    void addCable(Cable cable) {
      double length = cable.lengthMetres().orElse(value(Assumption.UNKNOWN_LENGTH));
      double usual =
          value(
              cable.lengthMetres().isPresent()
                  ? Assumption.LENGTH_TOLERANCE
                  : Assumption.UNKNOWN_LENGTH_SPREAD);
      add(
          new CableKey(cable.from(), cable.to()),
          new Parameter.CableLength(cable, length, cable.lengthTolerance().orElse(usual)));
      for (ConductorRole conductor : cable.roles()) {
        add(
            new SectionKey(cable.from(), cable.to(), conductor),
            new Parameter.SectionJointOhms(
                cable,
                conductor,
                2 * value(Assumption.HEALTHY_JOINT_OHMS),
                value(Assumption.HEALTHY_JOINT_SPREAD),
                2 * mostSoundOhms()));
      }
    }

    private double mostSoundOhms() {
      return limit(Assumption.DEGRADED_OHMS_LOW, Assumption.HEALTHY_JOINT_OHMS);
    }

    /** What a sound thing stays below, unless the case takes it to have as much anyway. */
    private double limit(Assumption limit, Assumption usual) {
      return Math.max(value(limit), LEAST_ROOM * value(usual));
    }

    void addDevice(Circuit circuit, Box box) {
      for (ConductorRole conductor : circuit.deviceConductors(box)) {
        long count =
            circuit.deviceJoints(box.name()).stream()
                .map(Joint::conductor)
                .filter(conductor::equals)
                .count();
        if (count > 0) {
          add(
              new DeviceKey(box.name(), conductor),
              new Parameter.DeviceJointOhms(
                  box.name(),
                  conductor,
                  count * value(Assumption.HEALTHY_JOINT_OHMS),
                  value(Assumption.HEALTHY_JOINT_SPREAD),
                  count * mostSoundOhms()));
        }
      }
    }
  }
}
