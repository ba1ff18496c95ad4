package ohmtrail.predict;

import ohmtrail.circuit.ResidualCurrentDevice;

/**
 * What a GFCI or RCD sees while a meter reads.
 *
 * @param device the device
 * @param reading number of the reading in its survey, from 0
 * @param amperes what flows out through it and does not come back, root mean square
 */
public record ResidualCurrent(ResidualCurrentDevice device, int reading, double amperes) {
  /** Probability that the device trips on it. */
  public double tripProbability() {
    return device.rating().tripProbability(amperes);
  }

  /** What the device does about it. */
  public ResidualCurrentDevice.Response response() {
    return device.rating().at(amperes);
  }
}
