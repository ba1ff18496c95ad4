package ohmtrail.cli.chart.canvas;

/**
 * A place on the sheet.
 *
 * @param x points from the left edge
 * @param y points from the upper edge
 */
public record Spot(double x, double y) {
  /** Rejects a place that is none. */
  public Spot {
    if (!Double.isFinite(x) || !Double.isFinite(y)) {
      throw new IllegalArgumentException("Spot (" + x + ", " + y + ") must be finite");
    }
  }

  /** The place so far to the right and so far down from here. */
  public Spot plus(double right, double down) {
    return new Spot(x + right, y + down);
  }
}
