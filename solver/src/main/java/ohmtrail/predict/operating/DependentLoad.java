package ohmtrail.predict.operating;

import ohmtrail.network.Complex;
import ohmtrail.survey.load.Load;

/**
 * A load that follows its voltage, where it is connected.
 *
 * @param port the pair of nodes that it lies across
 * @param load what it is
 * @param factor how much more it draws at every voltage than it is rated for, 1 for as rated
 */
public record DependentLoad(int port, Load load, double factor) {
  /**
   * What it is to the network at a voltage, siemens.
   *
   * @param volts root mean square, at least {@link #leastVolts()}
   */
  public Complex admittance(double volts) {
    double size = factor * load.ratedSiemens() * load.relativeSiemens(volts / load.ratedVolts());
    double cosine = load.powerFactor();
    double sine = Math.sqrt(1 - cosine * cosine);
    return new Complex(size * cosine, sine == 0 ? 0 : -size * sine);
  }

  double steepness(double volts) {
    return load.steepness(volts / load.ratedVolts());
  }

  /** Below this voltage it draws nothing. */
  double leastVolts() {
    return load.leastVoltsShare() * load.ratedVolts();
  }
}
