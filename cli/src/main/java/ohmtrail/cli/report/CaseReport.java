package ohmtrail.cli.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import ohmtrail.cli.report.document.Document;
import ohmtrail.cli.report.document.Document.Section;

/** A report as a document, for whom it is asked for. */
public final class CaseReport {
  /** For whom. */
  public enum Reader {
    /** Somebody who will try to take it apart. */
    INVESTIGATOR,
    /** Somebody who lives with the circuit. */
    CUSTOMER,
    /** Somebody who learns how it is worked out. */
    STUDENT
  }

  private CaseReport() {}

  /** The document. */
  public static Document of(ReportInputs inputs, Reader reader) {
    return switch (reader) {
      case INVESTIGATOR -> document(inputs, "Report: ", forInvestigator(inputs));
      case CUSTOMER -> document(inputs, "", CustomerReport.of(inputs));
      case STUDENT -> document(inputs, "Worked example: ", StudentReport.of(inputs));
    };
  }

  private static Document document(ReportInputs inputs, String kind, List<Section> sections) {
    String subject =
        "A bad connection looked for from readings at boxes, "
            + inputs.provenance().program()
            + "."
            + inputs.caseFile().circumstances().date().map(date -> " " + date + ".").orElse("");
    return new Document(
        kind + inputs.caseFile().title(),
        subject,
        inputs.name() + " \u00b7 " + inputs.provenance().program(),
        sections);
  }

  private static List<Section> forInvestigator(ReportInputs inputs) {
    List<Section> sections = new ArrayList<>();
    sections.add(Summary.of(inputs));
    Repair.of(inputs).ifPresent(sections::add);
    sections.add(Evidence.circuit(inputs));
    sections.add(Evidence.readings(inputs));
    Evidence.photographs(inputs).ifPresent(sections::add);
    sections.add(Charts.of(inputs));
    Heating.of(inputs).ifPresent(sections::add);
    Optional<Section> carries = Carrying.of(inputs);
    carries.ifPresent(sections::add);
    SensitivityPart.of(inputs).ifPresent(sections::add);
    sections.add(Limits.of(inputs));
    sections.add(Origins.of(inputs));
    return sections;
  }
}
