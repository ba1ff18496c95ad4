package ohmtrail.predict;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import ohmtrail.survey.ProbePoints;

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
   * @param between volts between each two conductors of interest: leg to leg, each live conductor
   *     to neutral, neutral to ground
   */
  public record Point(String box, double metres, Map<ProbePoints, Double> between) {
    /** Copies the map, keeping its order. */
    public Point {
      between = Collections.unmodifiableMap(new LinkedHashMap<>(between));
    }

    /** The voltage between two conductors; empty where one of them is not there. */
    public OptionalDouble volts(ProbePoints points) {
      Double volts = between.get(points);
      return volts == null ? OptionalDouble.empty() : OptionalDouble.of(volts);
    }
  }
}
