package ohmtrail.cli.walk;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeMap;
import ohmtrail.circuit.Box;
import ohmtrail.circuit.Circuit;
import ohmtrail.cli.render.words.Figures;
import ohmtrail.cli.render.words.JointWords;
import ohmtrail.cli.render.words.Region;
import ohmtrail.predict.VoltageProfile;
import ohmtrail.report.Report;
import ohmtrail.report.TestState;
import ohmtrail.survey.LoadInUse;
import ohmtrail.survey.ProbePoints;
import ohmtrail.survey.Test;

/** The voltage along the run in letters: one line per box, its voltage as a place on the line. */
final class ProfileText {
  private static final int LONGEST_NAME = 16;
  private static final int LEAST_COLUMNS = 12;
  private static final int MOST_COLUMNS = 40;

  /** Columns before and behind the plot: indents, the volts and the bars. */
  private static final int AROUND = 16;

  /** A drop of less is not blown up to the width of the page, volts. */
  private static final double LEAST_SPAN = 4;

  private final Report report;
  private final int width;

  ProfileText(Report report, int width) {
    this.report = report;
    this.width = width;
  }

  /** The lines for the last test with a load on; none where there is no such test. */
  List<String> lines() {
    Optional<TestState> loaded =
        report.tests().stream()
            .filter(state -> !state.test().loads().isEmpty() && !state.test().readings().isEmpty())
            .reduce((before, after) -> after);
    return loaded.map(this::lines).orElse(List.of());
  }

  private List<String> lines(TestState state) {
    Test test = state.test();
    Circuit circuit = report.problem().circuit();
    ProbePoints between = ProbePoints.usual(circuit, test.readings().get(0).box());
    VoltageProfile profile = state.profile();
    Map<String, Double> read = new TreeMap<>();
    test.readings().stream()
        .filter(reading -> reading.between().equals(Optional.of(between)))
        .forEach(reading -> read.put(reading.box(), reading.value()));
    List<VoltageProfile.Point> points =
        profile.points().stream().filter(each -> each.volts(between).isPresent()).toList();
    if (points.isEmpty()) {
      return List.of();
    }
    double high = points.stream().mapToDouble(each -> volts(each, between)).max().orElse(0);
    double low = points.stream().mapToDouble(each -> volts(each, between)).min().orElse(0);
    for (double volts : read.values()) {
      high = Math.max(high, volts);
      low = Math.min(low, volts);
    }
    low = Math.min(low, high - LEAST_SPAN);
    List<String> lines = new ArrayList<>();
    lines.add(
        "Volts "
            + Region.of(circuit.supply()).between(between)
            + " with the "
            + JointWords.listed(test.loads().stream().map(LoadInUse::load).toList(), "and")
            + " at "
            + test.loads().get(0).box()
            + " (* fitted, o read):");
    for (VoltageProfile.Point each : points) {
      OptionalDouble shown =
          read.containsKey(each.box())
              ? OptionalDouble.of(read.getOrDefault(each.box(), 0.0))
              : OptionalDouble.empty();
      lines.add(line(each.box(), volts(each, between), shown, low, high));
    }
    return lines;
  }

  private static double volts(VoltageProfile.Point point, ProbePoints between) {
    return point.volts(between).orElse(0);
  }

  private String line(String box, double fitted, OptionalDouble read, double low, double high) {
    int names =
        Math.min(
            LONGEST_NAME,
            report.problem().circuit().boxes().stream()
                .map(Box::name)
                .mapToInt(String::length)
                .max()
                .orElse(0));
    int columns = Math.max(LEAST_COLUMNS, Math.min(MOST_COLUMNS, width - names - AROUND));
    StringBuilder plot = new StringBuilder(" ".repeat(columns));
    plot.setCharAt(place(fitted, low, high, columns), '*');
    read.ifPresent(volts -> plot.setCharAt(place(volts, low, high, columns), 'o'));
    String name = box.length() <= names ? box : box.substring(0, names);
    return String.format(
            Locale.ROOT,
            "  %-" + names + "s |%s| %s",
            name,
            plot,
            Figures.tenths(read.orElse(fitted)))
        .stripTrailing();
  }

  private static int place(double volts, double low, double high, int columns) {
    return (int) Math.round((columns - 1) * (volts - low) / (high - low));
  }
}
