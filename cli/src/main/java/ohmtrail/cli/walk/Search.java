package ohmtrail.cli.walk;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import ohmtrail.advise.Choice;
import ohmtrail.advise.Option;
import ohmtrail.advise.Situation;
import ohmtrail.advise.Timetable;
import ohmtrail.cli.casefile.CaseFile;
import ohmtrail.cli.casefile.TypedAnswer;
import ohmtrail.cli.casefile.TypedFigure;
import ohmtrail.cli.casefile.TypedTest;
import ohmtrail.cli.names.Shown;
import ohmtrail.cli.render.advice.AdviceWords;
import ohmtrail.cli.render.text.Page;
import ohmtrail.cli.render.words.WorkWords;
import ohmtrail.locate.Posterior;
import ohmtrail.reference.Minutes;
import ohmtrail.survey.Finding;
import ohmtrail.survey.Reading;
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
  Search {
    skipped = Set.copyOf(skipped);
  }

  /** What is said first, and the state that it leads to. */
  static Reply begin(CaseFile caseFile, int width) {
    CaseFile equipped = Equipment.of(caseFile);
    Assessment now = Assessment.of(equipped, Assessment.arrival(equipped));
    Task task = next(now, Set.of());
    Search start = new Search(width, equipped, now, Set.of(), task, Optional.empty());
    return Reply.on(new SearchWords(now, width).begin(task), start);
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

  SearchWords words() {
    return new SearchWords(now, width);
  }

  /** The best step that was not declined; opening the first box where all were. */
  private static Task next(Assessment now, Set<String> skipped) {
    AdviceWords words =
        new AdviceWords(
            now.caseFile().circuit(), now.caseFile().survey(), now.caseFile().assumptions());
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

  static String firstBox(Assessment now) {
    return now.advice().opening().boxes().stream()
        .filter(box -> !box.equals(Finding.SUPPLY))
        .findFirst()
        .orElseThrow();
  }

  @Override
  public Reply answer(String line) {
    String typed = line.strip();
    if (typed.isEmpty()) {
      return stay(asked() + " is asked for: help lists the words.");
    }
    if (asksForOhms() && TypedFigure.isFigure(typed)) {
      return read(typed);
    }
    if (TypedAnswer.isUnknown(typed) && !typed.equals("?")) {
      return unknownTo();
    }
    Optional<TypedAnswer.Seen> seen = TypedAnswer.seen(typed);
    if (seen.isPresent()) {
      return new Sighting(this).of(seen.get());
    }
    return Verb.of(typed)
        .map(verb -> answer(verb.verb(), verb.rest(), typed))
        .orElseGet(() -> TypedFigure.isFigure(typed) ? read(typed) : unknown(typed));
  }

  private Reply answer(Verb verb, Optional<String> rest, String typed) {
    boolean takesBox = verb == Verb.AT || verb == Verb.OPEN || verb == Verb.REACH;
    if (rest.isPresent() && !takesBox && verb != Verb.NOTE) {
      return unknown(typed);
    }
    return switch (verb) {
      case NOTE -> note(rest.orElse(""));
      case AT -> new Sighting(this).at(rest);
      case OPEN -> new Sighting(this).open(rest);
      case REACH -> new Sighting(this).reach(rest);
      case HELP -> Reply.on(words().help().toString(), this);
      case MAP -> Reply.on(words().map().toString(), this);
      case RANKING -> Reply.on(words().ranking().toString(), this);
      case PROFILE -> Reply.on(words().profile().toString(), this);
      case WHY -> Reply.on(words().why().toString(), this);
      case MORE -> Reply.on(words().more(), this);
      case QUIT -> Reply.end("", this);
      case UNDO -> undo();
      case SKIP -> skip();
      case KEEP -> keep();
      case AGAIN -> again();
      case NUMBER, FINE, BURNT, REMADE, UNREACHABLE -> unknown(typed);
    };
  }

  private boolean asksForOhms() {
    return awaited().filter(take -> !take.blank().measurand().followsSupply()).isPresent();
  }

  /** Where nobody knows: another step, or the reading once more. */
  private Reply unknownTo() {
    return task instanceof Task.Found
        ? stay("Type remade when the joint was made anew, or quit.")
        : skip();
  }

  Reply stay(String sentences) {
    return Reply.on(new Page(width).paragraphs(sentences).toString(), this);
  }

  private Reply unknown(String line) {
    String shown = Shown.of(line);
    String cut =
        shown.substring(
            0,
            shown.offsetByCodePoints(0, Math.min(width, shown.codePointCount(0, shown.length()))));
    boolean reading = TypedTest.of(taken, "idle: " + line).test().isPresent();
    return stay(
        "Answer ("
            + cut
            + ") is neither a number nor a word known here.\nMaybe "
            + (reading
                ? "note idle: " + cut + " was meant, or what was on in place of idle"
                : Verb.offered().meant(line, "type help"))
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
    AdviceWords words = new AdviceWords(taken.circuit(), taken.survey(), taken.assumptions());
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
  Search then(CaseFile more, Task other) {
    return new Search(width, more, now, skipped, other, Optional.of(this));
  }

  /** What follows this state, everything said so far weighed. */
  Search weighedAnew(Assessment then, Task other) {
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
      return Reply.keep(with(take.get(), reading), this, () -> doubted(take.get(), reading));
    } catch (SurveyException impossible) {
      return stay(String.valueOf(impossible.getMessage()));
    }
  }

  private void requirePossible(Reading reading, Task.Take take) {
    take.onto(taken.survey(), reading).requireFits(taken.circuit());
  }

  /** The case with a reading more. */
  private CaseFile with(Task.Take take, Reading reading) {
    return taken.with(take.onto(taken.survey(), reading));
  }

  private Reply doubted(Task.Take take, Reading reading) {
    return doubt(take, reading)
        .map(doubt -> Reply.on("", with(new Task.Sure(take, reading, doubt))))
        .orElseGet(() -> accept(take, reading));
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
    CaseFile more = with(take, reading);
    if (!take.isLast()) {
      Task following = new Task.Take(take.visit(), take.number() + 1);
      return Reply.on("", then(more, following));
    }
    Timetable timetable = new Timetable(taken.circuit(), Minutes.defaults(), taken.assumptions());
    return weigh(more, timetable.after(take.visit(), now.situation()));
  }

  /** Keeps what was said, weighs anew and offers what follows. */
  Reply weigh(CaseFile more, Situation situation) {
    return Reply.keep(more, this, () -> weighed(more, situation));
  }

  private Reply weighed(CaseFile more, Situation situation) {
    Assessment then = Assessment.of(more, situation);
    Task following = next(then, skipped);
    Search after = weighedAnew(then, following);
    return Reply.on(after.weighed(words().refusals()), after);
  }

  /** What there is to say after everything was weighed. */
  private String weighed(List<String> refusedBefore) {
    SearchWords words = words();
    return words.step(task, !words.refusals().equals(refusedBefore));
  }

  /** A test in the words of a case file, whatever was measured. */
  private Reply note(String words) {
    TypedTest typed = TypedTest.of(taken, words);
    if (typed.test().isEmpty()) {
      return stay(String.join("\n", typed.wrong()));
    }
    CaseFile equipped = typed.before();
    Test test = typed.test().get();
    List<Test> tests = new ArrayList<>(equipped.survey().tests());
    tests.add(test);
    CaseFile more = equipped.with(equipped.survey().withTests(tests));
    return Reply.keep(more, this, () -> noted(equipped, test, more));
  }

  private Reply noted(CaseFile equipped, Test test, CaseFile more) {
    boolean weighed = equipped.equals(now.caseFile());
    Posterior posterior = weighed ? now.posterior() : Assessment.posterior(equipped);
    Page remark = new Page(width);
    new WorkWords(equipped.circuit()).again(List.of(test)).ifPresent(remark::paragraph);
    new Doubts(equipped, posterior).aboutTest(test).ifPresent(remark::paragraph);
    return weighed(more, now.situation()).saying(remark.toString());
  }
}
