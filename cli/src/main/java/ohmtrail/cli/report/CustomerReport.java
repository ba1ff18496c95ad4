package ohmtrail.cli.report;

import java.util.ArrayList;
import java.util.List;
import ohmtrail.cli.casefile.CaseFile;
import ohmtrail.cli.render.Cautions;
import ohmtrail.cli.render.DangerWords;
import ohmtrail.cli.render.Headline;
import ohmtrail.cli.render.words.Figures;
import ohmtrail.cli.render.words.Region;
import ohmtrail.cli.report.document.Block;
import ohmtrail.cli.report.document.Block.Column;
import ohmtrail.cli.report.document.Block.Weight;
import ohmtrail.cli.report.document.Document.Section;
import ohmtrail.cli.report.picture.RunPicture;
import ohmtrail.survey.Finding;

/** Two pages in plain words for who lives with the circuit. */
final class CustomerReport {
  private CustomerReport() {}

  static List<Section> of(ReportInputs inputs) {
    return List.of(found(inputs), done(inputs));
  }

  private static Section found(ReportInputs inputs) {
    CaseFile caseFile = inputs.caseFile();
    List<Block> blocks = new ArrayList<>();
    DangerWords.of(caseFile, inputs.report())
        .ifPresent(words -> blocks.add(new Block.Paragraph(words, Weight.CAUTION)));
    blocks.add(new Block.Paragraph(Headline.of(caseFile, inputs.report()), Weight.LEAD));
    blocks.add(
        Block.words(
            "A connection that has gone bad resists the current. What is plugged in behind it gets"
                + " less voltage, lamps dim when a heater starts, and the connection itself gets hot."
                + " A breaker does not trip on that. The bars show how probable it is that the bad"
                + " connection is in each box; only opening the box, the breaker off, shows it."));
    blocks.add(
        new Block.Drawing(
            "Your circuit from the panel outward",
            inputs.diagnosis().boxes().stream()
                .map(box -> box.box() + " " + Figures.probability(box.probability()))
                .reduce((one, other) -> one + ", " + other)
                .orElse("no box"),
            RunPicture.of(caseFile.circuit(), inputs.diagnosis())));
    List<List<String>> who = Summary.circumstances(caseFile);
    if (!who.isEmpty()) {
      blocks.add(
          new Block.Table(
              "Who, when and where", List.of(new Column("", false), new Column("", false)), who));
    }
    return new Section("found", "What was found", false, blocks);
  }

  private static Section done(ReportInputs inputs) {
    CaseFile caseFile = inputs.caseFile();
    Region region = Region.of(caseFile.circuit().supply());
    List<Block> blocks = new ArrayList<>();
    List<Finding> findings = caseFile.survey().findings();
    blocks.add(
        findings.isEmpty()
            ? Block.words(
                "Readings were taken; no box has been opened and nothing repaired so far.")
            : new Block.Items(
                findings.stream()
                    .map(finding -> finding.place() + ": " + finding.state().word())
                    .toList()));
    inputs
        .before()
        .ifPresent(
            before -> {
              blocks.add(Block.words(Repair.verdict(inputs, before)));
              List<List<String>> rows = Repair.rows(inputs, before.report());
              if (!rows.isEmpty()) {
                blocks.add(
                    new Block.Table(
                        "Readings before and after, in volts",
                        List.of(
                            new Column("test", false),
                            new Column("reading", false),
                            new Column("before", true),
                            new Column("after", true),
                            new Column("sound", true),
                            new Column("left, in sd", true)),
                        rows));
              }
            });
    blocks.add(new Block.Heading("For your records"));
    blocks.add(
        new Block.Table(
            "To be filled in where local rules ask for it",
            List.of(new Column("", false), new Column("", false)),
            List.of(
                List.of("licence of the electrician", "____________________"),
                List.of(
                    "permit or notification under the " + region.rules(), "____________________"),
                List.of("inspection or certificate, number and date", "____________________"),
                List.of("told to the utility, when and by whom", "____________________"),
                List.of("signed", "____________________"))));
    blocks.add(new Block.Heading("Cautions"));
    blocks.add(new Block.Items(Cautions.forAnswer(caseFile, inputs.report())));
    return new Section("done", "What was done, and what to mind", true, blocks);
  }
}
