package ohmtrail.cli.report;

import java.time.LocalDateTime;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import ohmtrail.circuit.Box;
import ohmtrail.circuit.Cable;
import ohmtrail.cli.casefile.CaseFile;
import ohmtrail.cli.casefile.circumstances.MeterIdentity;
import ohmtrail.cli.casefile.circumstances.TestTime;
import ohmtrail.cli.render.words.Figures;
import ohmtrail.cli.render.words.JointWords;
import ohmtrail.cli.render.words.ReadingWords;
import ohmtrail.cli.render.words.Region;
import ohmtrail.cli.report.document.Block;
import ohmtrail.cli.report.document.Block.Column;
import ohmtrail.cli.report.document.Document.Section;
import ohmtrail.locate.FittedReading;
import ohmtrail.locate.Verdict;
import ohmtrail.report.TestState;
import ohmtrail.survey.Accuracy;
import ohmtrail.survey.Finding;
import ohmtrail.survey.LoadInUse;
import ohmtrail.survey.Meter;
import ohmtrail.survey.load.Load;

/** The circuit as it was told, what was measured with, every reading, what was seen. */
final class Evidence {
  static final DateTimeFormatter TIME =
      DateTimeFormatter.ofPattern("yyyy-MM-dd HH:mm", Locale.ROOT);
  private static final double PROBABLY_WRONG = 0.5;

  private Evidence() {}

  static Section circuit(ReportInputs inputs) {
    CaseFile caseFile = inputs.caseFile();
    List<Block> blocks = new ArrayList<>();
    blocks.add(
        Block.words(
            "Supply "
                + Figures.supply(caseFile.circuit().supply())
                + ", "
                + Figures.number(caseFile.circuit().supply().hertz())
                + " Hz, breaker "
                + Figures.amperes(caseFile.circuit().breakerAmperes())
                + ". As told by whoever wrote the case; nothing here was looked up on the spot by"
                + " the program."));
    blocks.add(boxes(caseFile));
    if (!caseFile.taken().isEmpty()) {
      blocks.add(
          new Block.Table(
              "Not said, and taken as usual",
              List.of(
                  new Column("key", false),
                  new Column("taken", false),
                  new Column("because", false)),
              caseFile.taken().stream()
                  .map(taken -> List.of(taken.key(), taken.value(), taken.because()))
                  .toList()));
    }
    if (!caseFile.survey().meters().isEmpty()) {
      blocks.add(meters(caseFile));
    }
    if (!caseFile.survey().loads().isEmpty()) {
      blocks.add(loads(caseFile));
    }
    return new Section("circuit", "The circuit as told", true, blocks);
  }

  private static Block boxes(CaseFile caseFile) {
    Region region = Region.of(caseFile.circuit().supply());
    List<List<String>> rows = new ArrayList<>();
    for (Box box : caseFile.circuit().boxes()) {
      List<Cable> path = caseFile.circuit().pathTo(box.name());
      Optional<Cable> cable =
          path.isEmpty() ? Optional.empty() : Optional.of(path.get(path.size() - 1));
      Set<String> kinds = new LinkedHashSet<>();
      caseFile.circuit().jointsIn(box.name()).forEach(joint -> kinds.add(joint.kind().word()));
      rows.add(
          List.of(
              box.name(),
              region.kind(box.kind()),
              cable.map(Cable::from).orElse(""),
              cable.map(each -> length(region, each)).orElse(""),
              cable.map(each -> each.conductor().size().designation()).orElse(""),
              JointWords.listed(List.copyOf(kinds), "and")));
    }
    return new Block.Table(
        "Boxes from the panel outward, each with the cable that feeds it",
        List.of(
            new Column("box", false),
            new Column("kind", false),
            new Column("fed from", false),
            new Column("length", true),
            new Column("size", false),
            new Column("joints", false)),
        rows);
  }

  private static String length(Region region, Cable cable) {
    return cable.lengthMetres().isPresent()
        ? region.length(cable.lengthMetres().getAsDouble())
        : "unknown";
  }

  private static Block meters(CaseFile caseFile) {
    List<List<String>> rows = new ArrayList<>();
    for (Meter meter : caseFile.survey().meters()) {
      Optional<MeterIdentity> identity = caseFile.circumstances().identityOf(meter.name());
      rows.add(
          List.of(
              meter.name(),
              identity.flatMap(MeterIdentity::description).orElse("not said"),
              identity.flatMap(MeterIdentity::serial).orElse("not said"),
              identity.flatMap(MeterIdentity::calibrated).map(Object::toString).orElse("not said"),
              accuracy(meter.accuracy())));
    }
    return new Block.Table(
        "Meters",
        List.of(
            new Column("meter", false),
            new Column("description", false),
            new Column("serial number", false),
            new Column("calibrated", false),
            new Column("accuracy", false)),
        rows);
  }

  private static String accuracy(Accuracy accuracy) {
    return "\u00b1("
        + Figures.wholeShare(accuracy.share())
        + " + "
        + Figures.number(accuracy.counts())
        + " counts)";
  }

  private static Block loads(CaseFile caseFile) {
    return new Block.Table(
        "Loads",
        List.of(new Column("load", false), new Column("rating", true)),
        caseFile.survey().loads().stream()
            .map((Load load) -> List.of(load.name(), Figures.rating(load)))
            .toList());
  }

  static Section readings(ReportInputs inputs) {
    CaseFile caseFile = inputs.caseFile();
    List<Block> blocks = new ArrayList<>();
    boolean isFitted = inputs.diagnosis().verdict() != Verdict.UNEXPLAINED;
    blocks.add(
        Block.words(
            "sound: what every joint sound would show, "
                + (isFitted ? "supply, loads and lengths as fitted" : "everything as stated")
                + "; fitted: what the answer shows; off: read less fitted; sd: the same in standard"
                + " deviations of the reading. Volts where no other unit stands."));
    blocks.add(table(inputs));
    if (!caseFile.survey().findings().isEmpty()) {
      blocks.add(
          new Block.Table(
              "What was seen",
              List.of(new Column("box", false), new Column("seen", false)),
              caseFile.survey().findings().stream()
                  .map((Finding finding) -> List.of(finding.place(), finding.state().word()))
                  .toList()));
    }
    if (!caseFile.circumstances().notes().isEmpty()) {
      blocks.add(new Block.Heading("Notes"));
      blocks.add(new Block.Items(caseFile.circumstances().notes()));
    }
    return new Section("readings", "Every reading", true, blocks);
  }

  private static Block table(ReportInputs inputs) {
    CaseFile caseFile = inputs.caseFile();
    ReadingWords words = new ReadingWords(Region.of(caseFile.circuit().supply()));
    List<List<String>> rows = new ArrayList<>();
    for (TestState state : inputs.report().tests()) {
      List<FittedReading> readings =
          inputs.diagnosis().readings().stream()
              .filter(fitted -> fitted.test().equals(state.test().name()))
              .toList();
      if (!readings.isEmpty()) {
        rows.add(List.of(title(caseFile, state)));
        readings.forEach(fitted -> rows.add(row(words, fitted)));
      }
    }
    return new Block.Table(
        "Readings, test by test",
        List.of(
            new Column("box", false),
            new Column("between", false),
            new Column("meter", false),
            new Column("read", true),
            new Column("sound", true),
            new Column("fitted", true),
            new Column("off", true),
            new Column("sd", true)),
        rows);
  }

  private static String title(CaseFile caseFile, TestState state) {
    String loads =
        JointWords.listed(
            caseFile.survey().loadsOn(state.test()).stream()
                .map(LoadInUse::load)
                .distinct()
                .toList(),
            "and");
    return "Test "
        + state.test().name()
        + ": "
        + (state.test().isDead()
            ? "circuit dead"
            : (loads.isEmpty() ? "nothing on" : loads + " on")
                + ", supply "
                + Figures.volts(state.supplyVolts())
                + " as fitted")
        + caseFile
            .circumstances()
            .timeOf(state.test().name())
            .map(TestTime::at)
            .map(at -> ", " + at.format(TIME))
            .orElse("");
  }

  private static List<String> row(ReadingWords words, FittedReading fitted) {
    var measurand = fitted.reading().measurand();
    return List.of(
        fitted.reading().box(),
        words.tap(fitted.reading().tap()),
        fitted.reading().meter(),
        ReadingWords.cell(fitted.reading())
            + (fitted.wrongProbability() > PROBABLY_WRONG ? " (probably wrong)" : ""),
        ReadingWords.cell(measurand, fitted.healthy()),
        ReadingWords.cell(measurand, fitted.fitted()),
        ReadingWords.difference(measurand, fitted.residual()),
        Figures.signedTenths(fitted.residualSigmas()));
  }

  static Optional<Section> photographs(ReportInputs inputs) {
    if (inputs.photographs().isEmpty()) {
      return Optional.empty();
    }
    List<Block> blocks = new ArrayList<>();
    for (Photographs.Opened opened : inputs.photographs()) {
      String shows = opened.said().shows().orElse("no words were given for it");
      String taken =
          opened.said().taken().map((LocalDateTime at) -> ", taken " + at.format(TIME)).orElse("");
      blocks.add(
          new Block.Photo(
              opened.said().file() + taken + ": " + shows + ". SHA-256 " + opened.sha256(),
              "Photograph " + opened.said().file() + ": " + shows,
              opened.file()));
    }
    return Optional.of(new Section("photographs", "Photographs", true, blocks));
  }
}
