package ohmtrail.cli.chart.canvas;

import java.util.Arrays;
import java.util.List;

/** Moves labels apart along a line. */
public final class Spread {
  private Spread() {}

  /**
   * The places nearest to those wanted that keep a distance, without leaving a stretch; where the
   * stretch is too short they keep the distance and leave it at its low end.
   *
   * @param wanted in ascending order
   * @param distance between neighbours, at least
   * @param low least place
   * @param high greatest place
   */
  public static List<Double> apart(List<Double> wanted, double distance, double low, double high) {
    double[] places = new double[wanted.size()];
    double floor = low;
    for (int i = 0; i < places.length; i++) {
      places[i] = Math.max(wanted.get(i), floor);
      floor = places[i] + distance;
    }
    double ceiling = high;
    for (int i = places.length - 1; i >= 0; i--) {
      places[i] = Math.min(places[i], ceiling);
      ceiling = places[i] - distance;
    }
    return Arrays.stream(places).boxed().toList();
  }
}
