package ohmtrail.cli.report;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import ohmtrail.cli.casefile.CaseFile;
import ohmtrail.cli.casefile.CaseFileException;
import ohmtrail.locate.Diagnosis;
import ohmtrail.report.OhmsLikelihood;
import ohmtrail.report.Report;
import ohmtrail.sensitivity.Sensitivity;

/**
 * All that a report is written from.
 *
 * @param caseFile the case
 * @param report its answer
 * @param likelihood of the ohms of the leading suspect; empty where there is none
 * @param sensitivity how far the answer hangs on what it was given; empty where it was not asked
 *     for
 * @param provenance what the report is made from and by
 * @param before the case before a repair with its answer; empty where none was given
 * @param photographs those of the case, opened
 */
public record ReportInputs(
    CaseFile caseFile,
    Report report,
    Optional<OhmsLikelihood> likelihood,
    Optional<Sensitivity> sensitivity,
    Provenance provenance,
    Optional<Before> before,
    List<Photographs.Opened> photographs) {
  /**
   * A case before a repair.
   *
   * @param caseFile the case
   * @param report its answer
   */
  public record Before(CaseFile caseFile, Report report) {}

  /** Copies the list. */
  public ReportInputs {
    photographs = List.copyOf(photographs);
  }

  /**
   * Opens the photographs of a case besides.
   *
   * @throws CaseFileException when one of them is not what it must be
   */
  public static ReportInputs of(
      CaseFile caseFile,
      Report report,
      Optional<OhmsLikelihood> likelihood,
      Optional<Sensitivity> sensitivity,
      Provenance provenance,
      Optional<Before> before)
      throws CaseFileException {
    return new ReportInputs(
        caseFile, report, likelihood, sensitivity, provenance, before, Photographs.of(caseFile));
  }

  Diagnosis diagnosis() {
    return report.diagnosis();
  }

  /** The name of the case file, as it stands in the footer. */
  String name() {
    return caseFile.files().stream()
        .findFirst()
        .map(Path::getFileName)
        .map(String::valueOf)
        .orElse(caseFile.title());
  }
}
