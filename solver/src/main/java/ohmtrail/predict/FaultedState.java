package ohmtrail.predict;

import java.util.List;
import java.util.function.IntFunction;
import ohmtrail.network.Complex;

/**
 * A circuit with loads on and ohms in some of its joints: what flows and stands where it can do
 * harm. Root mean square; for one thread.
 */
public final class FaultedState {
  private final Wiring wiring;
  private final LoadState.Places places;
  private final double sourceVolts;
  private final IntFunction<Complex> shown;
  private final IntFunction<Complex> seen;

  /**
   * Holds it.
   *
   * @param shown what each port shows per volt of the supply
   * @param seen the ohms that are seen into a pair of nodes
   */
  FaultedState(
      Wiring wiring,
      LoadState.Places places,
      double sourceVolts,
      IntFunction<Complex> shown,
      IntFunction<Complex> seen) {
    this.wiring = wiring;
    this.places = places;
    this.sourceVolts = sourceVolts;
    this.shown = shown;
    this.seen = seen;
  }

  /**
   * The current through a joint, amperes.
   *
   * @param joint its id
   */
  public double jointAmperes(String joint) {
    return magnitude(wiring.jointPort(joint));
  }

  /** The current drawn from the supply, or from the leg that most is drawn from; amperes. */
  public double supplyAmperes() {
    return highest(places.sources());
  }

  /** The highest voltage between a live conductor and neutral at any receptacle; volts. */
  public double highestVolts() {
    return highest(places.receptacles());
  }

  /**
   * The highest voltage of the ground of any box, and with it of the metal of what is plugged in
   * there, against the panel's ground, volts, while so many ohms are held between the two.
   *
   * @param holdingOhms what stands for a hand, positive: a ghost voltage falls away behind it
   */
  public double groundVolts(double holdingOhms) {
    return highestHeld(places.grounds(), holdingOhms);
  }

  /** The highest voltage of the neutral of any box against the panel's ground, likewise. */
  public double neutralVolts(double holdingOhms) {
    return highestHeld(places.neutrals(), holdingOhms);
  }

  private double highest(List<Integer> ports) {
    return ports.stream().mapToDouble(this::magnitude).max().orElse(0);
  }

  private double highestHeld(List<Integer> ports, double holdingOhms) {
    return ports.stream().mapToDouble(port -> held(port, holdingOhms)).max().orElse(0);
  }

  /** Thevenin's divider: the open voltage behind the ohms that are seen there. */
  private double held(int port, double holdingOhms) {
    double loop = Complex.real(holdingOhms).plus(seen.apply(port)).abs();
    return magnitude(port) * holdingOhms / loop;
  }

  private double magnitude(int port) {
    Complex value = shown.apply(port);
    return sourceVolts * Math.sqrt(value.re() * value.re() + value.im() * value.im());
  }
}
