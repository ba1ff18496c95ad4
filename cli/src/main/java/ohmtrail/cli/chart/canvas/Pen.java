package ohmtrail.cli.chart.canvas;

import java.util.List;

/**
 * How a line is drawn.
 *
 * @param ink its colour
 * @param width in points, positive
 * @param dashes lengths of dash and gap in turn, points; empty for a solid line
 */
public record Pen(Ink ink, double width, List<Double> dashes) {
  /** Copies the list; rejects a width that leaves no line. */
  public Pen {
    dashes = List.copyOf(dashes);
    if (!(width > 0)) {
      throw new IllegalArgumentException("Pen width (" + width + ") must be positive");
    }
  }

  /** A solid line. */
  public static Pen solid(Ink ink, double width) {
    return new Pen(ink, width, List.of());
  }

  /** A broken line. */
  public static Pen dashed(Ink ink, double width, Double... dashes) {
    return new Pen(ink, width, List.of(dashes));
  }
}
