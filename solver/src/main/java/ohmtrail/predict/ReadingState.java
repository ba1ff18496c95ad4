package ohmtrail.predict;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import java.util.Set;
import java.util.function.ToDoubleFunction;
import ohmtrail.circuit.Circuit;
import ohmtrail.circuit.ResidualCurrentDevice;
import ohmtrail.network.Attachment;
import ohmtrail.network.Attachments;
import ohmtrail.network.Complex;
import ohmtrail.predict.operating.SettledNetwork;
import ohmtrail.predict.operating.Shunts;
import ohmtrail.predict.operating.SweptReading;
import ohmtrail.survey.LoadInUse;
import ohmtrail.survey.Measurand;
import ohmtrail.survey.Meter;
import ohmtrail.survey.Reading;
import ohmtrail.survey.Survey;
import ohmtrail.survey.Tap;
import ohmtrail.survey.Test;
import ohmtrail.survey.Trip;

/**
 * One reading with the loads of its test and its own meter attached, the loads that follow their
 * voltage settled. Arrays hold volts or amperes per volt of supply or per ampere at the meter,
 * complex interleaved, one entry per port; they are shared for reading only.
 *
 * <p>A voltmeter or clamp shows what the supply drives; what shows ohms drives the circuit itself
 * with one ampere, the supply's own voltage being nothing to it.
 */
final class ReadingState {
  private final Placement placement;
  private final SettledNetwork settled;
  private final Observed observed;
  private final Elements ownElements;
  private final double[] driven;
  private final double[] towardsMeter;
  private final double perSupply;

  /**
   * What a meter shows: what stands or flows at a port, times a factor.
   *
   * @param port the port
   * @param factor one, or the admittance of the load whose current is shown
   * @param slopes how the factor depends on parameters
   */
  record Observed(int port, Complex factor, List<Wiring.Element> slopes) {
    static Observed at(int port) {
      return new Observed(port, Complex.ONE, List.of());
    }
  }

  private ReadingState(Placement placement, List<Attachment> series) {
    this.placement = placement;
    this.settled = placement.settle(series);
    this.observed = placement.observed(settled);
    this.ownElements = placement.elements(settled);
    double[] column = settled.attachments().responses(observed.port());
    this.driven = placement.followsSupply() ? settled.drivenBySupply() : column;
    double[] direct = adjoint(column);
    if (isLinear() || !placement.followsSupply()) {
      // What a loop tester reads hardly feels the loads; that they shift with it is left out.
      this.towardsMeter = direct;
      this.perSupply = shown().abs();
    } else {
      SettledNetwork.Sensitivity sensitivity =
          settled.answered(direct, shown(), placement.dependentAround());
      this.towardsMeter = sensitivity.toMeter();
      this.perSupply = sensitivity.perSupply();
    }
  }

  /** As {@link Wiring#signTowardsMeter} wants it, times the factor. */
  private double[] adjoint(double[] column) {
    Complex factor = observed.factor().times(wiring().signTowardsMeter(observed.port()));
    if (factor.re() == 1 && factor.im() == 0) {
      return column;
    }
    double[] scaled = new double[column.length];
    for (int i = 0; i < column.length; i += 2) {
      scaled[i] = column[i] * factor.re() - column[i + 1] * factor.im();
      scaled[i + 1] = column[i] * factor.im() + column[i + 1] * factor.re();
    }
    return scaled;
  }

  /** The test that the reading was taken in. */
  Test test() {
    return placement.test();
  }

  /** The network that it was taken in. */
  Wiring wiring() {
    return placement.wiring();
  }

  Attachments attachments() {
    return settled.attachments();
  }

  /** Whether what is shown is proportional to the voltage of the supply. */
  boolean followsSupply() {
    return placement.followsSupply();
  }

  /** Place of the parameter that the meter's gain is. */
  int gainPlace() {
    return placement.gainPlace();
  }

  double gain() {
    return placement.gain();
  }

  /** The loads and the meter as elements that depend on parameters. */
  Elements ownElements() {
    return ownElements;
  }

  /** How every port responds to the supply, per volt. */
  double[] drivenBySupply() {
    return settled.drivenBySupply();
  }

  /** How every port responds to what drives the reading. */
  double[] driven() {
    return driven;
  }

  /**
   * How every port responds to the meter: by reciprocity, how the meter responds to every port; the
   * answer of loads that follow their voltage is in it.
   */
  double[] towardsMeter() {
    return towardsMeter;
  }

  /** Change of what is shown per unit of ln of the supply voltage. */
  double perSupply() {
    return perSupply;
  }

  /** Whether every load of the test stays what it is, whatever its voltage. */
  boolean isLinear() {
    return placement.loads().dependent().isEmpty();
  }

  /** The same reading with ohms added in one more joint, the loads settled anew. */
  ReadingState with(Attachment added) {
    List<Attachment> series = new ArrayList<>(placement.series());
    series.add(added);
    return new ReadingState(placement, series);
  }

  /** What is shown as ohms are added in a joint, the loads settling anew at each value. */
  ToDoubleFunction<Attachment> swept(int gap) {
    if (placement.isPlainVoltage()) {
      SweptReading reading =
          new SweptReading(settled, gap, observed.port(), placement.sourceVolts());
      return reading::ratio;
    }
    return added -> with(added).shown().abs();
  }

  /** What the meter shows, but for its gain, per volt of supply or as ohms. */
  Complex shown() {
    return at(driven, observed.port()).times(observed.factor());
  }

  /**
   * Adds to slopes, sign reversed, how the factor of what is shown moves per unit of each
   * parameter.
   *
   * @param re what stands or flows at the port, real part
   * @param im the same, imaginary part
   */
  void addFactorSlopes(double re, double im, double[] slopes) {
    for (Wiring.Element element : observed.slopes()) {
      Complex slope = element.slope().times(new Complex(re, im));
      slopes[2 * element.parameter()] -= slope.re();
      slopes[2 * element.parameter() + 1] -= slope.im();
    }
  }

  /**
   * How what stands or flows at the port moves with ohms in a gap: its step, but for the factor.
   */
  Complex stepAtPort(int gap) {
    double sign = wiring().response().reciprocalSign(observed.port(), gap);
    Complex toMeter = at(attachments().responses(observed.port()), gap);
    return toMeter.times(at(driven, gap)).times(sign);
  }

  /** Whether the factor of what is shown depends on parameters. */
  boolean hasFactorSlopes() {
    return !observed.slopes().isEmpty();
  }

  /** What stands or flows at the port of the meter. */
  Complex atPort() {
    return at(driven, observed.port());
  }

  private static Complex at(double[] values, int port) {
    return new Complex(values[2 * port], values[2 * port + 1]);
  }

  /**
   * Where the meter and the loads of a reading are.
   *
   * @param meter what the meter and the loads that stay what they are put in place
   * @param series ohms that are there already
   */
  private record Placement(
      Test test,
      Reading reading,
      Circuit circuit,
      Parameters parameters,
      Wiring wiring,
      double sourceVolts,
      TestLoads loads,
      InPlace meter,
      List<Attachment> series,
      int gainPlace,
      double gain) {

    boolean followsSupply() {
      return reading.measurand().followsSupply();
    }

    boolean isPlainVoltage() {
      return reading.measurand() == Measurand.VOLTAGE;
    }

    SettledNetwork settle(List<Attachment> joints) {
      return SettledNetwork.of(
          wiring.response(),
          meter.shunts(),
          joints,
          loads.dependent(),
          sourceVolts,
          wiring::drivenBySupply);
    }

    Observed observed(SettledNetwork settled) {
      if (reading.tap() instanceof Tap.AroundLoad around) {
        LoadInUse use = loads.useOf(around);
        Complex admittance = loads.admittance(use, settled.point());
        int place = parameters.place(new Parameters.LoadKey(use.load()));
        int port = wiring.tapPort(use.tap(circuit));
        Complex slope = admittance.times(parameters.sigma(place));
        return new Observed(port, admittance, List.of(new Wiring.Element(port, place, slope)));
      }
      return Observed.at(wiring.tapPort(reading.tap()));
    }

    /** The load that a clamp is around, among those that follow their voltage. */
    OptionalInt dependentAround() {
      return reading.tap() instanceof Tap.AroundLoad around
          ? loads.dependentPlace(loads.useOf(around))
          : OptionalInt.empty();
    }

    Elements elements(SettledNetwork settled) {
      List<Wiring.Element> elements = new ArrayList<>(loads.elements(settled.point()));
      elements.addAll(meter.elements());
      return Elements.of(elements, wiring.response());
    }
  }

  /** A meter and the loads that stay what they are. */
  private record InPlace(Shunts shunts, List<Wiring.Element> elements) {}

  /** Attaches what each reading needs. */
  static final class Builder {
    private final Circuit circuit;
    private final Survey survey;
    private final Parameters parameters;
    private final double[] point;
    private final Map<Wiring.State, Wiring> wirings;
    private final List<Degradation> degradations;

    Builder(
        Circuit circuit,
        Survey survey,
        Parameters parameters,
        double[] point,
        Map<Wiring.State, Wiring> wirings,
        List<Degradation> degradations) {
      this.circuit = circuit;
      this.survey = survey;
      this.parameters = parameters;
      this.point = point;
      this.wirings = wirings;
      this.degradations = degradations;
    }

    ReadingState build(Test test, Reading reading) {
      Wiring wiring = Wiring.require(wirings, Wiring.State.of(test), "State");
      Meter meter = survey.meter(reading.meter());
      TestLoads loads = TestLoads.of(test, circuit, survey, parameters, point, wiring);
      int gainPlace = parameters.place(new Parameters.GainKey(meter.name()));
      InPlace inPlace = inPlace(loads, meter, wiring, meterPort(test, reading, wiring));
      List<Attachment> series = series(test, wiring, inPlace.elements());
      return new ReadingState(
          new Placement(
              test,
              reading,
              circuit,
              parameters,
              wiring,
              parameters.value(parameters.place(Parameters.Single.SUPPLY_VOLTAGE), point),
              loads,
              inPlace,
              series,
              gainPlace,
              parameters.all().get(gainPlace).factor(point[gainPlace])),
          series);
    }

    /** The moment at which somebody watched a GFCI or RCD. */
    TripState build(Test test, Trip trip) {
      Wiring wiring = Wiring.require(wirings, Wiring.State.of(test), "State");
      TestLoads loads = TestLoads.of(test, circuit, survey, parameters, point, wiring);
      ResidualCurrentDevice device =
          circuit.residualCurrentDevices().stream()
              .filter(each -> each.box().equals(trip.device()))
              .findFirst()
              .orElseThrow();
      Set<Integer> guarded = new LinkedHashSet<>();
      TripState.guarded(circuit, device)
          .forEach(joint -> guarded.add(wiring.jointPort(joint.id())));
      Shunts shunts =
          trip.probe()
              .map(
                  probe ->
                      TripState.withMeter(
                          loads.constant(),
                          wiring,
                          survey.meter(probe.meter()),
                          wiring.tapPort(probe.tap())))
              .orElse(loads.constant());
      return new TripState(
          wiring,
          parameters.value(parameters.place(Parameters.Single.SUPPLY_VOLTAGE), point),
          loads,
          shunts,
          series(test, wiring, new ArrayList<>()),
          guarded);
    }

    private int meterPort(Test test, Reading reading, Wiring wiring) {
      return reading.tap() instanceof Tap.AroundLoad around
          ? wiring.tapPort(survey.useOf(test, around).orElseThrow().tap(circuit))
          : wiring.tapPort(reading.tap());
    }

    private InPlace inPlace(TestLoads loads, Meter meter, Wiring wiring, int port) {
      Shunts shunts = new Shunts(loads.constant());
      List<Wiring.Element> elements = new ArrayList<>();
      if (meter.measurand() == Measurand.VOLTAGE) {
        int place = parameters.place(new Parameters.MeterOhmsKey(meter.name()));
        Complex conductance = Complex.real(1 / parameters.value(place, point));
        shunts.add(port, conductance);
        // More ohms are fewer siemens.
        elements.add(new Wiring.Element(port, place, conductance.times(-parameters.sigma(place))));
        if (meter.inputFarads() > 0) {
          shunts.add(port, new Complex(0, wiring.omega() * meter.inputFarads()));
        }
      } else if (meter.measurand() != Measurand.CURRENT) {
        shunts.add(port, Complex.real(1 / meter.greatest()));
      }
      return new InPlace(shunts, elements);
    }

    private List<Attachment> series(Test test, Wiring wiring, List<Wiring.Element> elements) {
      return degradations.stream()
          .filter(degradation -> degradation.when().covers(test))
          .map(each -> degrade(each, wiring, elements))
          .toList();
    }

    /**
     * The ohms of a degraded joint in its gap, and how they follow their parameter if they have
     * one.
     */
    private Attachment degrade(
        Degradation degradation, Wiring wiring, List<Wiring.Element> elements) {
      int port = wiring.jointPort(degradation.joint());
      OptionalInt place = parameters.placeOf(degradation);
      if (place.isEmpty()) {
        return Attachment.series(port, degradation.ohms());
      }
      double ohms = parameters.value(place.getAsInt(), point);
      double slope = ohms * parameters.slope(place.getAsInt(), point);
      elements.add(new Wiring.Element(port, place.getAsInt(), Complex.real(slope)));
      return Attachment.series(port, ohms);
    }
  }
}
