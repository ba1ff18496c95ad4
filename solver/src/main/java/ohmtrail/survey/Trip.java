package ohmtrail.survey;

import java.util.Optional;

/**
 * Whether a GFCI or RCD tripped while the loads of a test were on: a reading without a number.
 *
 * @param device the box that the device is in
 * @param tripped whether it did
 * @param probe what a voltmeter was held to then; empty where none was
 */
public record Trip(String device, boolean tripped, Optional<Probe> probe) {
  /**
   * A voltmeter that is held to something.
   *
   * @param tap what it touches
   * @param meter its name
   */
  public record Probe(Tap tap, String meter) {}

  /** With no meter on. */
  public Trip(String device, boolean tripped) {
    this(device, tripped, Optional.empty());
  }
}
