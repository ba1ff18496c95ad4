package ohmtrail.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.Optional;
import ohmtrail.cli.casefile.CaseFile;
import ohmtrail.cli.casefile.CaseFileException;
import ohmtrail.cli.casefile.CaseFileReader;
import ohmtrail.cli.file.WholeFile;
import ohmtrail.cli.report.CaseReport;
import ohmtrail.cli.report.CaseReport.Reader;
import ohmtrail.cli.report.Provenance;
import ohmtrail.cli.report.ReportInputs;
import ohmtrail.cli.report.document.Document;
import ohmtrail.cli.report.html.HtmlWriter;
import ohmtrail.cli.report.pdf.PdfWriter;
import ohmtrail.cli.terminal.Progress;
import ohmtrail.cli.terminal.Waiting;
import ohmtrail.locate.Diagnosis;
import ohmtrail.locate.Verdict;
import ohmtrail.report.OhmsLikelihood;
import ohmtrail.report.Report;
import ohmtrail.sensitivity.Sensitivity;
import ohmtrail.slip.AveragedLocator;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;

/** Writes a report that stands alone. */
@Command(
    name = "report",
    description =
        "Writes a report that stands alone: one HTML file without script, or PDF/A-2 by the ending of"
            + " the file.",
    footer = {
      "  ohmtrail report kitchen.yaml",
      "  ohmtrail report kitchen.yaml --to kitchen.pdf",
      "  ohmtrail report kitchen-after.yaml --before kitchen.yaml --for customer"
    })
final class ReportCommand extends CaseCommand {
  private static final String PDF = ".pdf";
  private static final String HTML = ".html";

  @Mixin private final SensitivityOption sensitivity = new SensitivityOption();

  @Option(
      names = "--to",
      paramLabel = "FILE",
      description = "The report, .html or .pdf; beside the case under its name unless said.")
  private @Nullable Path to;

  @Option(names = "--pdf", description = "PDF, where no file is named.")
  private boolean pdf;

  @Option(
      names = "--for",
      paramLabel = "READER",
      description = "investigator, customer (two pages, plain words) or student (the equations).")
  private String reader = "investigator";

  @Option(
      names = "--before",
      paramLabel = "CASE",
      description = "The case before a repair: its readings are set beside those of this one.")
  private @Nullable Path before;

  @Option(
      names = "--without-sensitivity",
      description = "Quickly: without leaving out readings and varying assumptions.")
  private boolean quick;

  @Override
  void requireSound() {
    sensitivity.requireSound();
    if (to != null && !isPdf(to) && !ending(to).endsWith(HTML)) {
      throw new ParameterException(
          spec().commandLine(),
          "Report file (" + to + ") must end in .html or .pdf.\nMaybe write " + to + ".html.");
    }
    var unused = reader();
  }

  private Reader reader() {
    try {
      return Reader.valueOf(reader.toUpperCase(Locale.ROOT));
    } catch (IllegalArgumentException none) {
      throw new ParameterException(
          spec().commandLine(),
          "Reader (" + reader + ") must be one of investigator, customer, student.");
    }
  }

  private static String ending(Path file) {
    return file.toString().toLowerCase(Locale.ROOT);
  }

  private static boolean isPdf(Path file) {
    return ending(file).endsWith(PDF);
  }

  /** The sensitivity tells how far it is. */
  @Override
  Waiting waiting() {
    return new Waiting(quick ? progress() : Progress.nowhere(), spec().name());
  }

  @Override
  void answer(CaseFile caseFile, Form form, PrintWriter out) throws IOException, CaseFileException {
    Path target = target(caseFile);
    requireApart(target, caseFile);
    Document document = CaseReport.of(inputs(caseFile), reader());
    if (isPdf(target)) {
      byte[] bytes = PdfWriter.write(document);
      WholeFile.write(target, file -> Files.write(file, bytes));
    } else {
      WholeFile.write(target, HtmlWriter.write(document));
    }
    out.println(form == Form.JSON ? "\"" + target.getFileName() + "\"" : "Report: " + target);
  }

  private Path target(CaseFile caseFile) {
    if (to != null) {
      return to;
    }
    if (caseFile.files().isEmpty()) {
      throw new ParameterException(
          spec().commandLine(),
          "A report of standard input must name its file.\nMaybe add --to FILE.");
    }
    Path file = caseFile.files().get(0);
    String name = String.valueOf(file.getFileName()).replaceFirst("\\.ya?ml$", "");
    return file.resolveSibling(name + (pdf ? PDF : HTML));
  }

  /** A report in the place of what was read would be the end of it. */
  private void requireApart(Path target, CaseFile caseFile) throws IOException {
    List<Path> read = new ArrayList<>(caseFile.files());
    for (Path file : caseFile.files()) {
      caseFile
          .circumstances()
          .photographs()
          .forEach(photo -> read.add(file.resolveSibling(photo.file())));
    }
    for (Path each : read) {
      if (Files.exists(target) && Files.exists(each) && Files.isSameFile(target, each)) {
        throw new ParameterException(
            spec().commandLine(),
            "Report file (" + target + ") must be another than a file that the case is read from.");
      }
    }
  }

  private ReportInputs inputs(CaseFile caseFile) throws IOException, CaseFileException {
    Diagnosis diagnosis = new AveragedLocator().locate(caseFile.problem());
    Report report = Report.of(caseFile.problem(), diagnosis);
    Optional<OhmsLikelihood> likelihood =
        report.diagnosis().verdict() == Verdict.DEGRADED
            ? report.diagnosis().suspects().stream()
                .findFirst()
                .map(suspect -> OhmsLikelihood.of(report.problem(), suspect))
            : Optional.empty();
    boolean isVaried =
        !quick && reader() != Reader.CUSTOMER && caseFile.survey().readingCount() > 0;
    Optional<Sensitivity> varied =
        isVaried
            ? Optional.of(sensitivity.of(caseFile.problem(), diagnosis, progress()))
            : Optional.empty();
    return ReportInputs.of(caseFile, report, likelihood, varied, provenance(caseFile), before());
  }

  private Optional<ReportInputs.Before> before() throws CaseFileException {
    if (before == null) {
      return Optional.empty();
    }
    CaseFile earlier = new CaseFileReader().read(before);
    return Optional.of(new ReportInputs.Before(earlier, Report.of(earlier.problem())));
  }

  private Provenance provenance(CaseFile caseFile) throws IOException {
    List<Path> files = new ArrayList<>(caseFile.files());
    Optional.ofNullable(before).ifPresent(files::add);
    return Provenance.of(command(caseFile), files);
  }

  private String command(CaseFile caseFile) {
    return "ohmtrail report "
        + caseFile.files().stream()
            .findFirst()
            .map(Path::getFileName)
            .map(String::valueOf)
            .orElse("-")
        + (pdf && to == null ? " --pdf" : "")
        + (to == null ? "" : " --to " + to.getFileName())
        + (reader() == Reader.INVESTIGATOR ? "" : " --for " + reader.toLowerCase(Locale.ROOT))
        + (before == null ? "" : " --before " + Objects.requireNonNull(before).getFileName())
        + (quick ? " --without-sensitivity" : sensitivity.asTyped());
  }
}
