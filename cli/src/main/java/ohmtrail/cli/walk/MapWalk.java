package ohmtrail.cli.walk;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import ohmtrail.circuit.Box;
import ohmtrail.circuit.CircuitException;
import ohmtrail.circuit.ConductorRole;
import ohmtrail.cli.casefile.CaseFile;
import ohmtrail.cli.casefile.CaseFileException;
import ohmtrail.cli.casefile.CaseFileReader;
import ohmtrail.cli.casefile.CaseFileWriter;
import ohmtrail.cli.casefile.CaseText;
import ohmtrail.cli.casefile.TypedAnswer;
import ohmtrail.cli.casefile.TypedTest;
import ohmtrail.cli.names.Names;
import ohmtrail.cli.render.map.MapScreen;
import ohmtrail.cli.render.text.Page;
import ohmtrail.map.MapLocator;
import ohmtrail.map.MapReport;
import ohmtrail.survey.Measurand;
import ohmtrail.survey.Meter;
import ohmtrail.survey.ProbePoints;
import ohmtrail.survey.Reading;
import ohmtrail.survey.Test;

/**
 * Walks round where nobody knows what feeds what: a load at one box, a reading at each, then the
 * map; again with the load at another, until the map is settled and the search goes on.
 *
 * @param width columns of what is said
 * @param taken the case with everything said so far
 * @param at the load and where it is, as a case file says it; empty while that is asked for
 * @param left the boxes that are still to be read with it there
 * @param begun whether anything was read with it there
 * @param before the state before the last answer; empty at the start
 */
record MapWalk(
    int width,
    CaseFile taken,
    Optional<String> at,
    List<String> left,
    boolean begun,
    Optional<MapWalk> before)
    implements Dialogue {
  private static final String HOW =
      "Nobody knows what feeds what: walk round with a load. It stays plugged in at one outlet while"
          + " every outlet is read once. A second person stands at it: on when you call, off as soon"
          + " as the number stands, five seconds; then a minute. Alone, and wherever a joint is"
          + " likely, take a lamp of 100 W in its place. Nothing goes in where anything is"
          + " discoloured, warm or loose.\n"
          + "Live parts: only who is trained for it. Heat, smell or smoke: switch off, leave off.";

  private static final String HELP =
      "The name of an outlet says where the load is plugged in; then the volts at each outlet in"
          + " turn. skip leaves one out, enough ends a walk, map shows the map, undo takes an answer"
          + " back, quit ends.";

  private static final String END = "enough";

  MapWalk {
    left = List.copyOf(left);
  }

  /** What is said first, and the state that it leads to. */
  static Reply begin(CaseFile caseFile, int width) {
    CaseFile equipped = Equipment.of(caseFile);
    MapWalk start =
        new MapWalk(width, equipped, Optional.empty(), List.of(), false, Optional.empty());
    return Reply.on(start.said(HOW), start);
  }

  @Override
  public Optional<CaseFile> caseFile() {
    return Optional.of(taken);
  }

  @Override
  public String question() {
    return at.map(on -> on + ": " + pair(left.get(0)).word() + " at " + left.get(0) + ", volts?")
        .orElseGet(
            () ->
                "At which outlet is the "
                    + load()
                    + " plugged in? Its name; or another load, such as 100 W at "
                    + outlets().get(0)
                    + ". map shows the map.");
  }

  @Override
  public String closing() {
    return "";
  }

  @Override
  public Reply answer(String line) {
    String typed = line.strip();
    return switch (typed.toLowerCase(Locale.ROOT)) {
      case "" -> stay(HELP);
      case "help", "?" -> stay(HELP);
      case "quit", "q", "exit" -> Reply.end("", this);
      case "map" -> mapped(false);
      case END, "done" -> at.isPresent() ? ended() : Reply.end("", this);
      case "skip", "s" -> at.isPresent() ? skipped() : stay(HELP);
      case "undo", "u", "back" ->
          before
              .map(state -> Reply.on(said("Taken back."), state))
              .orElseGet(() -> stay("There is nothing to take back in this session."));
      default -> at.isPresent() ? read(typed) : plugged(typed);
    };
  }

  private String said(String sentences) {
    return new Page(width).paragraphs(sentences).toString();
  }

  private Reply stay(String sentences) {
    return Reply.on(said(sentences), this);
  }

  private String load() {
    return taken.survey().loads().get(0).name();
  }

  private List<String> outlets() {
    return taken.circuit().boxes().stream().filter(Box::hasReceptacle).map(Box::name).toList();
  }

  private Reply plugged(String typed) {
    Names names = new Names(outlets());
    Optional<String> box = names.find(typed);
    String on = box.map(name -> load() + " at " + name).orElse(typed);
    if (box.isEmpty() && !typed.contains(" at ")) {
      return stay(
          "Outlet ("
              + typed
              + ") "
              + names.rule()
              + ".\nMaybe "
              + names.meant(typed, "type help")
              + ".");
    }
    TypedTest tried = TypedTest.of(taken, on + ": " + reading(outlets().get(0), "1 V"));
    return tried.test().isEmpty()
        ? stay(String.join("\n", tried.wrong()))
        : Reply.on(
            "", new MapWalk(width, taken, Optional.of(on), outlets(), false, Optional.of(this)));
  }

  private String reading(String box, String figure) {
    return box + " " + pair(box).word() + " " + figure + " " + meter();
  }

  private Reply read(String typed) {
    if (TypedAnswer.isUnknown(typed)) {
      return skipped();
    }
    String box = left.get(0);
    TypedTest test =
        TypedTest.of(taken, at.orElseThrow() + ": " + reading(box, typed + volts(typed)));
    if (test.test().isEmpty()) {
      return stay(String.join("\n", test.wrong()));
    }
    CaseFile more = begun ? longer(test.test().get().readings()) : with(test.before(), test.test());
    return Reply.keep(more, this, () -> after(more, true));
  }

  /** The unit where none was typed. */
  private static String volts(String typed) {
    return typed.chars().anyMatch(Character::isLetter) ? "" : " V";
  }

  private static CaseFile with(CaseFile equipped, Optional<Test> test) {
    List<Test> tests = new ArrayList<>(equipped.survey().tests());
    test.ifPresent(tests::add);
    return equipped.with(equipped.survey().withTests(tests));
  }

  /** The case with readings more in its last test. */
  private CaseFile longer(List<Reading> more) {
    List<Test> tests = new ArrayList<>(taken.survey().tests());
    Test last = tests.remove(tests.size() - 1);
    List<Reading> readings = new ArrayList<>(last.readings());
    readings.addAll(more);
    tests.add(last.withReadings(readings));
    return taken.with(taken.survey().withTests(tests));
  }

  private Reply skipped() {
    return after(taken, begun);
  }

  /** The next outlet, or the map where that was the last. */
  private Reply after(CaseFile more, boolean read) {
    List<String> rest = left.subList(1, left.size());
    MapWalk next =
        new MapWalk(
            width, more, rest.isEmpty() ? Optional.empty() : at, rest, read, Optional.of(this));
    return rest.isEmpty() ? next.mapped(true) : Reply.on("", next);
  }

  private Reply ended() {
    return new MapWalk(width, taken, Optional.empty(), List.of(), false, Optional.of(this))
        .mapped(true);
  }

  /** The map as it stands; where a walk has ended and all of it is settled the search goes on. */
  private Reply mapped(boolean over) {
    MapReport report;
    try {
      report = new MapLocator().map(taken.mapProblem().orElseThrow());
    } catch (CircuitException none) {
      return stay(String.valueOf(none.getMessage()));
    }
    String screen = "\n" + MapScreen.of(taken, report, width);
    Optional<CaseFile> known = over ? known(report) : Optional.empty();
    if (known.isEmpty()) {
      return Reply.on(screen, this);
    }
    CaseFile settled = known.get();
    return Reply.keep(
        settled,
        this,
        () ->
            Search.begin(settled, width)
                .saying(
                    screen
                        + "\n"
                        + said("The map is settled: the search goes on with it.")
                        + "\n"));
  }

  /** The case with the map in it; empty where something is open still. */
  private Optional<CaseFile> known(MapReport report) {
    String written = new CaseFileWriter().write(taken);
    return CaseText.of(taken.title(), written)
        .settling(SettledFeeders.of(report))
        .flatMap(this::known)
        .filter(read -> read.unknown().isEmpty());
  }

  private Optional<CaseFile> known(String text) {
    try {
      return Optional.of(new CaseFileReader().read(taken.title(), text));
    } catch (CaseFileException broken) {
      return Optional.empty();
    }
  }

  /** Hot to neutral, or a leg to neutral where a box has but one. */
  private ProbePoints pair(String box) {
    List<ConductorRole> there =
        taken.circuit().deviceConductors(taken.circuit().box(box).orElseThrow());
    ConductorRole live =
        there.stream().filter(ConductorRole::isLive).findFirst().orElse(ConductorRole.HOT);
    return new ProbePoints(live, ConductorRole.NEUTRAL);
  }

  /** The meter that draws least. */
  private String meter() {
    return taken.survey().meters().stream()
        .filter(meter -> meter.measurand() == Measurand.VOLTAGE)
        .max(Comparator.comparingDouble(Meter::inputOhms))
        .map(Meter::name)
        .orElse("high");
  }
}
