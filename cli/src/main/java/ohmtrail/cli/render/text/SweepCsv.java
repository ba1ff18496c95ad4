package ohmtrail.cli.render.text;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.DoubleStream;
import ohmtrail.report.sweep.Axis;
import ohmtrail.report.sweep.Sweep;

/**
 * A sweep as comma-separated values (RFC 4180) with a heading, in SI units, for a spreadsheet: one
 * row per point, the value of the family first where there is one.
 */
public final class SweepCsv {
  private static final String END = "\r\n";

  private SweepCsv() {}

  /** Writes it. */
  public static String of(Sweep sweep) {
    List<String> headings = new ArrayList<>();
    sweep.family().ifPresent(family -> headings.add(heading(family)));
    headings.add(heading(sweep.across()));
    headings.addAll(
        List.of(
            "volts", "shown volts", "drop volts", "drop fraction", "load amperes", "joint watts"));
    StringBuilder text = new StringBuilder(String.join(",", headings)).append(END);
    for (Sweep.Line line : sweep.lines()) {
      for (Sweep.Point point : line.points()) {
        text.append(
                DoubleStream.concat(
                        line.value().stream(),
                        DoubleStream.of(
                            point.value(),
                            point.volts(),
                            point.shownVolts(),
                            point.dropVolts(),
                            point.dropFraction(),
                            point.loadAmperes(),
                            point.jointWatts()))
                    .mapToObj(SweepCsv::number)
                    .collect(Collectors.joining(",")))
            .append(END);
      }
    }
    return text.toString();
  }

  /** Six digits: more than any input has. */
  private static String number(double value) {
    return new java.math.BigDecimal(value)
        .round(new java.math.MathContext(6))
        .stripTrailingZeros()
        .toPlainString();
  }

  private static String heading(Axis axis) {
    return "\"" + (axis.swept().what() + ", " + axis.swept().unit()).replace("\"", "\"\"") + "\"";
  }
}
