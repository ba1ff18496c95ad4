package ohmtrail.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import ohmtrail.circuit.Box;
import ohmtrail.circuit.BoxKind;
import ohmtrail.cli.casefile.BoxNames;
import ohmtrail.cli.casefile.CaseFile;
import ohmtrail.cli.casefile.range.RangeException;
import ohmtrail.cli.casefile.range.Ranges;
import ohmtrail.cli.chart.SweepCurves;
import ohmtrail.cli.chart.plot.CurvePlot;
import ohmtrail.cli.chart.plot.PlotSheet;
import ohmtrail.cli.file.WholeFile;
import ohmtrail.cli.names.Names;
import ohmtrail.cli.render.json.SweepJson;
import ohmtrail.cli.render.text.SweepCsv;
import ohmtrail.cli.render.text.SweepText;
import ohmtrail.report.sweep.Axis;
import ohmtrail.report.sweep.Sweep;
import ohmtrail.survey.Test;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;

/** Varies something over a range. */
@Command(
    name = "sweep",
    description =
        "Varies the ohms of a joint, a length, a load, the supply or a meter over a range, or two"
            + " of them at once, and tells the voltage at a box: table, CSV, JSON, curves.",
    footer = {
      "  ohmtrail sweep kitchen.yaml --over hall/neutral/outgoing=0.01ohm..100ohm",
      "  ohmtrail sweep kitchen.yaml --over hall=10ft..200ft --over heater=500W..1800W \\",
      "      --chart drop.svg"
    })
final class SweepCommand extends CaseCommand {
  /** More than this neither table nor picture shows. */
  private static final int MOST_POINTS = 1000;

  private static final int MOST_LINES = 12;

  @Option(
      names = "--over",
      required = true,
      paramLabel = "WHAT=FROM..TO",
      description = {
        "What is varied: a joint (ohms added), a box (length of the cable to it), a load,",
        "a meter (input resistance) or supply (volts). Given twice: a line for each value of",
        "the second."
      })
  private List<String> over = new ArrayList<>();

  @Option(
      names = "--points",
      paramLabel = "N",
      description = "Values along a line (${DEFAULT-VALUE}).")
  private int points = 25;

  @Option(
      names = "--lines",
      paramLabel = "N",
      description = "Values of the second range (${DEFAULT-VALUE}).")
  private int lines = 5;

  @Option(
      names = "--at",
      paramLabel = "BOX",
      description = "The box that is looked at; else the one that loses most.")
  private Optional<String> at = Optional.empty();

  @Option(
      names = "--test",
      paramLabel = "NAME",
      description = "The test that is looked at; else the first one with a load.")
  private Optional<String> test = Optional.empty();

  @Option(
      names = "--csv",
      paramLabel = "FILE",
      description = "Also write the points into FILE for a spreadsheet.")
  private @Nullable Path csv;

  @Option(
      names = "--chart",
      paramLabel = "FILE",
      description = "Also draw the curves into FILE, .svg or .png.")
  private @Nullable Path chart;

  @Override
  void requireSound() {
    if (chart != null) {
      ChartOption.requireKnownEnding(chart, spec());
    }
    if (over.size() > 2) {
      throw wrong("Option --over must be given once or twice, not (" + over.size() + ") times.");
    }
    require("--points", points, MOST_POINTS);
    require("--lines", lines, MOST_LINES);
  }

  private void require(String option, int value, int most) {
    if (value < 2 || value > most) {
      throw wrong("Option " + option + " (" + value + ") must be from 2 to " + most + ".");
    }
  }

  @Override
  void answer(CaseFile caseFile, Form form, PrintWriter out) throws IOException {
    Sweep sweep = sweep(caseFile);
    out.print(form == Form.JSON ? SweepJson.of(caseFile, sweep) : SweepText.of(caseFile, sweep));
    if (csv != null) {
      write(csv, caseFile, SweepCsv.of(sweep).getBytes(java.nio.charset.StandardCharsets.UTF_8));
    }
    if (chart != null) {
      PlotSheet sheet = CurvePlot.of(SweepCurves.of(caseFile, sweep));
      boolean svg = chart.toString().toLowerCase(Locale.ROOT).endsWith(".svg");
      write(chart, caseFile, svg ? sheet.svg() : sheet.png());
    }
  }

  private Sweep sweep(CaseFile caseFile) {
    Ranges ranges = new Ranges(caseFile);
    try {
      Axis across = ranges.read(over.get(0), points);
      Optional<Axis> family =
          over.size() > 1 ? Optional.of(ranges.read(over.get(1), lines)) : Optional.empty();
      if (family.filter(axis -> axis.swept().equals(across.swept())).isPresent()) {
        throw wrong("Option --over must name two different things.");
      }
      Test looked = test(caseFile);
      return Sweep.of(
          caseFile.problem(),
          looked,
          box(caseFile, looked),
          Sweep.usualMeter(caseFile.problem()),
          across,
          family);
    } catch (RangeException bad) {
      throw wrong(String.valueOf(bad.getMessage()));
    }
  }

  private Test test(CaseFile caseFile) {
    List<Test> live = caseFile.survey().tests().stream().filter(each -> !each.isDead()).toList();
    if (test.isPresent()) {
      Names names = new Names(live.stream().map(Test::name).toList());
      String named =
          names
              .find(test.get())
              .orElseThrow(() -> wrong("Test (" + test.get() + ") " + names.rule() + "."));
      return live.stream().filter(each -> each.name().equals(named)).findFirst().orElseThrow();
    }
    return live.stream()
        .max(Comparator.comparing(each -> !caseFile.survey().loadsOn(each).isEmpty()))
        .orElseThrow(
            () ->
                wrong("Case must have a test with the breaker on.\nMaybe write one with a load."));
  }

  private String box(CaseFile caseFile, Test looked) {
    if (at.isPresent()) {
      Names names = BoxNames.of(caseFile.circuit());
      String named =
          names
              .find(at.get())
              .orElseThrow(() -> wrong("Box (" + at.get() + ") " + names.rule() + "."));
      if (caseFile.circuit().box(named).orElseThrow().kind() == BoxKind.PANEL) {
        throw wrong("Box (" + named + ") must be another than the panel: it loses nothing.");
      }
      return named;
    }
    return Sweep.worstBox(caseFile.problem(), looked)
        .orElseGet(() -> last(caseFile.circuit().boxes()).name());
  }

  private static Box last(List<Box> boxes) {
    return boxes.get(boxes.size() - 1);
  }

  private void write(Path file, CaseFile caseFile, byte[] content) throws IOException {
    for (Path read : caseFile.files()) {
      if (Files.exists(file) && Files.isSameFile(file, read)) {
        throw wrong(
            "File (" + file + ") must be another than the file that the case is read from.");
      }
    }
    WholeFile.write(file, whole -> Files.write(whole, content));
  }

  private ParameterException wrong(String message) {
    return new ParameterException(spec().commandLine(), message);
  }
}
