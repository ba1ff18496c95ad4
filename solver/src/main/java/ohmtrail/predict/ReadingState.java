package ohmtrail.predict;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.function.ToDoubleFunction;
import ohmtrail.circuit.Circuit;
import ohmtrail.network.Attachment;
import ohmtrail.network.Attachments;
import ohmtrail.network.Complex;
import ohmtrail.predict.operating.SettledNetwork;
import ohmtrail.predict.operating.Shunts;
import ohmtrail.predict.operating.SweptReading;
import ohmtrail.survey.LoadInUse;
import ohmtrail.survey.Measurand;
import ohmtrail.survey.Test;

/**
 * One reading with the loads of its test and its own meter attached, the loads that follow their
 * voltage settled. Arrays hold volts or amperes per volt of supply or per ampere at the meter,
 * complex interleaved, one entry per port; they are shared for reading only.
 *
 * <p>A voltmeter or clamp shows what the supply drives; what shows ohms drives the circuit itself
 * with one ampere, the supply's own voltage being nothing to it. A GFCI or RCD that somebody
 * watched is read like an ammeter: it shows the sum of what leaves it.
 */
final class ReadingState {
  /**
   * Of a circuit with more ports the columns of a reading are not kept but worked out when they are
   * asked for: of 200 boxes and 400 readings they are 60 MB at each point of the parameters.
   */
  private static final int MOST_PORTS_KEPT = 2000;

  private final Placement placement;
  private final SettledNetwork settled;
  private final Observed observed;
  private final Elements ownElements;

  /** How every port responds; empty where they are worked out when they are asked for. */
  private final Optional<Columns> columns;

  private final Complex atPort;
  private final double perSupply;

  /** How every port responds to what drives the reading, and to its meter. */
  private static final class Columns {
    private final double[] driven;
    private final double[] towardsMeter;

    Columns(double[] driven, double[] towardsMeter) {
      this.driven = driven;
      this.towardsMeter = towardsMeter;
    }
  }

  /**
   * What a meter shows: what stands or flows at a port, or the sum of what flows at several, times
   * a factor.
   *
   * @param ports the port; several where a device sees the sum of several currents, all of them
   *     gaps
   * @param factor one, or the admittance of the load whose current is shown
   * @param slopes how the factor depends on parameters
   */
  record Observed(List<Integer> ports, Complex factor, List<Wiring.Element> slopes) {
    static Observed plain(List<Integer> ports) {
      return new Observed(ports, Complex.ONE, List.of());
    }

    /** One of the ports: the others are of its kind. */
    int port() {
      return ports.get(0);
    }

    /** What stands or flows there, of the responses of every port. */
    Complex of(double[] responses) {
      Complex sum = at(responses, ports.get(0));
      for (int port : ports.subList(1, ports.size())) {
        sum = sum.plus(at(responses, port));
      }
      return sum;
    }

    /** How one port responds to one unit at each of them. */
    Complex seenFrom(Attachments attachments, int port) {
      Complex sum = Complex.ZERO;
      for (int each : ports) {
        sum = sum.plus(attachments.transfer(port, each));
      }
      return sum;
    }

    /** How every port responds to one unit at each of them. */
    double[] column(Attachments attachments) {
      double[] first = attachments.responses(ports.get(0));
      if (ports.size() == 1) {
        return first;
      }
      double[] sum = first.clone();
      for (int port : ports.subList(1, ports.size())) {
        double[] more = attachments.responses(port);
        for (int i = 0; i < sum.length; i++) {
          sum[i] += more[i];
        }
      }
      return sum;
    }
  }

  ReadingState(Placement placement, List<Attachment> series) {
    this(placement, placement.wiring(), series);
  }

  /** With a wiring in which the gap of every ohm is driven. */
  private ReadingState(Placement placement, Wiring ready, List<Attachment> series) {
    this.placement = placement;
    SettledNetwork whole = placement.settle(ready, series);
    this.observed = placement.observed(whole);
    this.ownElements = placement.elements(whole);
    double[] column = observed.column(whole.attachments());
    double[] driven = placement.followsSupply() ? whole.drivenBySupply() : column;
    this.atPort = observed.of(driven);
    double[] direct = adjoint(column);
    if (isLinear() || !placement.followsSupply()) {
      // What a loop tester reads hardly feels the loads; that they shift with it is left out.
      boolean isKept = keepsColumns(column.length / 2);
      this.columns = isKept ? Optional.of(new Columns(driven, direct)) : Optional.empty();
      this.settled = isKept ? whole : whole.withoutColumns();
      this.perSupply = shown().abs();
    } else {
      SettledNetwork.Sensitivity sensitivity =
          whole.answered(direct, shown(), placement.dependentAround());
      this.columns = Optional.of(new Columns(driven, sensitivity.toMeter()));
      this.settled = whole;
      this.perSupply = sensitivity.perSupply();
    }
  }

  private Complex towardsMeterFactor() {
    return observed.factor().times(wiring().signTowardsMeter(observed.port()));
  }

  /** As {@link Wiring#signTowardsMeter} wants it, times the factor. */
  private double[] adjoint(double[] column) {
    Complex factor = towardsMeterFactor();
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

  /** Whether the columns of the readings of a circuit with so many ports are kept. */
  static boolean keepsColumns(long ports) {
    return ports <= MOST_PORTS_KEPT;
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

  /** Place of the parameter that the meter's gain is; a GFCI or RCD has none. */
  OptionalInt gainPlace() {
    return placement.gainPlace();
  }

  double gain() {
    return placement.gain();
  }

  /** Voltage of the supply in the test. */
  double sourceVolts() {
    return placement.sourceVolts();
  }

  /** Places of the steps of the supply up to the test among the parameters. */
  List<Integer> steps() {
    return placement.steps();
  }

  /** The loads and the meter as elements that depend on parameters. */
  Elements ownElements() {
    return ownElements;
  }

  /** How every port responds to what drives the reading. */
  double[] driven() {
    return columns
        .map(kept -> kept.driven)
        .orElseGet(
            () ->
                placement.followsSupply()
                    ? wiring().drivenBySupply(attachments())
                    : observed.column(attachments()));
  }

  /** How one port responds to what drives the reading. */
  Complex drivenAt(int port) {
    return columns
        .map(kept -> at(kept.driven, port))
        .orElseGet(
            () ->
                placement.followsSupply()
                    ? wiring().drivenBySupply(attachments(), port)
                    : observed.seenFrom(attachments(), port));
  }

  /**
   * How every port responds to the meter: by reciprocity, how the meter responds to every port; the
   * answer of loads that follow their voltage is in it.
   */
  double[] towardsMeter() {
    return columns
        .map(kept -> kept.towardsMeter)
        .orElseGet(() -> adjoint(observed.column(attachments())));
  }

  /** How one port responds to the meter. */
  Complex towardsMeterAt(int port) {
    return columns
        .map(kept -> at(kept.towardsMeter, port))
        .orElseGet(() -> observed.seenFrom(attachments(), port).times(towardsMeterFactor()));
  }

  /** Change of what is shown per unit of ln of the supply voltage. */
  double perSupply() {
    return perSupply;
  }

  /** Whether every load of the test stays what it is, whatever its voltage. */
  boolean isLinear() {
    return placement.loads().dependent().isEmpty();
  }

  /**
   * The same reading with ohms added in one more joint, the loads settled anew.
   *
   * @param ready its wiring, ready for ohms in that joint
   */
  ReadingState with(Wiring ready, Attachment added) {
    List<Attachment> series = new ArrayList<>(placement.series());
    series.add(added);
    return new ReadingState(placement, ready, series);
  }

  /**
   * What is shown as ohms are added in a joint, the loads settling anew at each value.
   *
   * @param ready its wiring, ready for ohms in that joint; not kept
   */
  ToDoubleFunction<Attachment> swept(Wiring ready, int gap) {
    if (placement.isPlainVoltage()) {
      SweptReading reading =
          new SweptReading(
              settled.through(ready.response()), gap, observed.port(), placement.sourceVolts());
      return reading::ratio;
    }
    return added -> with(wiring().driving(gap), added).shown().abs();
  }

  /** What the meter shows, but for its gain, per volt of supply or as ohms. */
  Complex shown() {
    return atPort.times(observed.factor());
  }

  /**
   * What the meter shows, its gain in it.
   *
   * @param sourceVolts voltage of the supply
   * @return not negative, in the unit of what is read
   */
  double magnitude(double sourceVolts) {
    Complex shown = shown();
    double scale = followsSupply() ? gain() * sourceVolts : gain();
    return scale * Math.sqrt(shown.re() * shown.re() + shown.im() * shown.im());
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
    return observed.seenFrom(attachments(), gap).times(drivenAt(gap)).times(sign);
  }

  /** Whether the factor of what is shown depends on parameters. */
  boolean hasFactorSlopes() {
    return !observed.slopes().isEmpty();
  }

  /** What stands or flows at the port of the meter. */
  Complex atPort() {
    return atPort;
  }

  private static Complex at(double[] values, int port) {
    return new Complex(values[2 * port], values[2 * port + 1]);
  }

  /**
   * Where the meter and the loads of a reading are.
   *
   * @param measurand what is read
   * @param ports what is observed, but for the load that a clamp is around
   * @param around that load
   * @param sourceVolts voltage of the supply in that test
   * @param steps places of the steps of the supply up to it among the parameters
   * @param meter what the meter and the loads that stay what they are put in place
   * @param series ohms that are there already
   * @param gainPlace place of the meter's gain among the parameters, if it has one
   */
  record Placement(
      Test test,
      Measurand measurand,
      List<Integer> ports,
      Optional<LoadInUse> around,
      Circuit circuit,
      Parameters parameters,
      Wiring wiring,
      double sourceVolts,
      List<Integer> steps,
      TestLoads loads,
      InPlace meter,
      List<Attachment> series,
      OptionalInt gainPlace,
      double gain) {

    boolean followsSupply() {
      return measurand.followsSupply();
    }

    boolean isPlainVoltage() {
      return measurand == Measurand.VOLTAGE;
    }

    SettledNetwork settle(Wiring ready, List<Attachment> joints) {
      return SettledNetwork.of(
          ready.response(),
          meter.shunts(),
          joints,
          loads.dependent(),
          sourceVolts,
          wiring::drivenBySupply);
    }

    Observed observed(SettledNetwork settled) {
      if (around.isPresent()) {
        LoadInUse use = around.get();
        Complex admittance = loads.admittance(use, settled.point());
        int place = parameters.place(new Parameters.LoadKey(use.load()));
        int port = wiring.tapPort(use.tap(circuit));
        Complex slope = admittance.times(parameters.sigma(place));
        return new Observed(
            List.of(port), admittance, List.of(new Wiring.Element(port, place, slope)));
      }
      return Observed.plain(ports);
    }

    /** The load that a clamp is around, among those that follow their voltage. */
    OptionalInt dependentAround() {
      return around.isPresent() ? loads.dependentPlace(around.get()) : OptionalInt.empty();
    }

    Elements elements(SettledNetwork settled) {
      List<Wiring.Element> elements = new ArrayList<>(loads.elements(settled.point()));
      elements.addAll(meter.elements());
      return Elements.of(elements, wiring.response());
    }
  }

  /** A meter and the loads that stay what they are. */
  record InPlace(Shunts shunts, List<Wiring.Element> elements) {
    /** The loads alone, to put a meter beside. */
    static InPlace of(TestLoads loads) {
      return new InPlace(new Shunts(loads.constant()), new ArrayList<>());
    }
  }
}
