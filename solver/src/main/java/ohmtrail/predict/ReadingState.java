package ohmtrail.predict;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import ohmtrail.circuit.Circuit;
import ohmtrail.network.Attachment;
import ohmtrail.network.Attachments;
import ohmtrail.network.Complex;
import ohmtrail.survey.Isolation;
import ohmtrail.survey.LoadInUse;
import ohmtrail.survey.Measurand;
import ohmtrail.survey.Meter;
import ohmtrail.survey.Reading;
import ohmtrail.survey.Survey;
import ohmtrail.survey.Tap;
import ohmtrail.survey.Test;

/**
 * One reading with the loads of its test and its own meter attached. Arrays hold volts or amperes
 * per volt of supply or per ampere at the meter, complex interleaved, one entry per port; they are
 * shared for reading only.
 *
 * <p>A voltmeter or clamp shows what the supply drives; what shows ohms drives the circuit itself
 * with one ampere, the supply's own voltage being nothing to it.
 */
final class ReadingState {
  private final Test test;
  private final Wiring wiring;
  private final Attachments attachments;
  private final Observed observed;
  private final boolean followsSupply;
  private final int gainPlace;
  private final double gain;
  private final Elements ownElements;
  private final double[] drivenBySupply;
  private final double[] driven;
  private final double[] towardsMeter;

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

  private ReadingState(
      Test test,
      Wiring wiring,
      Attachments attachments,
      Observed observed,
      boolean followsSupply,
      int gainPlace,
      double gain,
      Elements ownElements) {
    this.test = test;
    this.wiring = wiring;
    this.attachments = attachments;
    this.observed = observed;
    this.followsSupply = followsSupply;
    this.gainPlace = gainPlace;
    this.gain = gain;
    this.ownElements = ownElements;
    this.drivenBySupply = wiring.drivenBySupply(attachments);
    double[] column = attachments.responses(observed.port());
    this.driven = followsSupply ? drivenBySupply : column;
    this.towardsMeter = adjoint(column);
  }

  /** As {@link Wiring#signTowardsMeter} wants it, times the factor. */
  private double[] adjoint(double[] column) {
    Complex factor = observed.factor().times(wiring.signTowardsMeter(observed.port()));
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
    return test;
  }

  /** The network that it was taken in. */
  Wiring wiring() {
    return wiring;
  }

  Attachments attachments() {
    return attachments;
  }

  /** Whether what is shown is proportional to the voltage of the supply. */
  boolean followsSupply() {
    return followsSupply;
  }

  /** Place of the parameter that the meter's gain is. */
  int gainPlace() {
    return gainPlace;
  }

  double gain() {
    return gain;
  }

  /** The loads and the meter as elements that depend on parameters. */
  Elements ownElements() {
    return ownElements;
  }

  /** How every port responds to the supply, per volt. */
  double[] drivenBySupply() {
    return drivenBySupply;
  }

  /** How every port responds to what drives the reading. */
  double[] driven() {
    return driven;
  }

  /** How every port responds to the meter: by reciprocity, how the meter responds to every port. */
  double[] towardsMeter() {
    return towardsMeter;
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
    double sign = wiring.response().reciprocalSign(observed.port(), gap);
    Complex toMeter = at(attachments.responses(observed.port()), gap);
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

  /** Attaches what each reading needs. */
  static final class Builder {
    private final Circuit circuit;
    private final Survey survey;
    private final Parameters parameters;
    private final double[] point;
    private final Map<Optional<Isolation>, Wiring> wirings;
    private final List<Degradation> degradations;

    Builder(
        Circuit circuit,
        Survey survey,
        Parameters parameters,
        double[] point,
        Map<Optional<Isolation>, Wiring> wirings,
        List<Degradation> degradations) {
      this.circuit = circuit;
      this.survey = survey;
      this.parameters = parameters;
      this.point = point;
      this.wirings = wirings;
      this.degradations = degradations;
    }

    ReadingState build(Test test, Reading reading) {
      Wiring wiring = Wiring.require(wirings, test.isolation(), "Isolation");
      Meter meter = survey.meter(reading.meter());
      Shunts shunts = new Shunts(wiring);
      test.loads().forEach(use -> addLoad(shunts, use));
      Observed observed = observed(shunts, test, reading);
      addMeter(shunts, meter, observed.port());
      List<Attachment> attachments = shunts.attachments();
      degradations.stream()
          .filter(degradation -> degradation.when().covers(test))
          .forEach(each -> attachments.add(degrade(each, shunts)));
      int gainPlace = parameters.place(new Parameters.GainKey(meter.name()));
      return new ReadingState(
          test,
          wiring,
          Attachments.to(wiring.response(), attachments),
          observed,
          reading.measurand().followsSupply(),
          gainPlace,
          factor(gainPlace),
          Elements.of(shunts.elements, wiring.response()));
    }

    private Observed observed(Shunts shunts, Test test, Reading reading) {
      if (reading.tap() instanceof Tap.AroundLoad around) {
        LoadInUse use = test.useOf(around).orElseThrow();
        Complex admittance = admittance(use);
        int place = place(use);
        int port = shunts.wiring.tapPort(use.tap(circuit));
        Complex slope = admittance.times(parameters.sigma(place));
        return new Observed(port, admittance, List.of(new Wiring.Element(port, place, slope)));
      }
      return Observed.at(shunts.wiring.tapPort(reading.tap()));
    }

    private int place(LoadInUse use) {
      return parameters.place(new Parameters.LoadKey(use.load()));
    }

    /**
     * The ohms of a degraded joint in its gap, and how they follow their parameter if they have
     * one.
     */
    private Attachment degrade(Degradation degradation, Shunts shunts) {
      int port = shunts.wiring.jointPort(degradation.joint());
      OptionalInt place = parameters.placeOf(degradation);
      if (place.isEmpty()) {
        return Attachment.series(port, degradation.ohms());
      }
      double ohms = parameters.value(place.getAsInt(), point);
      double slope = ohms * parameters.slope(place.getAsInt(), point);
      shunts.elements.add(new Wiring.Element(port, place.getAsInt(), Complex.real(slope)));
      return Attachment.series(port, ohms);
    }

    private void addLoad(Shunts shunts, LoadInUse use) {
      int place = place(use);
      shunts.add(
          shunts.wiring.tapPort(use.tap(circuit)), admittance(use), place, parameters.sigma(place));
    }

    private Complex admittance(LoadInUse use) {
      return Complex.real(survey.load(use.load()).ratedSiemens() * factor(place(use)));
    }

    private void addMeter(Shunts shunts, Meter meter, int port) {
      if (meter.measurand() == Measurand.VOLTAGE) {
        int place = parameters.place(new Parameters.MeterOhmsKey(meter.name()));
        Complex conductance = Complex.real(1 / parameters.value(place, point));
        // More ohms are fewer siemens.
        shunts.add(port, conductance, place, -parameters.sigma(place));
        if (meter.inputFarads() > 0) {
          shunts.addFixed(port, new Complex(0, shunts.wiring.omega() * meter.inputFarads()));
        }
      } else if (meter.measurand() != Measurand.CURRENT) {
        shunts.addFixed(port, Complex.real(1 / meter.greatest()));
      }
    }

    private double factor(int place) {
      return parameters.all().get(place).factor(point[place]);
    }
  }

  /** Admittances by port: what is plugged in beside the meter shares its port. */
  private static final class Shunts {
    private final Wiring wiring;
    private final List<Integer> ports = new ArrayList<>();
    private final List<Complex> admittances = new ArrayList<>();
    private final List<Wiring.Element> elements = new ArrayList<>();

    Shunts(Wiring wiring) {
      this.wiring = wiring;
    }

    void add(int port, Complex admittance, int parameter, double sigma) {
      addFixed(port, admittance);
      elements.add(new Wiring.Element(port, parameter, admittance.times(sigma)));
    }

    void addFixed(int port, Complex admittance) {
      int place = ports.indexOf(port);
      if (place < 0) {
        ports.add(port);
        admittances.add(admittance);
      } else {
        admittances.set(place, admittances.get(place).plus(admittance));
      }
    }

    List<Attachment> attachments() {
      List<Attachment> result = new ArrayList<>();
      for (int i = 0; i < ports.size(); i++) {
        result.add(Attachment.shunt(ports.get(i), admittances.get(i)));
      }
      return result;
    }
  }
}
