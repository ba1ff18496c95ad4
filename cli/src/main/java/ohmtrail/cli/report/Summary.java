package ohmtrail.cli.report;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import ohmtrail.circuit.Box;
import ohmtrail.cli.casefile.CaseFile;
import ohmtrail.cli.casefile.circumstances.Circumstances;
import ohmtrail.cli.render.Cautions;
import ohmtrail.cli.render.DangerWords;
import ohmtrail.cli.render.Headline;
import ohmtrail.cli.render.MissingWords;
import ohmtrail.cli.render.SensitivityWords;
import ohmtrail.cli.render.words.Figures;
import ohmtrail.cli.render.words.JointWords;
import ohmtrail.cli.render.words.OhmsWords;
import ohmtrail.cli.render.words.ReadingWords;
import ohmtrail.cli.render.words.Region;
import ohmtrail.cli.report.document.Block;
import ohmtrail.cli.report.document.Block.Weight;
import ohmtrail.cli.report.document.Document.Section;
import ohmtrail.cli.report.picture.RunPicture;
import ohmtrail.locate.Diagnosis;
import ohmtrail.locate.Suspect;
import ohmtrail.locate.Verdict;
import ohmtrail.sensitivity.WithoutReading;
import ohmtrail.survey.Finding;

/** The page for everybody. */
final class Summary {
  private static final int MOST_CARRYING = 3;

  private final ReportInputs inputs;
  private final CaseFile caseFile;
  private final Diagnosis diagnosis;
  private final List<Block> blocks = new ArrayList<>();

  private Summary(ReportInputs inputs) {
    this.inputs = inputs;
    this.caseFile = inputs.caseFile();
    this.diagnosis = inputs.diagnosis();
  }

  static Section of(ReportInputs inputs) {
    return new Summary(inputs).section();
  }

  private Section section() {
    DangerWords.of(caseFile, inputs.report())
        .ifPresent(words -> blocks.add(new Block.Paragraph(words, Weight.CAUTION)));
    blocks.add(new Block.Paragraph(Headline.of(caseFile, inputs.report()), Weight.LEAD));
    blocks.add(new Block.Heading("How sure, and given what"));
    blocks.add(new Block.Items(howSure()));
    List<String> rests = restsOn();
    if (!rests.isEmpty()) {
      blocks.add(new Block.Heading("What that rests on"));
      blocks.add(new Block.Items(rests));
    }
    List<String> unexamined = unexamined();
    if (!unexamined.isEmpty()) {
      blocks.add(new Block.Heading("What was not examined"));
      blocks.add(new Block.Items(unexamined));
    }
    blocks.add(
        new Block.Drawing(
            "The run from the panel outward, with the probability of a bad joint in each box",
            boxesInWords(),
            RunPicture.of(caseFile.circuit(), diagnosis)));
    List<List<String>> said = circumstances(caseFile);
    if (!said.isEmpty()) {
      blocks.add(
          new Block.Table(
              "Who, when and where",
              List.of(new Block.Column("", false), new Block.Column("", false)),
              said));
    }
    blocks.add(new Block.Heading("Cautions"));
    blocks.add(new Block.Items(Cautions.forAnswer(caseFile, inputs.report())));
    return new Section("summary", "What was found", false, blocks);
  }

  private String boxesInWords() {
    return diagnosis.boxes().stream()
            .map(box -> box.box() + " " + Figures.probability(box.probability()))
            .reduce((one, other) -> one + ", " + other)
            .orElse("no box")
        + ", no bad joint "
        + Figures.probability(diagnosis.healthyProbability());
  }

  private List<String> howSure() {
    List<String> said = new ArrayList<>();
    if (diagnosis.verdict() == Verdict.DEGRADED && !diagnosis.suspects().isEmpty()) {
      Suspect suspect = diagnosis.suspects().get(0);
      said.add(
          "The readings are consistent with "
              + new JointWords(caseFile.circuit()).suspect(suspect, "")
              + ", "
              + OhmsWords.of(suspect.ohms())
              + " added to it: probability "
              + Figures.probability(suspect.probability())
              + ".");
      diagnosis
          .support()
          .bayesFactor()
          .ifPresent(
              factor ->
                  said.add(
                      "Against the next suspect the readings give it "
                          + Strength.said(factor)
                          + ", whatever is believed beforehand of the two."));
    } else {
      said.add(
          "Probability that no joint is bad: "
              + Figures.probability(diagnosis.healthyProbability())
              + "; that nothing on offer explains the readings: "
              + Figures.probability(diagnosis.unexplainedProbability())
              + ".");
    }
    said.add(
        "Each probability is conditional on the circuit as it was told, on the hypotheses that were"
            + " compared and on the assumptions listed in this report. It is no frequency of"
            + " failures, and what opening the box shows outweighs it.");
    return said;
  }

  private List<String> restsOn() {
    List<String> said = new ArrayList<>();
    Region region = Region.of(caseFile.circuit().supply());
    inputs
        .sensitivity()
        .ifPresent(
            sensitivity -> {
              List<WithoutReading> carrying =
                  sensitivity.withoutReading().stream()
                      .filter(each -> each.change().any())
                      .limit(MOST_CARRYING)
                      .toList();
              SensitivityWords words = new SensitivityWords(caseFile);
              for (WithoutReading each : carrying) {
                said.add(
                    "Without "
                        + new ReadingWords(region).where(each.reading())
                        + " in test "
                        + each.test()
                        + " it would be: "
                        + words.conclusion(each.conclusion())
                        + ".");
              }
              if (carrying.isEmpty() && !sensitivity.withoutReading().isEmpty()) {
                said.add("Any one reading can be left out without changing the conclusion.");
              }
              said.add(SensitivityWords.together(sensitivity));
            });
    return said;
  }

  private List<String> unexamined() {
    List<String> said = new ArrayList<>();
    Set<String> seen = new LinkedHashSet<>();
    caseFile.survey().tests().stream()
        .flatMap(test -> test.readings().stream())
        .forEach(reading -> seen.add(reading.box()));
    caseFile.survey().findings().stream()
        .filter(finding -> finding.state() != Finding.State.OUT_OF_REACH)
        .forEach(finding -> seen.add(finding.place()));
    List<String> never =
        caseFile.circuit().boxes().stream()
            .map(Box::name)
            .filter(box -> !seen.contains(box))
            .toList();
    if (!never.isEmpty()) {
      said.add("Neither read at nor looked into: " + JointWords.listed(never, "and") + ".");
    }
    if (caseFile.survey().findings().isEmpty()) {
      said.add("No box was opened: nothing of this was seen by eye.");
    }
    said.addAll(MissingWords.of(caseFile, inputs.report()));
    return said;
  }

  /** Who, when and where, a row each. */
  static List<List<String>> circumstances(CaseFile caseFile) {
    Circumstances said = caseFile.circumstances();
    List<List<String>> rows = new ArrayList<>();
    said.person().ifPresent(value -> rows.add(List.of("person", value)));
    said.date().ifPresent(value -> rows.add(List.of("date", value.toString())));
    said.place().ifPresent(value -> rows.add(List.of("place", value)));
    said.claim().ifPresent(value -> rows.add(List.of("claim", value)));
    said.job().ifPresent(value -> rows.add(List.of("job", value)));
    said.weather().ifPresent(value -> rows.add(List.of("weather", value)));
    said.temperature().ifPresent(value -> rows.add(List.of("temperature", value)));
    return rows;
  }
}
