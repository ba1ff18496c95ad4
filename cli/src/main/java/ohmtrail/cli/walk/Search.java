package ohmtrail.cli.walk;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import ohmtrail.advise.Choice;
import ohmtrail.advise.Option;
import ohmtrail.advise.Situation;
import ohmtrail.advise.Timetable;
import ohmtrail.circuit.Box;
import ohmtrail.cli.casefile.CaseFile;
import ohmtrail.cli.casefile.TypedFigure;
import ohmtrail.cli.casefile.TypedTest;
import ohmtrail.cli.names.Names;
import ohmtrail.cli.render.AdviceWords;
import ohmtrail.cli.render.text.Page;
import ohmtrail.locate.Posterior;
import ohmtrail.reference.Minutes;
import ohmtrail.survey.Finding;
import ohmtrail.survey.Measurand;
import ohmtrail.survey.Meter;
import ohmtrail.survey.ProbePoints;
import ohmtrail.survey.Reading;
import ohmtrail.survey.Survey;
import ohmtrail.survey.SurveyException;
import ohmtrail.survey.Test;

/**
 * The search itself: offers the advised step, takes what was read or seen, weighs again.
 *
 * @param width columns of what is said
 * @param taken the case with everything said so far
 * @param now what was believed when the present step was offered
 * @param skipped steps that were declined, in words
 * @param task what is waited for
 * @param before the state before the last answer; empty at the start
 */
record Search(
    int width,
    CaseFile taken,
    Assessment now,
    Set<String> skipped,
    Task task,
    Optional<Search> before)
    implements Dialogue {
  private static final Names WORDS =
      new Names(
          List.of(
              "help",
              "quit",
              "undo",
              "skip",
              "map",
              "ranking",
              "profile",
              "why",
              "fine",
              "burnt",
              "remade",
              "cannot reach",
              "reach",
              "open",
              "at",
              "note",
              "keep"));

  private static final Pattern SEEN =
      Pattern.compile(
          "(fine|ok|burnt|burned|bad|remade|cannot reach|can't reach|out of reach|reach|open|at)"
              + "(?: +(.+))?");

  private static final String NOTE = "note ";

  Search {
    skipped = Set.copyOf(skipped);
  }

  /** What is said first, and the state that it leads to. */
  static Reply begin(CaseFile caseFile, int width) {
    CaseFile equipped = Equipment.of(caseFile);
    Assessment now = Assessment.of(equipped, Assessment.arrival(equipped));
    Task task = next(now, Set.of());
    Search start = new Search(width, equipped, now, Set.of(), task, Optional.empty());
    String says =
        new SearchWords(now, width).map().cautions().toString() + start.weighed(List.of());
    return Reply.on(says, start);
  }

  @Override
  public Optional<CaseFile> caseFile() {
    return Optional.of(taken);
  }

  @Override
  public String question() {
    return words().question(task);
  }

  @Override
  public String closing() {
    return words().danger().headline().cautions().toString();
  }

  private SearchWords words() {
    return new SearchWords(now, width);
  }

  /** The best step that was not declined; opening the first box where all were. */
  private static Task next(Assessment now, Set<String> skipped) {
    AdviceWords words = new AdviceWords(now.caseFile().circuit(), now.caseFile().survey());
    return now.advice().options().stream()
        .map(Option::choice)
        .filter(choice -> !skipped.contains(words.choice(choice)))
        .map(Search::task)
        .findFirst()
        .orElseGet(() -> new Task.Look(firstBox(now)));
  }

  private static Task task(Choice choice) {
    if (choice instanceof Choice.Read read) {
      return new Task.Take(read, 0);
    }
    return choice instanceof Choice.Open open
        ? new Task.Look(open.box())
        : new Task.End((Choice.Stop) choice);
  }

  private static String firstBox(Assessment now) {
    return now.advice().opening().boxes().stream()
        .filter(box -> !box.equals(Finding.SUPPLY))
        .findFirst()
        .orElseThrow();
  }

  @Override
  public Reply answer(String line) {
    String word = line.strip().toLowerCase(Locale.ROOT).replaceAll("\\s+", " ");
    Matcher seen = SEEN.matcher(word);
    if (word.startsWith(NOTE)) {
      return note(line.strip().substring(NOTE.length()));
    }
    return switch (word) {
      case "" -> stay(asked() + " is asked for: help lists the words.");
      case "help", "h", "?" -> Reply.on(words().help().toString(), this);
      case "map" -> Reply.on(words().map().toString(), this);
      case "ranking" -> Reply.on(words().ranking().toString(), this);
      case "profile" -> Reply.on(words().profile().toString(), this);
      case "why" -> Reply.on(words().why().toString(), this);
      case "quit", "q", "exit" -> Reply.end("", this);
      case "undo", "u" -> undo();
      case "skip" -> skip();
      case "keep", "yes", "y" -> keep();
      case "no", "n" -> again();
      default ->
          TypedFigure.isFigure(word)
              ? read(line.strip())
              : seen.matches()
                  ? seen(seen.group(1), Optional.ofNullable(seen.group(2)))
                  : unknown(line.strip());
    };
  }

  private Reply stay(String sentences) {
    return Reply.on(new Page(width).paragraphs(sentences).toString(), this);
  }

  private Reply unknown(String line) {
    String shown = line.replaceAll("\\p{Cntrl}", "?");
    return stay(
        "Answer ("
            + shown.substring(0, Math.min(shown.length(), width))
            + ") is neither a number nor a word known here.\nMaybe "
            + WORDS.meant(line, "type help")
            + ".");
  }

  private Reply undo() {
    return before
        .map(
            state ->
                Reply.on(
                    new SearchWords(state.now, width)
                        .say("Taken back.")
                        .offer(state.task)
                        .toString(),
                    state))
        .orElseGet(() -> stay("There is nothing to take back in this session."));
  }

  private Reply skip() {
    if (task instanceof Task.Sure sure) {
      return Reply.on("", with(sure.take()));
    }
    Set<String> declined = new HashSet<>(skipped);
    declined.add(inWords(task));
    Assessment same = complete() ? now : Assessment.of(taken, now.situation());
    Task other = next(same, declined);
    Search after = new Search(width, taken, same, declined, other, Optional.of(this));
    return Reply.on(after.words().offer(other).toString(), after);
  }

  private String inWords(Task of) {
    AdviceWords words = new AdviceWords(taken.circuit(), taken.survey());
    if (of instanceof Task.Take take) {
      return words.choice(take.visit());
    }
    if (of instanceof Task.Look look) {
      return words.choice(new Choice.Open(look.box()));
    }
    return of instanceof Task.End end ? words.choice(end.stop()) : "";
  }

  /** Whether everything said has been weighed. */
  private boolean complete() {
    return taken.equals(now.caseFile());
  }

  private Search with(Task other) {
    return new Search(width, taken, now, skipped, other, before);
  }

  /** What follows this state, with what is believed as it is. */
  private Search then(CaseFile more, Task other) {
    return new Search(width, more, now, skipped, other, Optional.of(this));
  }

  /** What follows this state, everything said so far weighed. */
  private Search weighedAnew(Assessment then, Task other) {
    return new Search(width, then.caseFile(), then, skipped, other, Optional.of(this));
  }

  /** The reading that is waited for. */
  private Optional<Task.Take> awaited() {
    return task instanceof Task.Take asked
        ? Optional.of(asked)
        : task instanceof Task.Sure sure ? Optional.of(sure.take()) : Optional.empty();
  }

  private String asked() {
    return awaited()
        .map(take -> "A number of " + TypedFigure.plural(take.blank().measurand()) + ", or a word,")
        .orElse("A word");
  }

  private Reply read(String typed) {
    Optional<Task.Take> take = awaited();
    if (take.isEmpty()) {
      return stay("No reading is asked for now.\nMaybe type at BOX to read there all the same.");
    }
    Reading blank = take.get().blank();
    TypedFigure figure = TypedFigure.of(typed, blank.measurand());
    if (figure.wrong().isPresent()) {
      return stay(figure.wrong().get());
    }
    try {
      Reading reading =
          new Reading(
              blank.tap(), blank.measurand(), blank.meter(), figure.middle(), figure.halfRange());
      requirePossible(reading, take.get());
      return doubt(take.get(), reading)
          .map(doubt -> Reply.on("", with(new Task.Sure(take.get(), reading, doubt))))
          .orElseGet(() -> accept(take.get(), reading));
    } catch (SurveyException impossible) {
      return stay(String.valueOf(impossible.getMessage()));
    }
  }

  private void requirePossible(Reading reading, Task.Take take) {
    take.onto(taken.survey(), reading).requireFits(taken.circuit());
  }

  private Optional<String> doubt(Task.Take take, Reading reading) {
    Posterior posterior = complete() ? now.posterior() : Assessment.posterior(taken);
    return new Doubts(taken, posterior).about(take.test(), reading);
  }

  private Reply keep() {
    return task instanceof Task.Sure sure
        ? accept(sure.take(), sure.reading())
        : stay("Nothing was asked that keep answers.");
  }

  private Reply again() {
    return task instanceof Task.Sure sure
        ? Reply.on("", with(sure.take()))
        : stay("Nothing was asked that no answers.");
  }

  private Reply accept(Task.Take take, Reading reading) {
    CaseFile more = taken.with(take.onto(taken.survey(), reading));
    if (!take.isLast()) {
      Task following = new Task.Take(take.visit(), take.number() + 1);
      return Reply.on("", then(more, following));
    }
    Timetable timetable = new Timetable(taken.circuit(), Minutes.defaults());
    return weigh(more, timetable.after(take.visit(), now.situation()));
  }

  /** Weighs anew and offers what follows. */
  private Reply weigh(CaseFile more, Situation situation) {
    Assessment then = Assessment.of(more, situation);
    Task following = next(then, skipped);
    Search after = weighedAnew(then, following);
    return Reply.on(after.weighed(words().refusals()), after);
  }

  /** What there is to say after everything was weighed. */
  private String weighed(List<String> refusedBefore) {
    SearchWords words = words().danger().ranking().profile();
    if (!words.refusals().equals(refusedBefore)) {
      words.why();
    }
    return words.offer(task).toString();
  }

  private Reply seen(String word, Optional<String> named) {
    Names boxes = new Names(taken.circuit().boxes().stream().map(Box::name).toList());
    Optional<String> box = named.isPresent() ? boxes.find(named.get()) : Optional.of(here());
    if (box.isEmpty()) {
      return stay(
          "Box ("
              + named.orElse("")
              + ") "
              + boxes.rule()
              + ".\nMaybe "
              + boxes.meant(named.orElse(""), "see map")
              + ".");
    }
    return switch (word) {
      case "at" -> at(box.get(), named.isPresent());
      case "open" -> open(named.isPresent() ? box.get() : firstBox(now));
      case "reach" -> weigh(taken.with(taken.survey().without(box.get())), now.situation());
      case "fine", "ok" -> fine(named.isPresent() ? box.get() : opened());
      case "burnt", "burned", "bad" -> burnt(box.get());
      case "remade" -> remade(box.get());
      default -> unreachable(box.get());
    };
  }

  /** The box that the present step is about. */
  private String here() {
    if (task instanceof Task.Take take) {
      return take.visit().box();
    }
    if (task instanceof Task.Sure sure) {
      return sure.take().visit().box();
    }
    if (task instanceof Task.Look look) {
      return look.box();
    }
    return task instanceof Task.Found found ? found.box() : firstBox(now);
  }

  /** The same; the supply where the utility was called. */
  private String opened() {
    boolean called =
        task instanceof Task.End end && end.stop().reason() == Choice.Stop.Reason.CALL_UTILITY;
    return called ? Finding.SUPPLY : here();
  }

  private Reply fine(String place) {
    Situation there =
        place.equals(Finding.SUPPLY) ? now.situation() : now.situation().opened(place);
    return weigh(taken.with(taken.survey().with(new Finding(place, Finding.State.FINE))), there);
  }

  private Reply burnt(String box) {
    CaseFile more = taken.with(taken.survey().with(new Finding(box, Finding.State.BURNT)));
    Assessment then = Assessment.of(more, now.situation().moved(box, Set.of()));
    Task found = new Task.Found(box);
    Search after = weighedAnew(then, found);
    return Reply.on(after.words().danger().offer(found).toString(), after);
  }

  /** What was read holds no longer; what was seen does. */
  private Reply remade(String box) {
    Survey survey = taken.survey();
    for (String burnt : survey.places(Finding.State.BURNT)) {
      survey = survey.without(burnt);
    }
    survey = survey.with(new Finding(box, Finding.State.REMADE));
    Reply after =
        weigh(taken.with(survey.withTests(List.of())), now.situation().moved(box, Set.of()));
    boolean anyRead = taken.survey().readingCount() > 0;
    return new Reply(
        after.says(), after.next(), false, anyRead ? Optional.of(taken) : Optional.empty());
  }

  private Reply unreachable(String box) {
    Survey survey = taken.survey().with(new Finding(box, Finding.State.OUT_OF_REACH));
    return weigh(taken.with(survey), now.situation());
  }

  private Reply open(String box) {
    Task look = new Task.Look(box);
    Search after = then(taken, look);
    return Reply.on(after.words().offer(look).toString(), after);
  }

  /** A reading with nothing on, at a box of the user's own choice. */
  private Reply at(String box, boolean named) {
    Optional<Meter> meter =
        taken.survey().meters().stream()
            .filter(each -> each.measurand() == Measurand.VOLTAGE)
            .max(Comparator.comparingDouble(Meter::inputOhms));
    if (!named || meter.isEmpty()) {
      return stay("Which box?\nMaybe type at and its name.");
    }
    if (taken.survey().places(Finding.State.OUT_OF_REACH).contains(box)) {
      return stay(
          box
              + " is marked as out of reach, so nothing is read there.\nMaybe it can be reached"
              + " after all: type reach "
              + box
              + ".");
    }
    if (taken.circuit().conductorsAt(box).size() < 2) {
      return stay("Nothing can be read at " + box + ".");
    }
    Reading blank =
        new Reading(box, ProbePoints.usual(taken.circuit(), box), meter.get().name(), 0);
    Test test = new Test(fresh("idle at " + box), List.of(), List.of(blank));
    Task take = new Task.Take(new Choice.Read(List.of(test)), 0);
    return Reply.on("", then(taken, take));
  }

  /** A test in the words of a case file, whatever was measured. */
  private Reply note(String words) {
    TypedTest typed = TypedTest.of(taken, words);
    if (typed.test().isEmpty()) {
      return stay(String.join("\n", typed.wrong()));
    }
    CaseFile equipped = typed.before();
    Test test = typed.test().get();
    boolean weighed = equipped.equals(now.caseFile());
    Posterior posterior = weighed ? now.posterior() : Assessment.posterior(equipped);
    String remark =
        new Doubts(equipped, posterior)
            .aboutTest(test)
            .map(doubt -> new Page(width).paragraphs(doubt).toString())
            .orElse("");
    List<Test> tests = new ArrayList<>(equipped.survey().tests());
    tests.add(test);
    Reply after = weigh(equipped.with(equipped.survey().withTests(tests)), now.situation());
    return Reply.on(remark + after.says(), after.next());
  }

  private String fresh(String name) {
    Set<String> names = new HashSet<>(taken.survey().tests().stream().map(Test::name).toList());
    String fresh = name;
    for (int number = 2; names.contains(fresh); number++) {
      fresh = name + " (" + number + ")";
    }
    return fresh;
  }
}
