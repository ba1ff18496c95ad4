package ohmtrail.cli.report;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.stream.StreamSupport;
import nu.validator.client.EmbeddedValidator;
import ohmtrail.cli.casefile.CaseFile;
import ohmtrail.cli.casefile.CaseFileException;
import ohmtrail.cli.casefile.CaseFileReader;
import ohmtrail.locate.Verdict;
import ohmtrail.report.OhmsLikelihood;
import ohmtrail.report.Report;
import ohmtrail.sensitivity.Progress;
import ohmtrail.sensitivity.Sensitivity;
import org.verapdf.gf.foundry.VeraGreenfieldFoundryProvider;
import org.verapdf.pdfa.Foundries;
import org.verapdf.pdfa.PDFAParser;
import org.verapdf.pdfa.flavours.PDFAFlavour;
import org.verapdf.pdfa.results.TestAssertion;

/** Reports of cases, and what those say who know the standards. */
final class Reports {
  private static final ObjectMapper JACKSON = new ObjectMapper();
  private static final Path CASES = Path.of(System.getProperty("ohmtrail.shared"), "cases");

  private Reports() {}

  static Path shipped(String name) {
    return CASES.resolve(name + ".yaml");
  }

  static ReportInputs inputs(Path file, boolean isVaried) throws CaseFileException, IOException {
    CaseFile caseFile = new CaseFileReader().read(file);
    return inputs(caseFile, isVaried);
  }

  static ReportInputs inputs(CaseFile caseFile, boolean isVaried)
      throws CaseFileException, IOException {
    Report report = Report.of(caseFile.problem());
    Optional<OhmsLikelihood> likelihood =
        report.diagnosis().verdict() == Verdict.DEGRADED
            ? Optional.of(OhmsLikelihood.of(report.problem(), report.diagnosis().suspects().get(0)))
            : Optional.empty();
    Optional<Sensitivity> sensitivity =
        isVaried
            ? Optional.of(
                Sensitivity.of(
                    caseFile.problem(),
                    report.diagnosis(),
                    new Sensitivity.Settings(4, 1, 2),
                    Progress.UNTOLD))
            : Optional.empty();
    return ReportInputs.of(
        caseFile,
        report,
        likelihood,
        sensitivity,
        Provenance.of("ohmtrail report case.yaml", caseFile.files()),
        Optional.empty());
  }

  /** What a checker of HTML says is wrong. */
  static List<String> htmlErrors(String html) {
    try {
      Path file = Files.createTempFile("report", ".html");
      try {
        Files.writeString(file, html, StandardCharsets.UTF_8);
        JsonNode answer = JACKSON.readTree(new EmbeddedValidator().validate(file));
        return StreamSupport.stream(answer.get("messages").spliterator(), false)
            .filter(message -> !message.get("type").asText().equals("info"))
            .map(message -> message.get("message").asText())
            .toList();
      } finally {
        Files.delete(file);
      }
    } catch (Exception e) {
      throw new AssertionError(e);
    }
  }

  /** What a validator says breaks PDF/A-2A or PDF/UA-1. */
  static List<String> pdfViolations(byte[] pdf) {
    VeraGreenfieldFoundryProvider.initialise();
    return List.of(PDFAFlavour.PDFA_2_A, PDFAFlavour.PDFUA_1).stream()
        .flatMap(flavour -> violations(pdf, flavour).stream())
        .toList();
  }

  private static List<String> violations(byte[] pdf, PDFAFlavour flavour) {
    try (PDFAParser parser =
        Foundries.defaultInstance().createParser(new ByteArrayInputStream(pdf), flavour)) {
      return Foundries.defaultInstance()
          .createValidator(flavour, false)
          .validate(parser)
          .getTestAssertions()
          .stream()
          .filter(each -> each.getStatus() == TestAssertion.Status.FAILED)
          .map(each -> flavour + " " + each.getRuleId().getClause() + ": " + each.getMessage())
          .toList();
    } catch (Exception e) {
      throw new AssertionError(e);
    }
  }
}
