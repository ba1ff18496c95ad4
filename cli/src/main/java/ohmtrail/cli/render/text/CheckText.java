package ohmtrail.cli.render.text;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import ohmtrail.circuit.Circuit;
import ohmtrail.circuit.Supply;
import ohmtrail.cli.casefile.CaseFile;
import ohmtrail.cli.render.Cautions;
import ohmtrail.cli.render.MissingWords;
import ohmtrail.cli.render.words.Figures;
import ohmtrail.cli.render.words.JointWords;
import ohmtrail.cli.render.words.KnownWords;
import ohmtrail.cli.render.words.Region;
import ohmtrail.cli.render.words.SwitchWords;
import ohmtrail.map.known.UnknownRun;
import ohmtrail.report.Missing;
import ohmtrail.survey.LoadInUse;
import ohmtrail.survey.Meter;
import ohmtrail.survey.Survey;
import ohmtrail.survey.Switching;
import ohmtrail.survey.Test;
import ohmtrail.survey.load.Load;

/** A case as understood. */
public final class CheckText {
  private static final double PER_CENT = 100;
  private static final String IDLE = "idle";

  private final CaseFile caseFile;
  private final Circuit circuit;
  private final Survey survey;
  private final Page page = new Page();

  private CheckText(CaseFile caseFile) {
    this.caseFile = caseFile;
    this.circuit = caseFile.circuit();
    this.survey = caseFile.survey();
  }

  /** Writes it. */
  public static String of(CaseFile caseFile) {
    return new CheckText(caseFile).write();
  }

  private String write() {
    page.paragraph(summary());
    writeWarnings();
    Supply supply = circuit.supply();
    page.heading(
        "Circuit: "
            + Figures.supply(supply)
            + ", "
            + Figures.number(supply.hertz())
            + " Hz, breaker "
            + Figures.amperes(circuit.breakerAmperes()));
    caseFile
        .unknown()
        .ifPresentOrElse(
            run -> page.items(KnownWords.of(run, Region.of(supply))),
            () -> CircuitTree.draw(circuit, page));
    page.items(taken(caseFile));
    writeMeters();
    writeLoads();
    writeTests();
    writeWhatWouldHelp();
    return page.toString();
  }

  private String summary() {
    return "The case ("
        + caseFile.title()
        + ") is consistent: "
        + counted(circuit.boxes().size(), "box", "boxes")
        + caseFile.unknown().map(CheckText::open).orElseGet(this::laid)
        + "; "
        + counted(survey.tests().size(), "test", "tests")
        + " with "
        + counted(survey.readingCount(), "reading", "readings")
        + "."
        + (caseFile.warnings().isEmpty()
            ? ""
            : " It was read with "
                + counted(caseFile.warnings().size(), "warning", "warnings")
                + ".");
  }

  private String laid() {
    return ", "
        + counted(circuit.cables().size(), "cable", "cables")
        + ", "
        + counted(circuit.joints().size(), "joint", "joints");
  }

  private static String open(UnknownRun run) {
    long open = run.outlets().stream().filter(outlet -> outlet.fedBy().isEmpty()).count();
    return ", and what feeds " + open + " of them is open";
  }

  private void writeWarnings() {
    if (!caseFile.warnings().isEmpty()) {
      page.heading("Warnings")
          .items(
              caseFile.warnings().stream()
                  .map(
                      problem ->
                          "line " + problem.line() + ": " + problem.message().replace('\n', ' '))
                  .toList());
    }
  }

  /** What the case does not say and was taken as usual, each in a sentence. */
  public static List<String> taken(CaseFile caseFile) {
    return caseFile.taken().stream()
        .map(
            taken ->
                "The "
                    + taken.key()
                    + " is not given: "
                    + taken.value()
                    + " is taken ("
                    + taken.because()
                    + ").")
        .toList();
  }

  private static String counted(int count, String one, String many) {
    return count + " " + (count == 1 ? one : many);
  }

  private void writeMeters() {
    if (survey.meters().isEmpty()) {
      return;
    }
    Table table = new Table().words("").numbers("input").numbers("step").words("accuracy");
    for (Meter meter : survey.meters()) {
      table.row(
          meter.name(),
          input(meter),
          Figures.number(meter.resolution()) + " " + meter.measurand().unit(),
          "+-("
              + Figures.number(PER_CENT * meter.accuracy().share())
              + " % + "
              + Figures.number(meter.accuracy().counts())
              + ")");
    }
    page.heading("Meters").table(table);
  }

  private static String input(Meter meter) {
    return switch (meter.measurand()) {
      case VOLTAGE -> Figures.ohms(meter.inputOhms());
      case LOOP_IMPEDANCE -> "draws " + Figures.amperes(meter.testAmperes());
      case CURRENT, RESISTANCE -> "";
    };
  }

  private void writeLoads() {
    if (survey.loads().isEmpty()) {
      return;
    }
    Table table = new Table().words("").numbers("").words("");
    for (Load load : survey.loads()) {
      String wiring = SwitchWords.wiring(survey, load.name());
      table.row(
          load.name(), Figures.rating(load), load.kind() + (wiring.isEmpty() ? "" : ", " + wiring));
    }
    page.heading("Loads").table(table);
  }

  private void writeTests() {
    page.heading("Tests");
    if (survey.tests().isEmpty()) {
      page.indented("none yet");
      return;
    }
    Table table = new Table().words("").numbers("readings").words("on");
    for (Test test : survey.tests()) {
      table.row(test.name(), String.valueOf(test.readings().size()), loads(caseFile, test));
    }
    page.table(table);
  }

  /**
   * A test with what was on, unless its name says so already: "Test supper, on: oven at wall"; and
   * what drew without having been plugged in: "Test idle: nothing plugged in; the wall heater,
   * wired in, is on".
   */
  static String title(CaseFile caseFile, Test test) {
    String loads = plugged(test);
    boolean idle = test.loads().isEmpty() && test.name().equals(IDLE);
    boolean switched = saysSwitching(test);
    boolean said = idle || test.name().contains(loads) || test.isDead() || switched;
    return "Test "
        + test.name()
        + (said ? "" : ", on: " + loads)
        + alsoOn(caseFile, test, idle ? ": nothing plugged in; " : "; ");
  }

  private static String alsoOn(CaseFile caseFile, Test test, String lead) {
    List<String> drawing = SwitchWords.drawing(caseFile, test);
    String verb = drawing.size() > 1 ? ", are on" : ", is on";
    return SwitchWords.drawn(drawing).map(drawn -> lead + drawn + verb).orElse("");
  }

  /** Whether the name of a test that nothing was plugged in for says what was switched for it. */
  private static boolean saysSwitching(Test test) {
    return test.loads().isEmpty()
        && !test.switching().equals(Switching.USUAL)
        && Stream.concat(test.switching().open().stream(), test.switching().off().stream())
            .allMatch(test.name()::contains);
  }

  /**
   * What is on during a test: "heater at bed-2"; "the wall heater, wired in"; "nothing"; and what
   * was switched.
   */
  private static String loads(CaseFile caseFile, Test test) {
    Optional<String> drawn = SwitchWords.drawn(SwitchWords.drawing(caseFile, test));
    return drawn
        .map(
            wired -> test.loads().isEmpty() ? wired + switched(test) : plugged(test) + "; " + wired)
        .orElseGet(() -> plugged(test));
  }

  /** What was plugged in for a test, and what was switched. */
  private static String plugged(Test test) {
    List<String> loads = test.loads().stream().map(CheckText::words).toList();
    return (loads.isEmpty() ? "nothing" : JointWords.listed(loads, "and")) + switched(test);
  }

  private static String switched(Test test) {
    List<String> switched = SwitchWords.of(test.switching());
    return switched.isEmpty() ? "" : "; " + JointWords.listed(switched, "and");
  }

  private static String words(LoadInUse use) {
    return use.load() + " at " + use.box();
  }

  private void writeWhatWouldHelp() {
    List<String> hints =
        caseFile.unknown().isPresent()
            ? List.of(KnownWords.HELP)
            : MissingWords.of(
                Region.of(caseFile.circuit().supply()), Missing.in(caseFile.problem()));
    if (!hints.isEmpty()) {
      page.heading("What would help").items(hints);
      page.heading("Cautions").items(Cautions.forMeasuring(caseFile));
    }
  }
}
