package ohmtrail.cli.walk;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import ohmtrail.advise.Choice;
import ohmtrail.advise.Option;
import ohmtrail.circuit.Box;
import ohmtrail.cli.casefile.CaseFile;
import ohmtrail.cli.casefile.TypedFigure;
import ohmtrail.cli.render.Cautions;
import ohmtrail.cli.render.DangerWords;
import ohmtrail.cli.render.Headline;
import ohmtrail.cli.render.advice.AdviceWords;
import ohmtrail.cli.render.advice.Refusals;
import ohmtrail.cli.render.screen.Blocks;
import ohmtrail.cli.render.screen.Screen;
import ohmtrail.cli.render.screen.Sentences;
import ohmtrail.cli.render.text.CircuitTree;
import ohmtrail.cli.render.text.LocateText;
import ohmtrail.cli.render.text.Page;
import ohmtrail.cli.render.words.Figures;
import ohmtrail.cli.render.words.WorkWords;
import ohmtrail.locate.Diagnosis;
import ohmtrail.report.OpeningPlan;
import ohmtrail.survey.Finding;

/** What a search says. */
final class SearchWords {
  private static final double WORTH_A_LINE = 0.01;
  private static final int MOST_BOXES = 5;
  private static final int FULL_BAR = 20;
  private static final int LONGEST_NAME = 20;

  /** On the screen of a step. */
  private static final int MOST_SHOWN = 3;

  private static final int DANGER_LINES = 3;

  /** Of the 24 lines the question takes so many, and the line that is typed. */
  private static final int QUESTION_LINES = 5;

  private final CaseFile caseFile;
  private final Assessment now;
  private final AdviceWords words;
  private final WorkWords work;
  private final Page page;

  SearchWords(Assessment now, int width) {
    this.caseFile = now.caseFile();
    this.now = now;
    this.work = new WorkWords(caseFile.circuit());
    this.words = new AdviceWords(caseFile.circuit(), caseFile.survey(), caseFile.assumptions());
    this.page = new Page(width);
  }

  @Override
  public String toString() {
    return page.toString();
  }

  SearchWords say(String sentence) {
    page.paragraph(sentence);
    return this;
  }

  SearchWords help() {
    page.heading("What can be typed").items(Verb.help());
    return this;
  }

  SearchWords map() {
    page.heading("The run");
    CircuitTree.draw(caseFile.circuit(), page);
    page.paragraph(numbers());
    List<Finding> findings = caseFile.survey().findings();
    if (!findings.isEmpty()) {
      page.heading("Found so far")
          .items(
              findings.stream()
                  .map(finding -> finding.place() + ": " + finding.state().word())
                  .toList());
    }
    return this;
  }

  /** The boxes by the numbers that they may be called by. */
  private String numbers() {
    List<Box> boxes = caseFile.circuit().boxes();
    return "By number: "
        + IntStream.range(1, boxes.size())
            .mapToObj(number -> number + " " + boxes.get(number).name())
            .collect(Collectors.joining(", "))
        + ".";
  }

  SearchWords cautions() {
    page.heading("Cautions")
        .items(Cautions.forAdvice(caseFile, now.advice(), now.advice().options().size()));
    return this;
  }

  private Diagnosis diagnosis() {
    return now.report().diagnosis();
  }

  SearchWords danger() {
    Optional<String> danger = DangerWords.of(caseFile, now.report());
    if (danger.isPresent()) {
      page.gap().paragraph(danger.get());
    }
    return this;
  }

  SearchWords headline() {
    page.gap().paragraph(Headline.of(caseFile, now.reported()));
    return this;
  }

  SearchWords ranking() {
    page.heading(
        caseFile.survey().readingCount() == 0
            ? "Before any reading, from how often joints fail"
            : "Where the bad joint is");
    List<OpeningPlan.Step> boxes =
        now.advice().opening().steps().stream()
            .filter(step -> step.probability() >= WORTH_A_LINE)
            .limit(MOST_BOXES)
            .toList();
    for (OpeningPlan.Step box : boxes) {
      page.line(bar(box.box(), box.probability()));
    }
    page.line(bar("(no bad joint)", diagnosis().healthyProbability()));
    return this;
  }

  private static String bar(String name, double probability) {
    String shown = name.length() <= LONGEST_NAME ? name : name.substring(0, LONGEST_NAME);
    return "  "
        + shown
        + " ".repeat(LONGEST_NAME - shown.length())
        + String.format(Locale.ROOT, "%6s  ", Figures.probability(probability))
        + "#".repeat((int) Math.round(FULL_BAR * probability));
  }

  SearchWords profile() {
    List<String> lines = new ProfileText(now.report(), page.width()).lines();
    if (!lines.isEmpty()) {
      page.gap().paragraph(lines.get(0));
      lines.stream().skip(1).forEach(page::line);
    }
    return this;
  }

  List<String> refusals() {
    return Refusals.of(now.advice(), words);
  }

  /** What is said first: the words that say more, and the first step. */
  String begin(Task task) {
    return screen(task, true)
        .always(
            page ->
                page.paragraph(
                    "map shows the run, more says everything, help lists what can be typed."))
        .toString();
  }

  /**
   * What is said once everything was weighed, on one screen with the question that follows.
   *
   * @param refusedAnew whether anything is refused that was not, or no longer
   */
  String step(Task task, boolean refusedAnew) {
    return screen(task, refusedAnew).toString();
  }

  private Screen screen(Task task, boolean refusedAnew) {
    int width = page.width();
    return new Screen(width, Screen.LINES - QUESTION_LINES)
        .always(to -> Blocks.danger(caseFile, now.report(), DANGER_LINES, to))
        .unlessFull(2, this::boxes)
        .unlessFull(4, to -> profileLines().forEach(to::line))
        .always(to -> offered(task, to))
        .unlessFull(1, to -> outcomes(task, to))
        .unlessFull(3, to -> refused(refusedAnew, to))
        .always(to -> Blocks.cautions(caseFile, isDead(task), to));
  }

  private void boxes(Page to) {
    if (caseFile.survey().readingCount() == 0) {
      to.line("Before any reading, from how often joints fail");
    }
    Blocks.boxes(now.advice().opening().steps(), diagnosis().healthyProbability(), MOST_SHOWN, to);
  }

  private List<String> profileLines() {
    return new ProfileText(now.report(), page.width()).lines();
  }

  private void refused(boolean anew, Page to) {
    List<String> refused = refusals();
    if (anew && !refused.isEmpty()) {
      to.paragraph(
          "Not to be done: "
              + Sentences.within(DANGER_LINES, to.width(), refused.get(0))
              + (refused.size() > 1 ? " And " + (refused.size() - 1) + " more: why." : ""));
    }
  }

  private static boolean isDead(Task task) {
    return task instanceof Task.Take take ? take.visit().isDead() : !(task instanceof Task.End);
  }

  /** The whole answer. */
  String more() {
    return LocateText.of(caseFile, now.report(), page.width());
  }

  SearchWords why() {
    List<String> refused = refusals();
    page.heading("Not to be done")
        .items(refused.isEmpty() ? List.of("nothing that was thought of does harm") : refused);
    return this;
  }

  /** The next step with what it would mean. */
  SearchWords offer(Task task) {
    page.gap();
    offered(task, page);
    outcomes(task, page);
    return this;
  }

  private void offered(Task task, Page to) {
    if (task instanceof Task.Take take) {
      offered(take.visit(), "Next, at ", to);
    } else if (task instanceof Task.Look look) {
      offered(new Choice.Open(look.box()), "Next: ", to);
    } else if (task instanceof Task.End end) {
      to.paragraph(words.choice(end.stop()) + ".");
    } else if (task instanceof Task.Found found) {
      to.paragraph(
          "Found, in "
              + found.box()
              + ". "
              + work.remaking(found.box())
              + " What burnt is replaced, not tightened.");
    }
  }

  private void offered(Choice choice, String start, Page to) {
    String what = words.choice(choice);
    to.paragraph(
        (choice instanceof Choice.Read ? start + what.substring("At ".length()) : start + what)
            + "."
            + option(choice)
                .map(
                    each ->
                        " Takes "
                            + Figures.upToTenths(each.ownMinutes())
                            + " min; "
                            + Math.round(each.expectedMinutes())
                            + " min expected in all.")
                .orElse(""));
  }

  private Optional<Option> option(Choice choice) {
    return now.advice().options().stream().filter(each -> each.choice().equals(choice)).findFirst();
  }

  private void outcomes(Task task, Page to) {
    Optional<Choice> choice =
        task instanceof Task.Take take
            ? Optional.of(take.visit())
            : task instanceof Task.Look look
                ? Optional.of(new Choice.Open(look.box()))
                : Optional.empty();
    choice
        .flatMap(this::option)
        .ifPresent(
            each ->
                to.items(
                    each.outcomes().stream()
                        .map(outcome -> words.outcome(each.choice(), outcome))
                        .toList()));
  }

  /** How a reading is taken, and its unit. */
  private static String how(Task.Take take) {
    String unit = TypedFigure.plural(take.blank().measurand());
    String asked = " " + unit.substring(0, 1).toUpperCase(Locale.ROOT) + unit.substring(1) + "?";
    if (take.test().isDead()) {
      return asked + " OL where the display shows no number.";
    }
    if (take.visit().look() == Choice.Read.Look.BRIEF) {
      return " Probes in place first, the meter set to hold; flick on and off, then read." + asked;
    }
    boolean loaded = !take.test().loads().isEmpty();
    return (loaded ? " Probes in place first; switch on, read, switch off." : "") + asked;
  }

  String question(Task task) {
    if (task instanceof Task.Take take) {
      return words.reading(take.test(), take.blank()) + "." + how(take);
    }
    if (task instanceof Task.Sure sure) {
      return sure.doubt() + " Type keep, or what it shows now.";
    }
    if (task instanceof Task.Look look) {
      return look.box()
          + work.opened(look.box())
          + ": do all joints look fine, or is one burnt, loose or broken?"
          + " Type fine, burnt, loose or broken.";
    }
    if (task instanceof Task.Found) {
      return "Type remade when it is, to see whether that was all; or quit.";
    }
    boolean healthy = ((Task.End) task).stop().reason() == Choice.Stop.Reason.HEALTHY;
    return healthy
        ? "Type quit to end here, or skip to go on."
        : "Type fine when the utility has found nothing, or quit.";
  }
}
