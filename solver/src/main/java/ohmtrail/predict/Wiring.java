package ohmtrail.predict;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import ohmtrail.circuit.Circuit;
import ohmtrail.network.Attachments;
import ohmtrail.network.Complex;
import ohmtrail.network.Elimination;
import ohmtrail.network.Port;
import ohmtrail.network.PortResponse;
import ohmtrail.reference.Assumptions;
import ohmtrail.survey.Isolation;
import ohmtrail.survey.Tap;
import ohmtrail.survey.Test;

/**
 * A healthy circuit as a network: one node per conductor on each side of each joint, numbered from
 * the supply outward, with half of each cable's capacitance at each of its ends. Loads and meters
 * are not in it; they are attached per reading.
 *
 * <p>The neutral bar is bonded to the ground bar, which is the reference. Half of the supply's
 * impedance lies in the hot and half in the neutral of the service; a joint on the supply side is
 * in series with either, its sound ohms being part of that impedance.
 */
final class Wiring {
  /**
   * Something whose size depends on a parameter.
   *
   * @param port the gap it lies in or the pair it lies across
   * @param parameter place of the parameter
   * @param slope change of the impedance (gap) or admittance (pair) per unit of u
   */
  record Element(int port, int parameter, Complex slope) {}

  /**
   * One leg of the supply.
   *
   * @param port the gap that its voltage drives
   * @param perVolt its voltage per volt of nominal: where it points to
   */
  record Source(int port, Complex perVolt) {}

  /**
   * What decides how a circuit is laid out beside the circuit itself.
   *
   * @param isolation how it was made dead; empty while the breaker is on
   * @param open boxes whose switch is open
   */
  record State(Optional<Isolation> isolation, Set<String> open) {
    /** That of a test. */
    static State of(Test test) {
      return new State(test.isolation(), test.switching().open());
    }
  }

  private final PortResponse response;
  private final List<Source> sources;
  private final Map<String, Integer> jointPorts;
  private final Map<Tap, Integer> tapPorts;
  private final Elements elements;

  private final double omega;

  private Wiring(PortResponse response, Layout layout) {
    this.response = response;
    this.omega = layout.omega();
    this.sources = List.copyOf(layout.sources());
    this.jointPorts = layout.jointPorts();
    this.tapPorts = layout.tapPorts();
    this.elements = Elements.of(layout.elements(), response);
  }

  private Wiring(PortResponse response, Wiring same) {
    this.response = response;
    this.omega = same.omega;
    this.sources = same.sources;
    this.jointPorts = same.jointPorts;
    this.tapPorts = same.tapPorts;
    this.elements = same.elements;
  }

  /**
   * What a wiring is there for beside the supply: only these ports are driven.
   *
   * @param watched what is looked at; a meter may be put there by {@link #driving}
   * @param taps where loads and meters will be put
   * @param joints the ids of the joints that ohms are in from the start; any other joint is had by
   *     {@link #driving}
   */
  record Use(Set<Tap> watched, Set<Tap> taps, Set<String> joints) {}

  /**
   * Lays out and solves. Time and room grow with the boxes times the taps and joints of the use.
   *
   * @param circuit the circuit
   * @param assumptions for healthy joints and temperature
   * @param parameters the parameters
   * @param point u of each parameter
   * @param state what was switched
   * @param use what it is there for
   */
  static Wiring of(
      Circuit circuit,
      Assumptions assumptions,
      Parameters parameters,
      double[] point,
      State state,
      Use use) {
    Layout layout = new Layout(circuit, assumptions, parameters, point, state);
    layout.build();
    List<Integer> excited = new ArrayList<>();
    layout.sources().forEach(source -> excited.add(source.port()));
    use.joints().forEach(joint -> excited.add(require(layout.jointPorts(), joint, "Joint")));
    use.taps().forEach(tap -> excited.add(layout.addTap(tap)));
    use.watched().stream().filter(tap -> !use.taps().contains(tap)).forEach(layout::addTap);
    Elimination elimination = Elimination.of(layout.network());
    return new Wiring(PortResponse.of(elimination, layout.ports(), excited), layout);
  }

  /**
   * The same with one more port to put something at, the gap of a joint or what a meter is held to:
   * one substitution, kept as long as the result.
   */
  Wiring driving(int port) {
    PortResponse more = response.driving(port);
    return more == response ? this : new Wiring(more, this);
  }

  PortResponse response() {
    return response;
  }

  /**
   * How every port responds to the supply, per volt of its nominal voltage: complex interleaved.
   *
   * @param attached what is in place
   */
  double[] drivenBySupply(Attachments attached) {
    double[] total = attached.responses(sources.get(0).port());
    for (Source source : sources.subList(1, sources.size())) {
      double[] share = attached.responses(source.port());
      double re = source.perVolt().re();
      double im = source.perVolt().im();
      for (int i = 0; i < total.length; i += 2) {
        total[i] += re * share[i] - im * share[i + 1];
        total[i + 1] += re * share[i + 1] + im * share[i];
      }
    }
    return total;
  }

  /** How one port responds to the supply, likewise. */
  Complex drivenBySupply(Attachments attached, int port) {
    Complex total = attached.transfer(port, sources.get(0).port());
    for (Source source : sources.subList(1, sources.size())) {
      total = total.plus(attached.transfer(port, source.port()).times(source.perVolt()));
    }
    return total;
  }

  /** The legs of the supply. */
  List<Source> sources() {
    return sources;
  }

  int jointPort(String joint) {
    return require(jointPorts, joint, "Joint");
  }

  int tapPort(Tap tap) {
    return require(tapPorts, tap, "Tap");
  }

  /**
   * Reciprocity between a meter that touches two points and a port. A meter that is closed around a
   * conductor takes the same sign, its own column reversed.
   */
  double signTowardsMeter(int port) {
    return response.ports().get(port) instanceof Port.Gap ? -1 : 1;
  }

  /** Angular frequency of the supply, radians per second. */
  double omega() {
    return omega;
  }

  /** Everything in it that depends on a parameter. */
  Elements elements() {
    return elements;
  }

  static <K, V> V require(Map<K, V> known, K key, String what) {
    V value = known.get(key);
    if (value == null) {
      throw new IllegalArgumentException(
          what + " (" + key + ") must be one of those that the circuit was laid out with");
    }
    return value;
  }
}
