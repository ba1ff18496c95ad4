package ohmtrail.cli.chart.plot;

import java.util.List;

/**
 * Curves over one axis.
 *
 * @param title what it is, in a line
 * @param description the same content in words and figures, for those who do not see the picture
 * @param across label of the axis along
 * @param up label of the axis upward
 * @param logarithmic whether the axis along is spaced by ratios
 * @param curves what is drawn, at least one
 * @param guides lines across the whole
 */
public record CurveChart(
    String title,
    String description,
    String across,
    String up,
    boolean logarithmic,
    List<Curve> curves,
    List<Guide> guides) {
  /** Copies the lists. */
  public CurveChart {
    curves = List.copyOf(curves);
    guides = List.copyOf(guides);
  }

  /**
   * One curve.
   *
   * @param name in the legend; unique
   * @param across rising
   * @param up one per value of {@code across}
   */
  public record Curve(String name, List<Double> across, List<Double> up) {
    /** Copies the lists. */
    public Curve {
      across = List.copyOf(across);
      up = List.copyOf(up);
    }
  }

  /**
   * A line across the whole at one height.
   *
   * @param name in the legend; unique
   * @param up where
   */
  public record Guide(String name, double up) {}
}
