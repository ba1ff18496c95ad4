package ohmtrail.cli.render.text;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.IntStream;
import ohmtrail.circuit.Circuit;
import ohmtrail.circuit.ConductorRole;
import ohmtrail.circuit.Joint;
import ohmtrail.cli.casefile.CaseFile;
import ohmtrail.cli.render.Cautions;
import ohmtrail.cli.render.DangerWords;
import ohmtrail.cli.render.Headline;
import ohmtrail.cli.render.HeatWords;
import ohmtrail.cli.render.MissingWords;
import ohmtrail.cli.render.Notes;
import ohmtrail.cli.render.OpeningWords;
import ohmtrail.cli.render.PriorWords;
import ohmtrail.cli.render.ResidualWords;
import ohmtrail.cli.render.SlipWords;
import ohmtrail.cli.render.TestFindings;
import ohmtrail.cli.render.words.Figures;
import ohmtrail.cli.render.words.JointWords;
import ohmtrail.cli.render.words.OhmsWords;
import ohmtrail.cli.render.words.ReadingWords;
import ohmtrail.cli.render.words.Region;
import ohmtrail.locate.Diagnosis;
import ohmtrail.locate.FittedParameter;
import ohmtrail.locate.FittedReading;
import ohmtrail.locate.Suspect;
import ohmtrail.locate.Verdict;
import ohmtrail.reference.Assumption;
import ohmtrail.report.OpeningOrder;
import ohmtrail.report.OpeningPlan;
import ohmtrail.report.Report;
import ohmtrail.report.TestState;
import ohmtrail.survey.Measurand;
import ohmtrail.survey.Test;

/** The answer as text, the sentence that matters first. */
public final class LocateText {
  /** Boxes and suspects below one per cent are counted, not listed. */
  private static final double WORTH_A_LINE = 0.01;

  /** In a circuit found sound, suspects are told only from here on. */
  private static final double WORTH_A_LINE_THOUGH_SOUND = 0.05;

  /** Width of the bar of a certain box. */
  private static final int FULL_BAR = 30;

  /** A fitted value within half a tolerance of what was stated is as stated. */
  private static final double WORTH_TELLING = 0.5;

  private static final int MOST_PARAMETERS = 5;

  /** From even odds on, a reading is called wrong. */
  private static final double PROBABLY_WRONG = 0.5;

  private final CaseFile caseFile;
  private final Circuit circuit;
  private final Report report;
  private final Diagnosis diagnosis;
  private final JointWords words;
  private final Region region;
  private final Page page;

  private LocateText(CaseFile caseFile, Report report, int width) {
    this.page = new Page(width);
    this.caseFile = caseFile;
    this.circuit = caseFile.circuit();
    this.report = report;
    this.diagnosis = report.diagnosis();
    this.words = new JointWords(circuit);
    this.region = Region.of(circuit.supply());
  }

  /** Writes it at the usual width. */
  public static String of(CaseFile caseFile, Report report) {
    return of(caseFile, report, Page.WIDTH);
  }

  /** Writes it at a width in columns. */
  public static String of(CaseFile caseFile, Report report, int width) {
    return new LocateText(caseFile, report, width).write();
  }

  private String write() {
    Optional<String> danger = DangerWords.of(caseFile, report);
    danger.ifPresent(page::paragraph);
    page.gap().paragraph(Headline.of(caseFile, report));
    boolean anyRead = !diagnosis.readings().isEmpty();
    if (diagnosis.verdict() != Verdict.UNEXPLAINED) {
      writeBoxes();
    }
    if (diagnosis.verdict() != Verdict.UNEXPLAINED && anyRead) {
      writeSuspects();
      writeAlike();
    }
    boolean told = danger.isPresent() && diagnosis.degradedJoints() < 2;
    if (diagnosis.verdict() == Verdict.DEGRADED && anyRead && !told) {
      writeHeat();
    }
    writeLoads();
    writeOvervoltage();
    writeTrips();
    writeNotes();
    writeWhatIsMissing();
    page.heading("Cautions").items(Cautions.forAnswer(caseFile, report));
    if (anyRead) {
      writeReadings();
      writeParameters();
    }
    writeAssumptions();
    return page.toString();
  }

  private void writeHeat() {
    page.heading("Heat");
    List<Suspect> bad = diagnosis.badSuspects();
    if (bad.size() == 1) {
      page.indented(heat(bad.get(0)));
    } else {
      bad.forEach(suspect -> page.item(words.suspect(suspect, "") + ": " + heat(suspect)));
    }
  }

  private String heat(Suspect suspect) {
    return report
        .heatOf(suspect)
        .map(HeatWords::of)
        .orElse(
            "The "
                + region.conductor(ConductorRole.GROUND)
                + " carries no current but in a fault. The joint heats then, and may keep the"
                + " breaker from tripping.");
  }

  private void writeWhatIsMissing() {
    List<String> missing = MissingWords.of(caseFile, report);
    if (!missing.isEmpty()) {
      page.heading("What is missing, the most telling first").items(missing);
    }
  }

  private void writeNotes() {
    List<String> notes = Notes.of(caseFile, diagnosis);
    if (!notes.isEmpty()) {
      page.heading("Worth knowing").items(notes);
    }
  }

  private void writeBoxes() {
    OpeningOrder opening = report.opening();
    OpeningWords openingWords = new OpeningWords(circuit, opening);
    List<OpeningPlan.Step> listed =
        opening.plan().steps().stream().filter(box -> box.probability() >= WORTH_A_LINE).toList();
    page.heading(
            opening.timed()
                ? "Boxes, in the order of the quickest search"
                : "Boxes, the likeliest to hold a bad joint first")
        .table(boxes(listed, opening.timed()));
    if (diagnosis.readings().isEmpty()) {
      page.indented("before any reading, from how often each kind of joint fails");
    }
    int rest = diagnosis.boxes().size() - listed.size();
    if (rest > 0) {
      page.indented("and " + rest + " more, each less than 1 %");
    }
    if (opening.timed()) {
      page.indented(
          openingWords.cost() + (opening.differs() ? " " + openingWords.otherOrder() : ""));
    }
  }

  private Table boxes(List<OpeningPlan.Step> listed, boolean timed) {
    Table table = new Table().words("").numbers("");
    if (timed) {
      table.numbers("");
    }
    table.words("");
    for (OpeningPlan.Step box : listed) {
      List<String> minutes =
          timed ? List.of(Figures.upToTenths(box.minutes()) + " min") : List.of();
      table.row(cells(box.box(), box.probability(), minutes));
    }
    List<String> none = timed ? List.of("") : List.of();
    return table
        .row(cells("(no bad joint)", diagnosis.healthyProbability(), none))
        .row(cells("(none of this)", diagnosis.unexplainedProbability(), none));
  }

  private static List<String> cells(String what, double probability, List<String> minutes) {
    List<String> cells = new ArrayList<>(List.of(what, Figures.probability(probability)));
    cells.addAll(minutes);
    cells.add(bar(probability));
    return cells;
  }

  private static String bar(double probability) {
    return "#".repeat((int) Math.round(FULL_BAR * probability));
  }

  private void writeSuspects() {
    List<Suspect> listed = listedSuspects();
    if (listed.isEmpty()) {
      return;
    }
    boolean sound = diagnosis.verdict() == Verdict.HEALTHY;
    page.heading(sound ? "Suspects, should a joint be bad after all" : "Suspects");
    for (Suspect suspect : listed) {
      page.item(
          Figures.probability(suspect.probability())
              + "  "
              + words.suspect(suspect, "")
              + ": "
              + OhmsWords.of(suspect.ohms())
              + heatOf(suspect));
      writeMembers(suspect);
    }
  }

  private String heatOf(Suspect suspect) {
    if (diagnosis.verdict() == Verdict.HEALTHY) {
      return "";
    }
    return report.heatOf(suspect).map(heat -> ", " + HeatWords.brief(heat)).orElse("");
  }

  private List<Suspect> listedSuspects() {
    boolean sound = diagnosis.verdict() == Verdict.HEALTHY;
    double least = sound ? WORTH_A_LINE_THOUGH_SOUND : WORTH_A_LINE;
    return diagnosis.suspects().stream().filter(suspect -> suspect.probability() >= least).toList();
  }

  private void writeMembers(Suspect suspect) {
    Table table = new Table().words("").numbers("").words("").words("");
    int listed = 0;
    for (int j = 0; j < suspect.joints().size(); j++) {
      double probability = suspect.jointProbabilities().get(j);
      if (listed == 0 || probability >= WORTH_A_LINE) {
        listed++;
        Joint joint = suspect.joints().get(j);
        table.row("   ", Figures.probability(probability), joint.id(), joint.kind().word());
      }
    }
    page.table(table);
    int rest = suspect.joints().size() - listed;
    if (rest > 0) {
      page.line("       and " + rest + " more, each less than 1 %");
    }
  }

  private void writeAlike() {
    List<String> sets =
        listedSuspects().stream()
            .filter(suspect -> suspect.joints().size() > 1)
            .map(this::alike)
            .toList();
    if (!sets.isEmpty()) {
      page.heading("What the readings cannot tell apart").items(sets);
    }
  }

  private String alike(Suspect suspect) {
    String who =
        words.boxes(suspect).size() > 1
            ? "The "
                + suspect.joints().size()
                + " joints of "
                + words.suspect(suspect, "")
                + ", and the cable between them,"
            : "The " + suspect.joints().size() + " joints in question at " + suspect.first().box();
    String ranking =
        PriorWords.rankOnly(suspect)
            ? "Only how often each kind of joint fails ranks them"
                + PriorWords.because(suspect, caseFile.survey(), caseFile.assumptions())
                    .map(because -> ": " + because + ".")
                    .orElse(".")
            : "The readings favour the first by a factor of "
                + Figures.twoDigits(suspect.spread())
                + " at most; how often each kind of joint fails does the rest.";
    return who + " look the same from outside. " + ranking;
  }

  private void writeLoads() {
    List<String> idle = TestFindings.cannotStart(caseFile.survey(), report.tests());
    if (!idle.isEmpty()) {
      page.heading("Loads that cannot start, by the best explanation").items(idle);
    }
  }

  private void writeOvervoltage() {
    List<String> above = TestFindings.overvoltages(circuit.supply(), report.tests());
    if (!above.isEmpty()) {
      page.heading("Receptacles above 110 % of nominal, by the best explanation").items(above);
    }
  }

  /** Readings that cannot have been taken as they stand: the circuit would have been off. */
  private void writeTrips() {
    List<String> trips = ResidualWords.trips(caseFile, report.tests());
    List<String> watched = ResidualWords.watched(caseFile, report.tests());
    if (!watched.isEmpty()) {
      page.heading("What residual-current devices did, and saw by the best explanation")
          .items(watched);
    }
    if (!trips.isEmpty()) {
      page.heading("What would have tripped in the middle of the readings").items(trips);
    }
  }

  private void writeReadings() {
    boolean volts =
        diagnosis.readings().stream()
            .allMatch(fitted -> fitted.reading().measurand() == Measurand.VOLTAGE);
    page.heading("Readings, in volts" + (volts ? "" : " where no other unit stands"))
        .indented(
            (diagnosis.verdict() == Verdict.UNEXPLAINED
                    ? "sound: with every joint sound and everything as stated"
                    : "sound: with every joint sound, supply, loads and lengths as fitted")
                + "; fitted: what the answer shows; off: read less fitted; sd: the same in standard"
                + " deviations of the reading. The supply is that before its own impedance.");
    Table table =
        new Table()
            .words("box")
            .words("between")
            .words("meter")
            .numbers("read")
            .numbers("sound")
            .numbers("fitted")
            .numbers("off")
            .numbers("sd");
    for (TestState state : report.tests()) {
      Test test = state.test();
      List<FittedReading> readings =
          diagnosis.readings().stream()
              .filter(fitted -> fitted.test().equals(test.name()))
              .toList();
      if (!readings.isEmpty()) {
        String supply = test.isDead() ? "" : " (supply " + Figures.volts(state.supplyVolts()) + ")";
        table.section(CheckText.title(caseFile, test) + supply);
        readings.forEach(fitted -> table.row(cells(fitted)));
      }
    }
    page.table(table);
    List<String> wrong =
        IntStream.range(0, diagnosis.readings().size())
            .filter(r -> diagnosis.readings().get(r).wrongProbability() > PROBABLY_WRONG)
            .mapToObj(this::probablyWrong)
            .toList();
    page.items(wrong);
  }

  private List<String> cells(FittedReading fitted) {
    boolean wrong = fitted.wrongProbability() > PROBABLY_WRONG;
    Measurand measurand = fitted.reading().measurand();
    return List.of(
        fitted.reading().box(),
        new ReadingWords(region).tap(fitted.reading().tap()),
        fitted.reading().meter(),
        ReadingWords.cell(fitted.reading()) + (wrong ? "?" : ""),
        ReadingWords.cell(measurand, fitted.healthy()),
        ReadingWords.cell(measurand, fitted.fitted()),
        ReadingWords.difference(measurand, fitted.residual()),
        Figures.signedTenths(fitted.residualSigmas()));
  }

  private String probablyWrong(int place) {
    FittedReading fitted = diagnosis.readings().get(place);
    return "? "
        + new ReadingWords(region).where(fitted.reading())
        + " in test "
        + fitted.test()
        + " is probably wrong ("
        + Figures.probability(fitted.wrongProbability())
        + "): "
        + ReadingWords.figure(fitted.reading())
        + " where "
        + ReadingWords.figure(fitted.reading().measurand(), fitted.fitted())
        + " fits. "
        + SlipWords.instead(caseFile, diagnosis, place);
  }

  private void writeParameters() {
    List<FittedParameter> moved =
        diagnosis.parameters().stream()
            .filter(fitted -> Math.abs(fitted.pull()) >= WORTH_TELLING)
            .sorted(
                Comparator.comparingDouble((FittedParameter fitted) -> Math.abs(fitted.pull()))
                    .reversed())
            .limit(MOST_PARAMETERS)
            .toList();
    page.heading("What the fit moved most");
    if (moved.isEmpty()) {
      page.indented("nothing by more than half of its tolerance");
      return;
    }
    Table table = new Table().words("").numbers("stated").numbers("fitted").numbers("sd");
    for (FittedParameter fitted : moved) {
      String unit = fitted.parameter().unit();
      table.row(
          fitted.parameter().description(),
          withUnit(fitted.parameter().nominal(), unit),
          withUnit(fitted.value(), unit),
          Figures.signedTenths(fitted.pull()));
    }
    page.table(table);
  }

  private static String withUnit(double value, String unit) {
    return (Figures.number(value) + " " + unit).strip();
  }

  private void writeAssumptions() {
    Set<Assumption> overridden = caseFile.assumptions().overridden();
    Table table = new Table().words("").numbers("").words("").words("");
    for (Assumption assumption : diagnosis.assumptions()) {
      table.row(
          assumption.key(),
          Figures.number(caseFile.assumptions().value(assumption)),
          assumption.unit(),
          overridden.contains(assumption) ? "* set by the case" : assumption.source());
    }
    page.heading("Assumptions").items(CheckText.taken(caseFile)).table(table);
  }
}
