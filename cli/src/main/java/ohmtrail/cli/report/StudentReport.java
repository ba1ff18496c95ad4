package ohmtrail.cli.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import ohmtrail.cli.casefile.CaseFile;
import ohmtrail.cli.render.words.Figures;
import ohmtrail.cli.render.words.JointWords;
import ohmtrail.cli.render.words.ReadingWords;
import ohmtrail.cli.render.words.Region;
import ohmtrail.cli.report.document.Block;
import ohmtrail.cli.report.document.Block.Column;
import ohmtrail.cli.report.document.Document.Section;
import ohmtrail.locate.FittedReading;
import ohmtrail.locate.Suspect;
import ohmtrail.locate.Verdict;
import ohmtrail.report.TestState;
import ohmtrail.report.heat.Heat;
import ohmtrail.sensitivity.Rival;

/** The equations with the numbers of this case in them, step by step. */
final class StudentReport {
  private StudentReport() {}

  static List<Section> of(ReportInputs inputs) {
    List<Section> sections = new ArrayList<>();
    sections.add(task(inputs));
    sections.add(currents(inputs));
    sections.add(fit(inputs));
    weighing(inputs).ifPresent(sections::add);
    sections.add(Charts.of(inputs));
    sections.add(Origins.of(inputs));
    return sections;
  }

  private static Section task(ReportInputs inputs) {
    return new Section(
        "task",
        "1 What is given, and what is asked",
        false,
        List.of(
            Block.words(
                "Given are the circuit as wired and the volts below. Asked is whether a joint has"
                    + " resistance added to it, where, and how much. A joint of R ohms that carries I"
                    + " amperes takes U = I R from everything behind it and turns P = I\u00b2 R into"
                    + " heat."),
            ((Block.Table) Evidence.circuit(inputs).blocks().get(1)),
            Evidence.readings(inputs).blocks().get(1)));
  }

  private static Section currents(ReportInputs inputs) {
    List<Block> blocks = new ArrayList<>();
    List<List<String>> rows = new ArrayList<>();
    for (TestState test : inputs.report().tests()) {
      test.loads()
          .forEach(
              load ->
                  rows.add(
                      List.of(
                          test.test().name(),
                          load.use().load(),
                          Figures.volts(test.supplyVolts()),
                          Figures.volts(load.volts()),
                          Figures.amperes(load.amperes()),
                          Figures.watts(load.watts()))));
    }
    blocks.add(
        Block.words(
            "Ohm's law round the loop: the supply drives each load through its own impedance, two"
                + " conductors and every joint on the way. What reaches the load is U = U_supply - I Z,"
                + " and I follows from what the load takes at U. Both together give the operating"
                + " point:"));
    if (rows.isEmpty()) {
      blocks.add(Block.words("No load was on: no current but that of the meters flowed."));
    } else {
      blocks.add(
          new Block.Table(
              "Operating points, by the best explanation",
              List.of(
                  new Column("test", false),
                  new Column("load", false),
                  new Column("U_supply", true),
                  new Column("U", true),
                  new Column("I", true),
                  new Column("P = U I", true)),
              rows));
    }
    heat(inputs).ifPresent(blocks::add);
    return new Section("currents", "2 Currents, drops and heat", true, blocks);
  }

  private static Optional<Block> heat(ReportInputs inputs) {
    return inputs.diagnosis().verdict() != Verdict.DEGRADED
        ? Optional.empty()
        : inputs.diagnosis().badSuspects().stream()
            .findFirst()
            .flatMap(inputs.report()::heatOf)
            .flatMap(found -> found.measured())
            .flatMap(
                inTest ->
                    inTest
                        .heat()
                        .estimate()
                        .map((Heat heat) -> Block.words(heatWords(inTest.test(), heat))));
  }

  private static String heatWords(String test, Heat heat) {
    return "In test "
        + test
        + " the bad joint makes P = I\u00b2 R = ("
        + Figures.amperes(heat.amperes())
        + ")\u00b2 \u00b7 "
        + Figures.estimatedOhms(heat.ohms())
        + " = "
        + Figures.watts(heat.watts())
        + ".";
  }

  private static Section fit(ReportInputs inputs) {
    List<Block> blocks = new ArrayList<>();
    ReadingWords words = new ReadingWords(Region.of(inputs.caseFile().circuit().supply()));
    blocks.add(
        Block.words(
            "A residual is r = read - fitted. Divided by the standard deviation s of the reading it"
                + " says how odd it is: |r/s| above 2 once in twenty, above 3 once in four hundred."
                + " The sum of (r/s)\u00b2 over all readings, with what the fit moved of supply, loads and"
                + " lengths in their own tolerances, is what the fit makes as small as it can."));
    List<List<String>> rows = new ArrayList<>();
    for (FittedReading fitted : inputs.diagnosis().readings()) {
      rows.add(
          List.of(
              fitted.test() + ", " + words.name(fitted.reading()),
              ReadingWords.cell(fitted.reading()),
              ReadingWords.cell(fitted.reading().measurand(), fitted.fitted()),
              ReadingWords.difference(fitted.reading().measurand(), fitted.residual()),
              Figures.hundredths(fitted.sigma()),
              Figures.signedTenths(fitted.residualSigmas())));
    }
    blocks.add(
        new Block.Table(
            "Residuals",
            List.of(
                new Column("reading", false),
                new Column("read", true),
                new Column("fitted", true),
                new Column("r", true),
                new Column("s", true),
                new Column("r/s", true)),
            rows));
    return new Section("fit", "3 Residuals", true, blocks);
  }

  private static Optional<Section> weighing(ReportInputs inputs) {
    if (inputs.sensitivity().isEmpty()
        || inputs.sensitivity().get().rivals().isEmpty()
        || inputs.diagnosis().verdict() != Verdict.DEGRADED) {
      return Optional.empty();
    }
    CaseFile caseFile = inputs.caseFile();
    JointWords joints = new JointWords(caseFile.circuit());
    Suspect answer = inputs.diagnosis().suspects().get(0);
    List<Block> blocks = new ArrayList<>();
    blocks.add(
        Block.words(
            "Bayes' rule: posterior odds = Bayes factor \u00b7 prior odds. The Bayes factor is the"
                + " ratio of the marginal likelihoods, each the likelihood integrated over the ohms and"
                + " all that is known only roughly. For "
                + joints.suspect(answer, "")
                + ", probability "
                + Figures.probability(answer.probability())
                + ":"));
    List<List<String>> rows = new ArrayList<>();
    for (Rival rival : inputs.sensitivity().get().rivals().stream().limit(12).toList()) {
      rival
          .bayesFactor()
          .ifPresent(
              factor ->
                  rows.add(
                      List.of(
                          joints.suspect(rival.suspect(), ""),
                          Figures.number(rival.suspect().probability()),
                          Strength.figure(factor),
                          Strength.of(factor).words())));
    }
    if (!rows.isEmpty()) {
      blocks.add(
          new Block.Table(
              "Against each rival",
              List.of(
                  new Column("rival", false),
                  new Column("its probability", true),
                  new Column("Bayes factor", true),
                  new Column("in words", false)),
              rows));
    }
    return Optional.of(new Section("weighing", "4 Weighing", true, blocks));
  }
}
