package ohmtrail.predict;

import java.util.List;

/**
 * Voltages along a run as a meter that draws nothing would show them.
 *
 * @param points one per box, in the order in which the supply reaches them
 */
public record VoltageProfile(List<Point> points) {
  /** Copies the list. */
  public VoltageProfile {
    points = List.copyOf(points);
  }

  /**
   * One box.
   *
   * @param box its name
   * @param metres along the cables from the panel
   * @param hotNeutralVolts hot to neutral
   * @param neutralGroundVolts neutral to ground
   */
  public record Point(
      String box, double metres, double hotNeutralVolts, double neutralGroundVolts) {}
}
