package ohmtrail.predict;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.IntFunction;
import ohmtrail.network.Attachment;
import ohmtrail.network.Attachments;
import ohmtrail.network.Complex;
import ohmtrail.predict.operating.SettledNetwork;

/**
 * A circuit with the loads of one test on: currents and voltages as ohms are added in any one
 * joint, from nothing to open, without solving again.
 *
 * <p>With w what a port shows while the joint is sound, i0 the current through the joint, y the
 * admittance seen in its gap and t the transfer from there, a port shows w - t i0 k, where k = R/(1
 * + y R). Loads that follow their voltage settle anew for every joint and value. No meter is on.
 * Immutable but for what it has worked out once.
 */
public final class LoadState {
  /** Ohms above which a joint is as good as open: k is 1/y to the last digit. */
  private static final double OPEN_OHMS = 1e15;

  private final Wiring wiring;
  private final TestLoads loads;
  private final Attachments attachments;
  private final List<Integer> receptacles;
  private final double sourceVolts;
  private final double[] perVolt;
  private final List<Integer> sources;
  private final Map<Integer, Map<Integer, Complex>> transfers = new ConcurrentHashMap<>();

  LoadState(Wiring wiring, TestLoads loads, List<Integer> receptacles, double sourceVolts) {
    this.wiring = wiring;
    this.loads = loads;
    this.receptacles = List.copyOf(receptacles);
    this.sourceVolts = sourceVolts;
    SettledNetwork sound = settled(wiring, List.of());
    this.attachments = sound.attachments();
    this.perVolt = sound.drivenBySupply();
    this.sources = wiring.sources().stream().map(source -> source.port()).toList();
  }

  private SettledNetwork settled(Wiring ready, List<Attachment> series) {
    return SettledNetwork.of(
        ready.response(),
        loads.constant(),
        series,
        loads.dependent(),
        sourceVolts,
        wiring::drivenBySupply);
  }

  /**
   * The current through a joint with ohms added in it.
   *
   * @param joint its id
   * @param ohms added, not negative, infinity for open
   * @return amperes, root mean square
   */
  public double jointAmperes(String joint, double ohms) {
    return highest(List.of(wiring.jointPort(joint)), joint, ohms);
  }

  /**
   * The current that the circuit draws from the supply, or from the leg that it draws most from,
   * with ohms added in a joint; amperes.
   */
  public double supplyAmperes(String joint, double ohms) {
    return highest(sources, joint, ohms);
  }

  /**
   * The highest voltage between a live conductor and neutral at any receptacle, with ohms added in
   * a joint; volts.
   */
  public double highestVolts(String joint, double ohms) {
    return highest(receptacles, joint, ohms);
  }

  private double highest(List<Integer> ports, String joint, double ohms) {
    IntFunction<Complex> shown = shown(joint, ohms);
    return ports.stream()
        .mapToDouble(port -> sourceVolts * magnitude(shown.apply(port)))
        .max()
        .orElse(0);
  }

  /** What each port shows per volt of the supply. */
  private IntFunction<Complex> shown(String joint, double ohms) {
    if (ohms == 0) {
      return this::at;
    }
    int gap = wiring.jointPort(joint);
    if (!loads.dependent().isEmpty()) {
      double[] shown =
          settled(wiring.driving(gap), List.of(Attachment.series(gap, ohms))).drivenBySupply();
      return port -> new Complex(shown[2 * port], shown[2 * port + 1]);
    }
    Map<Integer, Complex> transfers = transfers(gap);
    double bounded = Math.min(ohms, OPEN_OHMS);
    Complex loop = Complex.ONE.plus(transfer(transfers, gap).times(bounded));
    Complex current = at(gap).dividedBy(loop);
    Complex drop = current.times(bounded);
    return port -> port == gap ? current : at(port).minus(transfer(transfers, port).times(drop));
  }

  /** From the gap of a joint to every port that is asked for; worked out once. */
  private Map<Integer, Complex> transfers(int gap) {
    return transfers.computeIfAbsent(
        gap,
        from -> {
          Map<Integer, Complex> to = new HashMap<>();
          Attachments driving = attachments.through(wiring.driving(from).response());
          to.put(from, driving.transfer(from, from));
          receptacles.forEach(port -> to.put(port, driving.transfer(port, from)));
          sources.forEach(port -> to.put(port, driving.transfer(port, from)));
          return to;
        });
  }

  private static Complex transfer(Map<Integer, Complex> transfers, int port) {
    return Objects.requireNonNull(transfers.get(port));
  }

  private Complex at(int port) {
    return new Complex(perVolt[2 * port], perVolt[2 * port + 1]);
  }

  private static double magnitude(Complex value) {
    return Math.sqrt(value.re() * value.re() + value.im() * value.im());
  }
}
