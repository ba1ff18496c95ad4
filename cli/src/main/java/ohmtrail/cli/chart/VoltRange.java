package ohmtrail.cli.chart;

import java.util.List;
import ohmtrail.cli.chart.ProfileChart.Line;
import ohmtrail.cli.chart.ProfileChart.Readings;

/**
 * The volts that a panel spans: what it has to show, and never so little that a sound run looks
 * steep.
 *
 * @param least the lowest volts to show
 * @param most the highest
 * @param fromZero below this many volts the scale starts at zero
 */
record VoltRange(double least, double most, double fromZero) {
  /** Least extent of a scale, volts. */
  static final double LEAST_SPAN = 5;

  /** A scale over the run starts at zero once it has to reach below this share of the supply. */
  private static final double ZERO_SHARE = 0.5;

  /** Room beyond what has to be shown, as a share of it. */
  private static final double MARGIN = 0.05;

  /** For volts that should be near the supply's. */
  static VoltRange ofSupply(double volts) {
    return new VoltRange(volts, volts, ZERO_SHARE * volts);
  }

  /** For volts that should be near zero. */
  static VoltRange ofRise() {
    return new VoltRange(0, 0, Double.POSITIVE_INFINITY);
  }

  VoltRange with(double volts) {
    return new VoltRange(Math.min(least, volts), Math.max(most, volts), fromZero);
  }

  VoltRange with(List<Line> lines) {
    return lines.stream()
        .flatMap(line -> line.branches().stream())
        .flatMap(branch -> branch.points().stream())
        .reduce(this, (range, point) -> range.with(point.volts()), VoltRange::and);
  }

  VoltRange withReadings(List<Readings> readings) {
    return readings.stream()
        .flatMap(each -> each.marks().stream())
        .reduce(
            this,
            (range, mark) ->
                range.with(mark.volts() - mark.below()).with(mark.volts() + mark.above()),
            VoltRange::and);
  }

  private VoltRange and(VoltRange other) {
    return with(other.least).with(other.most);
  }

  /** Lower end of the scale, volts. */
  double low() {
    return least < fromZero ? 0 : Math.max(0, least - slack());
  }

  /** Upper end of the scale, volts. */
  double high() {
    return Math.max(most + slack(), low() + LEAST_SPAN);
  }

  private double slack() {
    return MARGIN * (most - (least < fromZero ? 0 : least));
  }
}
