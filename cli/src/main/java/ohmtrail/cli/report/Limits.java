package ohmtrail.cli.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import ohmtrail.circuit.ConductorRole;
import ohmtrail.cli.casefile.CaseFile;
import ohmtrail.cli.render.Notes;
import ohmtrail.cli.render.words.Figures;
import ohmtrail.cli.report.document.Block;
import ohmtrail.cli.report.document.Block.Column;
import ohmtrail.cli.report.document.Document.Section;
import ohmtrail.locate.Diagnosis;
import ohmtrail.locate.Suspect;
import ohmtrail.reference.Assumption;
import ohmtrail.survey.Measurand;
import ohmtrail.survey.Tap;

/** What the method cannot tell of this case, and what it took for granted. */
final class Limits {
  private Limits() {}

  static Section of(ReportInputs inputs) {
    CaseFile caseFile = inputs.caseFile();
    List<Block> blocks = new ArrayList<>();
    blocks.add(new Block.Items(limits(inputs)));
    List<String> notes = Notes.of(caseFile, inputs.diagnosis());
    if (!notes.isEmpty()) {
      blocks.add(new Block.Heading("Worth knowing"));
      blocks.add(new Block.Items(notes));
    }
    blocks.add(new Block.Heading("What is known of the method's own error"));
    blocks.add(
        Block.words(
            "Its pages on validation list every comparison with its figure. On circuits drawn from"
                + " its own model, 50, 54 and 54 of 60 intervals of 90 % held the true ohms (three"
                + " ranges of ohms), and all twenty example cases have the true box first or second"
                + " on the right conductor. Those circuits are drawn, not built: no test series on"
                + " real circuits with known bad joints is part of it."));
    blocks.add(assumptions(caseFile, inputs.diagnosis()));
    return new Section("limits", "Limits and assumptions", true, blocks);
  }

  private static List<String> limits(ReportInputs inputs) {
    CaseFile caseFile = inputs.caseFile();
    Diagnosis diagnosis = inputs.diagnosis();
    List<String> limits = new ArrayList<>();
    List<Suspect> leading = diagnosis.suspects().stream().limit(1).toList();
    if (leading.stream().anyMatch(suspect -> suspect.joints().size() > 1)) {
      limits.add(
          "The readings do not distinguish the joints of a suspect: which end of a cable, nor a bad"
              + " joint from a damaged cable between the two. How often each kind of joint fails ranks"
              + " them, and that is an assumption.");
    }
    if (caseFile.survey().tests().stream()
        .allMatch(test -> caseFile.survey().loadsOn(test).isEmpty())) {
      limits.add(
          "No load was on in any test: joints that fail under load alone have not been tried.");
    }
    if (isWithoutGround(caseFile)) {
      limits.add(
          "No reading went to ground: a bad hot joint and a bad neutral joint look alike then.");
    }
    boolean hasUnknown =
        caseFile.circuit().cables().stream().anyMatch(cable -> cable.lengthMetres().isEmpty());
    if (hasUnknown) {
      limits.add("Some lengths are unknown: a long cable can look like a joint, or hide one.");
    }
    limits.add(
        "The ohms are no better than the load is known, and hold for the moment of the readings: a"
            + " joint changes with current, history and movement.");
    limits.add(
        "Faults of another kind (insulation, arcing, a wiring diagram wrong in more than the place of"
            + " one box) are not compared; at best nothing explains the readings then.");
    return limits;
  }

  private static boolean isWithoutGround(CaseFile caseFile) {
    return caseFile.survey().tests().stream()
        .flatMap(test -> test.readings().stream())
        .filter(reading -> reading.measurand() == Measurand.VOLTAGE)
        .noneMatch(
            reading ->
                reading.tap() instanceof Tap.Pair pair
                    && (pair.between().first() == ConductorRole.GROUND
                        || pair.between().second() == ConductorRole.GROUND));
  }

  private static Block assumptions(CaseFile caseFile, Diagnosis diagnosis) {
    Set<Assumption> overridden = caseFile.assumptions().overridden();
    List<List<String>> rows = new ArrayList<>();
    for (Assumption assumption : diagnosis.assumptions()) {
      rows.add(
          List.of(
              assumption.key(),
              Figures.number(caseFile.assumptions().value(assumption)),
              assumption.unit(),
              overridden.contains(assumption) ? "the case" : source(assumption),
              assumption.meaning()));
    }
    return new Block.Table(
        "Assumptions used; those marked * have no source",
        List.of(
            new Column("key", false),
            new Column("value", true),
            new Column("unit", false),
            new Column("source", false),
            new Column("meaning", false)),
        rows);
  }

  private static String source(Assumption assumption) {
    boolean hasNone =
        assumption.source().equals("assumption") || assumption.source().contains("no source");
    return assumption.source() + (hasNone ? " *" : "");
  }
}
