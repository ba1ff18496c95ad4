package ohmtrail.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import ohmtrail.cli.casefile.CaseFile;
import ohmtrail.cli.chart.Chart;
import ohmtrail.cli.chart.ChartFile;
import ohmtrail.cli.chart.MapChart;
import ohmtrail.cli.chart.ProfileChart;
import ohmtrail.cli.file.WholeFile;
import ohmtrail.map.MapReport;
import ohmtrail.report.Prediction;
import ohmtrail.report.Report;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** The chart that a command draws beside its answer. */
final class ChartOption {
  private static final List<String> ENDINGS = List.of(".svg", ".png");

  @Spec(Spec.Target.MIXEE)
  private CommandSpec command;

  @Option(
      names = "--chart",
      paramLabel = "FILE",
      description = "Also draw it into FILE, .svg or .png: the voltages along the run, or the map.")
  private @Nullable Path file;

  /**
   * Says no to a file that cannot be drawn, before any work is done.
   *
   * @throws ParameterException when its name has another ending
   */
  void requireKnownEnding() {
    if (file != null) {
      requireKnownEnding(file, command);
    }
  }

  /**
   * Says no to a file that cannot be drawn.
   *
   * @throws ParameterException when its name has another ending
   */
  static void requireKnownEnding(Path file, CommandSpec command) {
    String name = file.toString().toLowerCase(Locale.ROOT);
    if (ENDINGS.stream().noneMatch(name::endsWith)) {
      throw new ParameterException(
          command.commandLine(),
          "Chart file (" + file + ") must end in .svg or .png.\nMaybe write " + file + ".svg.");
    }
  }

  /**
   * Says no to a chart where there are several answers.
   *
   * @throws ParameterException when one was asked for
   */
  void requireNone(int cases) {
    if (file != null) {
      throw new ParameterException(
          command.commandLine(),
          "Option --chart draws one case, not (" + cases + ").\nMaybe draw each by itself.");
    }
  }

  /**
   * Draws the chart of an answer, if one was asked for.
   *
   * @throws IOException when the file cannot be written
   * @throws ParameterException when it is one that the case was read from
   */
  void draw(CaseFile caseFile, Report report) throws IOException {
    if (file != null) {
      requireApart(file, caseFile);
      Drawing.draw(file, caseFile, report);
    }
  }

  /**
   * Draws the chart of a prediction, if one was asked for.
   *
   * @throws IOException when the file cannot be written
   * @throws ParameterException when it is one that the case was read from
   */
  void draw(CaseFile caseFile, Prediction prediction) throws IOException {
    if (file != null) {
      requireApart(file, caseFile);
      Drawing.draw(file, caseFile, prediction);
    }
  }

  /**
   * Draws the chart of a map, if one was asked for.
   *
   * @throws IOException when the file cannot be written
   * @throws ParameterException when it is one that the case was read from
   */
  void draw(CaseFile caseFile, MapReport report) throws IOException {
    if (file != null) {
      requireApart(file, caseFile);
      Drawing.draw(file, caseFile, report);
    }
  }

  /** A chart in the place of what was read would be the end of it. */
  private void requireApart(Path chart, CaseFile caseFile) throws IOException {
    for (Path read : caseFile.files()) {
      if (Files.exists(chart) && Files.isSameFile(chart, read)) {
        throw new ParameterException(
            command.commandLine(),
            "Chart file ("
                + chart
                + ") must be another than the file that the case is read from.\nMaybe write "
                + chart
                + "-chart.svg.");
      }
    }
  }

  /** Apart, so that nothing of the charts is loaded where none is asked for. */
  private static final class Drawing {
    static void draw(Path file, CaseFile caseFile, Report report) throws IOException {
      write(file, ProfileChart.of(caseFile.title(), report));
    }

    static void draw(Path file, CaseFile caseFile, Prediction prediction) throws IOException {
      write(file, ProfileChart.of(caseFile.title(), caseFile.problem(), prediction.degradations()));
    }

    static void draw(Path file, CaseFile caseFile, MapReport report) throws IOException {
      write(file, MapChart.of(caseFile.title(), report));
    }

    private static void write(Path file, Chart chart) throws IOException {
      WholeFile.write(file, whole -> ChartFile.write(chart, whole));
    }
  }
}
