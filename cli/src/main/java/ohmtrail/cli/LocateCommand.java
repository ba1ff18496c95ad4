package ohmtrail.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import ohmtrail.cli.casefile.CaseFile;
import ohmtrail.cli.casefile.CaseFileException;
import ohmtrail.cli.casefile.CaseFileReader;
import ohmtrail.cli.render.json.LocateJson;
import ohmtrail.cli.render.screen.CaseLines;
import ohmtrail.cli.render.screen.LocateScreen;
import ohmtrail.cli.render.text.LocateText;
import ohmtrail.report.Report;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;

/** Finds the bad joint. */
@Command(
    name = "locate",
    description =
        "Finds the joint that has gone bad: in which box, on which conductor, how many ohms, how"
            + " sure, and which box to open first.",
    footer = {
      "  ohmtrail locate kitchen.yaml",
      "  ohmtrail locate kitchen.yaml --chart kitchen.svg",
      "  ohmtrail locate monday/*.yaml",
      "  ohmtrail locate --outlet 120 --read \"hot-neutral 118.6 high\" --read \"hot-neutral 24 low\""
    })
final class LocateCommand extends CaseCommand {
  @Mixin private final FullOption full = new FullOption();

  @Mixin private final ChartOption chart = new ChartOption();

  @Option(
      names = "--outlet",
      paramLabel = "VOLTS",
      description = "Instead of a case: one outlet whose run nobody knows, such as 120 or 120/240.")
  private @Nullable String outlet;

  @Option(
      names = "--read",
      paramLabel = "READING",
      description =
          "With --outlet: conductors, volts and meter (high or low), and what was on:"
              + " \"hot-neutral 117.2 high with 1500 W\". Give one per reading.")
  private List<String> readings = new ArrayList<>();

  @Override
  void requireSound() {
    chart.requireKnownEnding();
    if (namedFiles() > 1) {
      chart.requireNone(namedFiles());
    }
    if (namedFiles() > 0 == (outlet != null)) {
      throw new ParameterException(
          spec().commandLine(),
          outlet == null
              ? "Missing required parameter: 'CASE'"
              : "Option --outlet must not stand beside a case file");
    }
    if (outlet == null && !readings.isEmpty()) {
      throw new ParameterException(
          spec().commandLine(), "Option --read must stand beside --outlet");
    }
  }

  @Override
  CaseFile withoutFile() throws CaseFileException {
    return new CaseFileReader()
        .read("command line", OutletCase.text(Objects.requireNonNull(outlet), readings));
  }

  @Override
  void answer(CaseFile caseFile, Form form, PrintWriter out) throws IOException {
    Report report = Report.of(caseFile.problem());
    out.print(form == Form.JSON ? LocateJson.of(caseFile, report) : text(caseFile, report));
    chart.draw(caseFile, report);
  }

  @Override
  String line(CaseFile caseFile) {
    return CaseLines.located(caseFile, Report.of(caseFile.problem()));
  }

  @Override
  String document(CaseFile caseFile) {
    return LocateJson.of(caseFile, Report.of(caseFile.problem()));
  }

  private String text(CaseFile caseFile, Report report) {
    return full.isFull()
        ? LocateText.of(caseFile, report)
        : LocateScreen.of(caseFile, report, full.columns());
  }
}
