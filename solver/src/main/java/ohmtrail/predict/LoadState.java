package ohmtrail.predict;

import java.util.List;
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
 * Immutable.
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

  LoadState(Wiring wiring, TestLoads loads, List<Integer> receptacles, double sourceVolts) {
    this.wiring = wiring;
    this.loads = loads;
    this.receptacles = List.copyOf(receptacles);
    this.sourceVolts = sourceVolts;
    SettledNetwork sound = settled(List.of());
    this.attachments = sound.attachments();
    this.perVolt = sound.drivenBySupply();
  }

  private SettledNetwork settled(List<Attachment> series) {
    return SettledNetwork.of(
        wiring.response(),
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
    int gap = wiring.jointPort(joint);
    return sourceVolts * magnitude(shown(gap, gap, ohms));
  }

  /**
   * The current that the circuit draws from the supply, or from the leg that it draws most from,
   * with ohms added in a joint; amperes.
   */
  public double supplyAmperes(String joint, double ohms) {
    int gap = wiring.jointPort(joint);
    return wiring.sources().stream()
        .mapToDouble(source -> sourceVolts * magnitude(shown(source.port(), gap, ohms)))
        .max()
        .orElse(0);
  }

  /**
   * The highest voltage between a live conductor and neutral at any receptacle, with ohms added in
   * a joint; volts.
   */
  public double highestVolts(String joint, double ohms) {
    int gap = wiring.jointPort(joint);
    return receptacles.stream()
        .mapToDouble(port -> sourceVolts * magnitude(shown(port, gap, ohms)))
        .max()
        .orElse(0);
  }

  private Complex shown(int port, int gap, double ohms) {
    Complex healthy = at(port);
    if (ohms == 0) {
      return healthy;
    }
    if (!loads.dependent().isEmpty()) {
      double[] shown = settled(List.of(Attachment.series(gap, ohms))).drivenBySupply();
      return new Complex(shown[2 * port], shown[2 * port + 1]);
    }
    double bounded = Math.min(ohms, OPEN_OHMS);
    Complex loop = Complex.ONE.plus(attachments.transfer(gap, gap).times(bounded));
    if (port == gap) {
      return healthy.dividedBy(loop);
    }
    Complex k = Complex.real(bounded).dividedBy(loop);
    return healthy.minus(attachments.transfer(port, gap).times(at(gap)).times(k));
  }

  private Complex at(int port) {
    return new Complex(perVolt[2 * port], perVolt[2 * port + 1]);
  }

  private static double magnitude(Complex value) {
    return Math.hypot(value.re(), value.im());
  }
}
