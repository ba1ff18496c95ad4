package ohmtrail.cli.chart.canvas;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * A straight scale: values to points.
 *
 * @param low value at one end
 * @param high value at the other, above {@code low}
 * @param lowPoint where {@code low} stands, points
 * @param highPoint where {@code high} stands, points
 */
public record Axis(double low, double high, double lowPoint, double highPoint) {
  /** Steps between ticks are one of these times a power of ten. */
  private static final double[] ROUND_STEPS = {1, 2, 5, 10};

  /** Lets a tick at the very end of the scale pass despite rounding, in steps. */
  private static final double END_SLACK = 1e-9;

  /** Rejects a scale without extent. */
  public Axis {
    if (!(high > low)) {
      throw new IllegalArgumentException(
          "Upper end (" + high + ") of a scale must be above its lower end (" + low + ")");
    }
  }

  /** Where a value stands, points. */
  public double at(double value) {
    return lowPoint + (value - low) / (high - low) * (highPoint - lowPoint);
  }

  /** Round values from one end of the scale to the other, at most so many. */
  public List<Tick> ticks(int most) {
    double step = step(most);
    int decimals = (int) Math.max(0, -Math.floor(Math.log10(step) + END_SLACK));
    List<Tick> ticks = new ArrayList<>();
    for (long k = (long) Math.ceil(low / step - END_SLACK);
        k * step <= high + END_SLACK * step;
        k++) {
      ticks.add(new Tick(k * step, String.format(Locale.ROOT, "%." + decimals + "f", k * step)));
    }
    return List.copyOf(ticks);
  }

  private double step(int most) {
    double least = (high - low) / most;
    double power = Math.pow(10, Math.floor(Math.log10(least)));
    for (double round : ROUND_STEPS) {
      if (round * power >= least * (1 - END_SLACK)) {
        return round * power;
      }
    }
    throw new IllegalStateException("No round step for (" + least + ")");
  }

  /**
   * A value that is written at the scale.
   *
   * @param value the value
   * @param label as written
   */
  public record Tick(double value, String label) {}
}
