package ohmtrail.cli.casefile.survey;

import java.util.Collection;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Consumer;
import java.util.stream.Stream;
import ohmtrail.circuit.Circuit;
import ohmtrail.cli.casefile.equipment.LoadKind;
import ohmtrail.cli.casefile.equipment.LoadReader;
import ohmtrail.cli.casefile.equipment.MeterReader;
import ohmtrail.cli.casefile.equipment.Site;
import ohmtrail.cli.casefile.run.Run;
import ohmtrail.cli.casefile.text.Node.Scalar;
import ohmtrail.cli.casefile.text.Place;
import ohmtrail.cli.casefile.text.Problems;
import ohmtrail.cli.casefile.text.Word;
import ohmtrail.cli.casefile.text.YamlText;
import ohmtrail.cli.casefile.words.Numbers;
import ohmtrail.cli.casefile.words.Unit;
import ohmtrail.survey.Complaint;
import ohmtrail.survey.Finding;
import ohmtrail.survey.LoadInUse;
import ohmtrail.survey.Measurand;
import ohmtrail.survey.Meter;
import ohmtrail.survey.Reading;
import ohmtrail.survey.Survey;
import ohmtrail.survey.Tap;
import ohmtrail.survey.Test;
import ohmtrail.survey.load.ElectronicLoad;
import ohmtrail.survey.load.Load;
import ohmtrail.survey.load.Motor;
import ohmtrail.survey.load.Rating;

/** Writes the lower half of a case file: meters, loads, tests and what was found. */
public final class SurveyWriter {

  private final Survey survey;
  private final OptionalDouble nominalVolts;
  private final Site site;
  private final TestNames testNames = new TestNames();
  private final StringBuilder out = new StringBuilder();

  /**
   * @param survey what to write
   * @param circuit the circuit that it was read on
   */
  public SurveyWriter(Survey survey, Circuit circuit) {
    this.survey = survey;
    Run run = Run.of(circuit);
    this.nominalVolts = run.loadVolts();
    this.site = new Site(run, survey.meters());
  }

  /** The lines from the meters to what was found. */
  public String write() {
    return under("complaint", complaints(survey.complaints()))
        + (survey.meters().isEmpty() ? "meters: {}\n" : "")
        + under("meters", meters(survey.meters()))
        + under("loads", loads(survey.loads()))
        + under("tests", tests(survey.tests()))
        + under("found", findings(survey.findings()));
  }

  private static String under(String key, String lines) {
    return lines.isEmpty() ? "" : key + ":\n" + lines;
  }

  /** The lines of some of the meters, without their key. */
  public String meters(List<Meter> some) {
    return lines(some, this::writeMeter);
  }

  /** The lines of some of the loads, without their key. */
  public String loads(List<Load> some) {
    return lines(some, load -> writeLoad(load, wiredAt(load)));
  }

  /** The lines of some of the tests, without their key; the names of the others are taken. */
  public String tests(List<Test> some) {
    survey.tests().stream()
        .filter(test -> !some.contains(test))
        .forEach(test -> testNames.take(test.name()));
    return lines(some, this::writeTest);
  }

  /** The lines of some of what was found, without their key. */
  public String findings(List<Finding> some) {
    return lines(some, finding -> writeFinding(finding, ""));
  }

  /**
   * The lines of some of the findings, behind others.
   *
   * @param before what stands there already
   */
  public String findings(List<Finding> some, List<Finding> before) {
    return lines(
        some,
        finding ->
            writeFinding(
                finding,
                before.stream().anyMatch(finding::contradicts) ? " " + FindingReader.AGAIN : ""));
  }

  /** The lines of some of the complaints, without their key. */
  public String complaints(List<Complaint> some) {
    return lines(some, complaint -> out.append("  - " + YamlText.of(complaint.text()) + "\n"));
  }

  private <T> String lines(List<T> some, Consumer<T> writing) {
    int start = out.length();
    some.forEach(writing);
    return out.substring(start);
  }

  private void writeFinding(Finding finding, String more) {
    out.append("  - " + YamlText.of(finding.place()) + ": " + finding.state().word() + more + "\n");
  }

  private void writeMeter(Meter meter) {
    out.append("  " + YamlText.of(meter.name()) + ": ");
    out.append(
        meter.measurand() == Measurand.VOLTAGE
            ? ohms(meter.inputOhms()) + ", "
            : MeterReader.kind(meter.measurand()) + ", ");
    out.append(Numbers.perCent(meter.accuracy().share()) + " + ");
    out.append(Numbers.plain(meter.accuracy().counts()) + " counts, ");
    String unit = " " + meter.measurand().unit();
    out.append(Numbers.plain(meter.resolution()) + unit);
    Meter usual = Meter.usual(meter.name(), meter.measurand());
    if (meter.greatest() != usual.greatest()) {
      out.append(", up to " + Numbers.plain(meter.greatest()) + unit);
    }
    if (meter.testAmperes() != usual.testAmperes()) {
      out.append(", " + Numbers.plain(meter.testAmperes()) + " A");
    }
    if (meter.inputFarads() != usual.inputFarads()) {
      out.append(", " + Numbers.in(Unit.PICOFARAD, meter.inputFarads()));
    }
    out.append('\n');
  }

  /** In the unit that takes the fewest characters. */
  private static String ohms(double ohms) {
    return Stream.of(Unit.OHM, Unit.KILOHM, Unit.MEGOHM)
        .map(unit -> Numbers.in(unit, ohms))
        .min(Comparator.comparingInt(String::length))
        .orElseThrow();
  }

  private Optional<LoadInUse> wiredAt(Load load) {
    return survey.hardWired().stream().filter(use -> use.load().equals(load.name())).findFirst();
  }

  private void writeLoad(Load load, Optional<LoadInUse> wired) {
    out.append("  " + YamlText.of(load.name()) + ":");
    String words = words(load) + wired.map(SurveyWriter::wiring).orElse("");
    if (wired.isEmpty() || says(words, load.name(), wired.get())) {
      out.append(" " + YamlText.of(words) + "\n");
    } else {
      writeKeys(load, wired.get());
    }
  }

  private String words(Load load) {
    double ratedVolts = load.ratedVolts();
    Rating rating = load.rating();
    StringBuilder words = new StringBuilder();
    words.append(Numbers.plain(rating.value()) + " " + rating.quantity().unit());
    if (nominalVolts.isEmpty() || ratedVolts != nominalVolts.getAsDouble()) {
      words.append(" at " + Numbers.plain(ratedVolts) + " V");
    }
    LoadKind kind = LoadKind.of(load);
    if (kind != LoadKind.HEATING_ELEMENT) {
      words.append(" " + kind.word());
    }
    figures(load).forEach((name, figure) -> words.append(", " + name + " " + figure));
    return words.toString();
  }

  private static String wiring(LoadInUse wired) {
    return ", "
        + LoadReader.WIRED_IN
        + " at "
        + wired.box()
        + wired.between().map(pair -> " " + pair.word()).orElse("");
  }

  /** Whether words, read again, say where a load is wired in. */
  private boolean says(String words, String name, LoadInUse wired) {
    Problems problems = new Problems("");
    LoadReader reader = new LoadReader(site, problems);
    reader.load(new Word(name, Place.startOf("")), scalar(words));
    return problems.count() == 0 && reader.hardWired().equals(List.of(wired));
  }

  /** Key by key, for a box whose name could be taken for other words. */
  private void writeKeys(Load load, LoadInUse wired) {
    Rating rating = load.rating();
    boolean byPower = rating.quantity() == Rating.Quantity.POWER;
    out.append('\n');
    writeKey(
        byPower ? "power" : "current",
        Numbers.plain(rating.value()) + " " + rating.quantity().unit());
    writeKey("voltage", Numbers.plain(load.ratedVolts()) + " V");
    writeKey("kind", LoadKind.of(load).word());
    figures(load).forEach((name, figure) -> writeKey(name.replace(' ', '-'), figure));
    writeKey(LoadReader.WIRED_IN, YamlText.of(wired.box()));
    wired.between().ifPresent(pair -> writeKey("between", pair.word()));
  }

  private void writeKey(String key, String value) {
    out.append("    " + key + ": " + value + "\n");
  }

  /** The figures that only some kinds have, where they are not the usual ones. */
  private static Map<String, String> figures(Load load) {
    Map<String, String> figures = new LinkedHashMap<>();
    if (load instanceof ElectronicLoad electronic
        && electronic.cutOutShare() != ElectronicLoad.USUAL_CUT_OUT_SHARE) {
      figures.put("cut-out", Numbers.perCent(electronic.cutOutShare()));
    }
    if (load instanceof Motor motor) {
      if (motor.powerFactor() != Motor.USUAL_POWER_FACTOR) {
        figures.put("power factor", Numbers.plain(motor.powerFactor()));
      }
      if (motor.stallShare() != Motor.USUAL_STALL_SHARE) {
        figures.put("stall", Numbers.perCent(motor.stallShare()));
      }
    }
    return figures;
  }

  private void writeTest(Test test) {
    Condition condition = Condition.of(test);
    String text = condition.text();
    if (test.name().equals(text) && says(text, condition) && testNames.take(text)) {
      out.append("  - " + YamlText.of(text) + ":");
      writeReadings(test, condition);
    } else {
      testNames.take(test.name());
      out.append("  - name: " + YamlText.of(test.name()) + "\n");
      writeCondition(text, condition);
      out.append("    readings:");
      writeReadings(test, condition);
    }
  }

  private void writeCondition(String text, Condition condition) {
    if (says(text, condition)) {
      out.append("    loads: " + YamlText.of(text) + "\n");
      return;
    }
    out.append("    loads:\n");
    for (LoadInUse use : condition.loads()) {
      out.append("      - load: " + YamlText.of(use.load()) + "\n");
      out.append("        at: " + YamlText.of(use.box()) + "\n");
      use.between().ifPresent(pair -> out.append("        between: " + pair.word() + "\n"));
    }
    writeEach(SwitchingReader.OPEN, condition.switching().open());
    writeEach(SwitchingReader.OFF, condition.switching().off());
  }

  private void writeEach(String key, Collection<String> names) {
    names.forEach(name -> out.append("      - " + key + ": " + YamlText.of(name) + "\n"));
  }

  /** Whether a text, read again, says this condition. */
  private boolean says(String text, Condition condition) {
    Problems problems = new Problems("");
    SwitchingReader switching = new SwitchingReader(site, survey.hardWired(), problems);
    UseReader reader =
        new UseReader(site, survey.loads(), new LoadReader(site, problems), switching, problems);
    Condition read =
        new ConditionReader(reader, switching, new TapReader(site), problems).read(scalar(text));
    return problems.count() == 0 && read.equals(condition);
  }

  private void writeReadings(Test test, Condition condition) {
    String indent = "      ";
    boolean nothing = test.readings().isEmpty() && test.trips().isEmpty();
    out.append(nothing ? " []\n" : "\n");
    test.trips()
        .forEach(trip -> out.append(indent + "- " + YamlText.of(TripReader.text(trip)) + "\n"));
    for (Reading reading : test.readings()) {
      String words = String.join(" ", reading.tap().word(), value(reading), reading.meter());
      if (says(words, reading, condition)) {
        out.append(indent + "- " + YamlText.of(words) + "\n");
      } else {
        String between =
            reading.tap() instanceof Tap.Pair pair ? pair.between().word() : reading.tap().word();
        out.append(indent + "- at: " + YamlText.of(reading.box()) + "\n");
        out.append(indent + "  between: " + YamlText.of(between) + "\n");
        out.append(indent + "  " + key(reading.measurand()) + ": " + value(reading) + "\n");
        out.append(indent + "  meter: " + YamlText.of(reading.meter()) + "\n");
      }
    }
  }

  private static String key(Measurand measurand) {
    return switch (measurand) {
      case VOLTAGE -> "volts";
      case CURRENT -> "amperes";
      case LOOP_IMPEDANCE, RESISTANCE -> "ohms";
    };
  }

  /** One value, or the two that it flickered between. */
  private static String value(Reading reading) {
    if (reading.isDead()) {
      return "dead";
    }
    if (Double.isInfinite(reading.value())) {
      return "open";
    }
    double half = reading.halfRange();
    return half == 0
        ? Numbers.plain(reading.value()) + " " + reading.measurand().unit()
        : Numbers.plain(reading.value() - half)
            + "-"
            + Numbers.plain(reading.value() + half)
            + " V";
  }

  /** Whether words, read again, say this reading. */
  private boolean says(String words, Reading reading, Condition condition) {
    Problems problems = new Problems("");
    Optional<Reading> read =
        new ReadingReader(site, new TapReader(site), problems).read(scalar(words), condition);
    return problems.count() == 0 && read.equals(Optional.of(reading));
  }

  private static Scalar scalar(String text) {
    return new Scalar(text, Place.startOf(""), true, text.isBlank());
  }
}
