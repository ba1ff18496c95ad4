package ohmtrail.predict;

import java.util.ArrayList;
import java.util.List;
import ohmtrail.circuit.Circuit;
import ohmtrail.network.Attachment;
import ohmtrail.network.Attachments;
import ohmtrail.network.Complex;
import ohmtrail.survey.LoadInUse;
import ohmtrail.survey.Meter;
import ohmtrail.survey.Reading;
import ohmtrail.survey.Survey;
import ohmtrail.survey.Test;
import ohmtrail.survey.load.Load;

/**
 * One reading with the loads of its test and its own meter attached. Arrays hold volts or amperes
 * per volt of supply (or per ampere at the meter), complex interleaved, one entry per port; they
 * are shared for reading only.
 */
final class ReadingState {
  private final Test test;
  private final Attachments attachments;
  private final int meterPort;
  private final int gainPlace;
  private final double gain;
  private final Elements ownElements;
  private final double[] drivenBySupply;
  private final double[] towardsMeter;

  private ReadingState(
      Test test,
      Attachments attachments,
      double[] drivenBySupply,
      int meterPort,
      int gainPlace,
      double gain,
      Elements ownElements) {
    this.test = test;
    this.attachments = attachments;
    this.meterPort = meterPort;
    this.gainPlace = gainPlace;
    this.gain = gain;
    this.ownElements = ownElements;
    this.drivenBySupply = drivenBySupply;
    this.towardsMeter = attachments.responses(meterPort);
  }

  /** The test that the reading was taken in. */
  Test test() {
    return test;
  }

  Attachments attachments() {
    return attachments;
  }

  int meterPort() {
    return meterPort;
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

  /** How every port responds to the supply. */
  double[] drivenBySupply() {
    return drivenBySupply;
  }

  /**
   * How every port responds to a current at the meter: by reciprocity, how the meter responds to
   * every port.
   */
  double[] towardsMeter() {
    return towardsMeter;
  }

  /** Attaches what each reading needs. */
  static final class Builder {
    private final Circuit circuit;
    private final Survey survey;
    private final Parameters parameters;
    private final double[] point;
    private final Wiring wiring;
    private final List<Degradation> degradations;

    Builder(
        Circuit circuit,
        Survey survey,
        Parameters parameters,
        double[] point,
        Wiring wiring,
        List<Degradation> degradations) {
      this.circuit = circuit;
      this.survey = survey;
      this.parameters = parameters;
      this.point = point;
      this.wiring = wiring;
      this.degradations = degradations;
    }

    ReadingState build(Test test, Reading reading) {
      Meter meter = survey.meter(reading.meter());
      int meterPort = wiring.probePort(Wiring.Probe.of(reading));
      Shunts shunts = new Shunts();
      test.loads().forEach(use -> addLoad(shunts, use));
      addMeter(shunts, meter, meterPort);
      List<Attachment> attachments = shunts.attachments();
      degradations.stream()
          .filter(degradation -> degradation.when().covers(test))
          .map(each -> Attachment.series(wiring.jointPort(each.joint()), each.ohms()))
          .forEach(attachments::add);
      int gainPlace = parameters.place(new Parameters.GainKey(meter.name()));
      Attachments attached = Attachments.to(wiring.response(), attachments);
      return new ReadingState(
          test,
          attached,
          wiring.drivenBySupply(attached),
          meterPort,
          gainPlace,
          factor(gainPlace),
          Elements.of(shunts.elements, wiring.response(), meterPort));
    }

    private void addLoad(Shunts shunts, LoadInUse use) {
      Load load = survey.load(use.load());
      int place = parameters.place(new Parameters.LoadKey(load.name()));
      Complex admittance = Complex.real(load.ratedSiemens() * factor(place));
      shunts.add(
          wiring.probePort(Wiring.Probe.of(use, circuit)),
          admittance,
          place,
          parameters.sigma(place));
    }

    private void addMeter(Shunts shunts, Meter meter, int meterPort) {
      int place = parameters.place(new Parameters.MeterOhmsKey(meter.name()));
      Complex conductance = Complex.real(1 / parameters.value(place, point));
      // More ohms are fewer siemens.
      shunts.add(meterPort, conductance, place, -parameters.sigma(place));
      if (meter.inputFarads() > 0) {
        shunts.addFixed(meterPort, new Complex(0, wiring.omega() * meter.inputFarads()));
      }
    }

    private double factor(int place) {
      return parameters.all().get(place).factor(point[place]);
    }
  }

  /** Admittances by port: what is plugged in beside the meter shares its port. */
  private static final class Shunts {
    private final List<Integer> ports = new ArrayList<>();
    private final List<Complex> admittances = new ArrayList<>();
    private final List<Wiring.Element> elements = new ArrayList<>();

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
