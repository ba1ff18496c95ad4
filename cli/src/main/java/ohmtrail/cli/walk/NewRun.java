package ohmtrail.cli.walk;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import ohmtrail.cli.casefile.CaseFile;
import ohmtrail.cli.casefile.CaseFileException;
import ohmtrail.cli.casefile.CaseFileReader;
import ohmtrail.cli.casefile.CaseFileWriter;
import ohmtrail.cli.casefile.CaseText;
import ohmtrail.cli.casefile.Problem;
import ohmtrail.cli.casefile.TypedAnswer;
import ohmtrail.cli.render.text.Page;
import ohmtrail.survey.Meter;
import ohmtrail.survey.Survey;

/**
 * A run asked for as it is walked: supply, breaker, cable, then box after box. Every answer is put
 * into the words of a case file and read as one.
 *
 * @param width columns of what is said
 * @param title what the case is called
 * @param begun the text of a case that was left before all of it was said; empty for a new one
 * @param answers those given, by what was asked
 * @param run the boxes so far, as lines of a case file
 * @param unordered whether nobody knows their order
 * @param asked what is asked now
 * @param before the state before the last answer; empty at the start
 */
record NewRun(
    int width,
    String title,
    Optional<String> begun,
    Map<Asked, String> answers,
    List<String> run,
    boolean unordered,
    Asked asked,
    Optional<NewRun> before)
    implements Dialogue {
  private static final String HEATER = "1500 W";
  private static final String PANEL = "panel";

  /** The meter that everybody has. */
  private static final String METER = "high";

  /** What is asked, in this order; what is read of the answer, and what no answer means. */
  enum Asked {
    COMPLAINT(
        "What is complained of? dead, dims, flickers, brighter, warm, trips or smells. Enter alone"
            + " where nobody has said.",
        "complaint",
        ""),
    SUPPLY("Supply? Enter alone takes 120 V 60 Hz; others: 230 V 50 Hz, 120/240 V.", "supply", ""),
    BREAKER("Breaker? Such as 15 A. Enter alone takes what is usual on the cable.", "breaker", ""),
    CABLE("Cable? Such as 14 AWG or 2.5 mm2. Enter alone takes what is usual.", "cable", ""),
    JOINTS(
        "How are the wires held at the receptacles: screw or push-in? Enter alone takes screw.",
        "joints",
        "screw"),
    BOXES("", "run", ""),
    METER(
        "Is a meter of low input resistance at hand, about 3 kohm? yes or no; Enter alone: no.",
        "meters",
        "no"),
    LOAD(
        "What can be plugged in as a load? Enter alone takes a heater of 1500 W.", "loads", HEATER),
    WHERE(
        "Where is it noticed, and what is on then? Such as hall-2, or hall-2 with heater at hall-3."
            + " Enter alone where nobody has said.",
        "complaint",
        "");

    private final String words;
    private final String key;
    private final String otherwise;

    Asked(String words, String key, String otherwise) {
      this.words = words;
      this.key = key;
      this.otherwise = otherwise;
    }

    String words() {
      return words;
    }
  }

  NewRun {
    answers = Map.copyOf(answers);
    run = List.copyOf(run);
  }

  /** What is said first, and the state that it leads to. */
  static Reply begin(String title, int width) {
    NewRun first =
        new NewRun(
            width,
            title,
            Optional.empty(),
            Map.of(),
            List.of(),
            false,
            Asked.COMPLAINT,
            Optional.empty());
    return Reply.on(
        new Page(width)
            .paragraphs(
                "There is no such case yet: say what is in the walls, as you walk it from the panel."
                    + " undo takes an answer back, quit ends.")
            .toString(),
        first);
  }

  /** Whether a case was left before all of it was said: neither loads nor a reading yet. */
  static boolean isUnfinished(CaseFile left) {
    Survey survey = left.survey();
    return survey.loads().isEmpty()
        && survey.tests().isEmpty()
        && survey.findings().isEmpty()
        && survey.meters().equals(List.of(Meter.highImpedance(METER)));
  }

  /** Goes on where such a case was left. */
  static Reply resume(String title, String begun, boolean unordered, int width) {
    NewRun left =
        new NewRun(
            width,
            title,
            Optional.of(begun),
            Map.of(),
            List.of(),
            unordered,
            Asked.BOXES,
            Optional.empty());
    return Reply.on(
        new Page(width)
            .paragraphs(
                "This case was left before all of the run was said: it goes on there. undo takes an"
                    + " answer back, quit ends.")
            .toString(),
        left);
  }

  private boolean hasNoBox() {
    return run.isEmpty() && begun.isEmpty();
  }

  @Override
  public String question() {
    if (asked != Asked.BOXES) {
      return asked.words;
    }
    if (unordered) {
      return hasNoBox()
          ? "The names of the outlets, commas between: sofa, piano, garden door."
          : "More outlets? Enter alone when all are named.";
    }
    return hasNoBox()
        ? "The first box after the panel: its name and the cable to it, such as hall-1 32 ft or"
            + " attic junction 9 m. Type don't know where nobody knows what feeds what."
        : "The next box, such as hall-2 12 ft; from BOX where it is not fed from the last one."
            + " Enter alone when the run ends.";
  }

  @Override
  public Optional<CaseFile> caseFile() {
    return hasNoBox() ? Optional.empty() : read().caseFile();
  }

  @Override
  public String closing() {
    return "";
  }

  @Override
  public Reply answer(String line) {
    String typed = line.strip();
    return switch (typed.toLowerCase(Locale.ROOT)) {
      case "quit", "q", "exit" -> Reply.end("", this);
      case "undo", "u", "back" ->
          before
              .map(state -> Reply.on(said("Taken back."), state))
              .orElseGet(() -> Reply.on(said("There is nothing to take back."), this));
      case "help", "?" -> Reply.on(said("undo takes an answer back, quit ends."), this);
      default -> asked == Asked.BOXES ? box(typed) : plain(typed);
    };
  }

  private String said(String sentences) {
    return new Page(width).paragraphs(sentences).toString();
  }

  private Reply plain(String typed) {
    boolean unknown = typed.isEmpty() || TypedAnswer.isUnknown(typed);
    if (asked == Asked.METER && !unknown && TypedAnswer.yes(typed).isEmpty()) {
      return Reply.on(said(TypedAnswer.neither(typed)), this);
    }
    Map<Asked, String> more = new EnumMap<>(Asked.class);
    more.putAll(answers);
    more.put(asked, unknown ? asked.otherwise : typed);
    return check(
        new NewRun(width, title, begun, more, run, unordered, following(), Optional.of(this)));
  }

  private Asked following() {
    List<Asked> all = List.of(Asked.values());
    return isLast() ? asked : all.get(all.indexOf(asked) + 1);
  }

  /** Where something is noticed is asked only where something was complained of. */
  private boolean isLast() {
    boolean silent = answers.getOrDefault(Asked.COMPLAINT, "").isEmpty();
    return asked == Asked.WHERE || (asked == Asked.LOAD && silent);
  }

  private Reply box(String typed) {
    if (typed.isEmpty()) {
      return hasNoBox()
          ? Reply.on(said("A run has at least one box besides the panel."), this)
          : Reply.on(
              "",
              new NewRun(
                  width, title, begun, answers, run, unordered, following(), Optional.of(this)));
    }
    if (hasNoBox() && !unordered && TypedAnswer.isUnknown(typed)) {
      return Reply.on(
          "", new NewRun(width, title, begun, answers, run, true, asked, Optional.of(this)));
    }
    List<String> more = new ArrayList<>(run);
    if (unordered) {
      List.of(typed.split(",", -1)).stream()
          .map(String::strip)
          .filter(name -> !name.isEmpty())
          .forEach(name -> more.add(unordered(name)));
    } else {
      more.add(entry(typed));
    }
    return check(
        new NewRun(width, title, begun, answers, more, unordered, asked, Optional.of(this)));
  }

  /** What says no kind is a receptacle, but for what leads back to a box that is there. */
  private String entry(String typed) {
    TypedAnswer.Named named = TypedAnswer.named(typed);
    String name = named.name().isEmpty() ? "box-" + (run.size() + 1) : named.name();
    boolean leadsBack =
        name.equalsIgnoreCase(PANEL) || run.stream().anyMatch(box -> box.startsWith(key(name)));
    String kind = leadsBack || TypedAnswer.saysKind(named.words()) ? "" : "receptacle ";
    return key(name) + CaseFileWriter.text((kind + named.words()).strip());
  }

  /** A name alone is an outlet; behind a colon stands what is known of it. */
  private static String unordered(String typed) {
    int colon = typed.indexOf(':');
    return colon > 0
        ? key(typed.substring(0, colon).strip())
            + CaseFileWriter.text(typed.substring(colon + 1).strip())
        : CaseFileWriter.text(typed);
  }

  private static String key(String name) {
    return CaseFileWriter.text(name) + ": ";
  }

  /** Goes on where the reader takes what was said; else says what it does not take. */
  private Reply check(NewRun changed) {
    Readout readout = changed.read();
    if (!readout.problems().isEmpty()) {
      return Reply.on(said(String.join("\n", readout.problems())), this);
    }
    if (!isLast()) {
      return Reply.on("", changed);
    }
    CaseFile all = readout.caseFile().orElseThrow();
    return Reply.keep(
        all, this, () -> begun.isEmpty() ? search(all, width) : Hearing.begin(all, width));
  }

  /** The search on a case; where nobody knows what feeds what it begins with the map. */
  static Reply search(CaseFile caseFile, int width) {
    return caseFile.unknown().isPresent()
        ? MapWalk.begin(caseFile, width)
        : Search.begin(caseFile, width);
  }

  /**
   * What the reader of case files makes of it.
   *
   * @param caseFile the case; empty where anything is wrong
   * @param problems what is wrong
   */
  private record Readout(Optional<CaseFile> caseFile, List<String> problems) {}

  private Readout read() {
    try {
      return new Readout(Optional.of(new CaseFileReader().read(title, text())), List.of());
    } catch (CaseFileException wrong) {
      return new Readout(
          Optional.empty(), wrong.problems().stream().map(Problem::message).distinct().toList());
    }
  }

  private String text() {
    String text = begun.orElseGet(this::head);
    String list = unordered ? "boxes" : "run";
    List<String> boxes = hasNoBox() ? List.of("first: receptacle") : run;
    for (String entry : boxes) {
      text = CaseText.plus(text, list, "  - " + entry + "\n");
    }
    if (TypedAnswer.yes(answers.getOrDefault(Asked.METER, "no")).orElse(false)) {
      text = CaseText.plus(text, "meters", "  low: 3 kohm\n");
    }
    String load = answers.getOrDefault(Asked.LOAD, "");
    return load.isEmpty() ? text : CaseText.plus(text, "loads", load(load));
  }

  /** A load without a name is a heater. */
  private static String load(String typed) {
    TypedAnswer.Named named = TypedAnswer.named(typed);
    boolean bare = named.name().isEmpty() || named.words().isEmpty();
    return "  "
        + key(bare ? "heater" : named.name())
        + CaseFileWriter.text(bare ? typed : named.words())
        + "\n";
  }

  /** What is said before the boxes. */
  private String head() {
    StringBuilder text = new StringBuilder("title: " + CaseFileWriter.text(title) + "\n");
    for (Asked each : List.of(Asked.SUPPLY, Asked.BREAKER, Asked.CABLE, Asked.JOINTS)) {
      String answer = answers.getOrDefault(each, "");
      if (!answer.isEmpty()) {
        text.append(each.key).append(": ").append(CaseFileWriter.text(answer)).append('\n');
      }
    }
    text.append(unordered ? "" : "run:\n  - panel\n");
    String complaint = answers.getOrDefault(Asked.COMPLAINT, "");
    if (!complaint.isEmpty()) {
      String where = answers.getOrDefault(Asked.WHERE, "");
      boolean bare = !where.isEmpty() && !where.matches("(?i)(at|with)\\b.*");
      String said = (complaint + (bare ? " at " : " ") + where).strip();
      text.append("complaint: ").append(CaseFileWriter.text(said)).append('\n');
    }
    return text.append("meters:\n  " + METER + ": 10 Mohm\n").toString();
  }
}
