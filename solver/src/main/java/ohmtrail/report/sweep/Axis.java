package ohmtrail.report.sweep;

import java.util.List;
import java.util.stream.IntStream;

/**
 * What is varied, and which values it takes.
 *
 * @param swept what
 * @param values in its unit, rising
 */
public record Axis(Swept swept, List<Double> values) {
  /**
   * Copies the list.
   *
   * @throws IllegalArgumentException unless the values are positive, finite and rising
   */
  public Axis {
    values = List.copyOf(values);
    for (int v = 0; v < values.size(); v++) {
      double value = values.get(v);
      if (!(value > 0 && Double.isFinite(value)) || (v > 0 && value <= values.get(v - 1))) {
        throw new IllegalArgumentException(
            "Values of ("
                + swept.what()
                + ") must be positive and rise, not "
                + values
                + ".\nMaybe the ends of the range were exchanged.");
      }
    }
  }

  /**
   * So many values between two, both among them, by equal ratios where it spans decades, else by
   * equal steps.
   *
   * @param count at least 2
   */
  public static Axis between(Swept swept, double least, double most, int count) {
    double last = count - 1.0;
    return new Axis(
        swept,
        IntStream.range(0, count)
            .mapToObj(
                step ->
                    swept.isByRatio()
                        ? least * Math.pow(most / least, step / last)
                        : least + (most - least) * (step / last))
            .toList());
  }
}
