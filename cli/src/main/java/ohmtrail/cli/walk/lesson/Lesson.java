package ohmtrail.cli.walk.lesson;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import ohmtrail.advise.Choice;
import ohmtrail.advise.Situation;
import ohmtrail.advise.Timetable;
import ohmtrail.circuit.Box;
import ohmtrail.cli.casefile.BoxNames;
import ohmtrail.cli.casefile.CaseFile;
import ohmtrail.cli.casefile.TypedAnswer;
import ohmtrail.cli.names.Names;
import ohmtrail.cli.names.Shown;
import ohmtrail.cli.render.advice.AdviceWords;
import ohmtrail.cli.render.text.CircuitTree;
import ohmtrail.cli.render.text.Page;
import ohmtrail.cli.render.words.Figures;
import ohmtrail.cli.render.words.ReadingWords;
import ohmtrail.cli.render.words.Region;
import ohmtrail.cli.render.words.WorkWords;
import ohmtrail.cli.walk.Dialogue;
import ohmtrail.cli.walk.Reply;
import ohmtrail.practice.LiveCircuit;
import ohmtrail.practice.LoopSums;
import ohmtrail.practice.PracticeCase;
import ohmtrail.practice.search.Tutor;
import ohmtrail.reference.Minutes;
import ohmtrail.survey.Finding;
import ohmtrail.survey.LoadInUse;
import ohmtrail.survey.Meter;
import ohmtrail.survey.ProbePoints;
import ohmtrail.survey.Reading;
import ohmtrail.survey.Survey;
import ohmtrail.survey.SurveyException;
import ohmtrail.survey.Test;
import ohmtrail.survey.load.Load;

/**
 * A made-up circuit with a hidden fault that answers a learner. The same questions get the same
 * answers: each step asks the circuit everything from the start again.
 *
 * @param width columns of what is said
 * @param hidden the circuit and what is the matter with it
 * @param seed of the circuit's drifts and errors
 * @param steps what the learner has done
 * @param survey what the learner has read and seen
 * @param situation where the learner stands
 * @param minutes spent
 */
record Lesson(
    int width,
    PracticeCase hidden,
    long seed,
    List<Choice> steps,
    Survey survey,
    Situation situation,
    double minutes)
    implements Dialogue {
  private static final Names WORDS = new Names(List.of("help", "map", "readings", "open", "quit"));
  private static final Pattern OPEN = Pattern.compile("(?i)open +(.+)");
  private static final Pattern WITH =
      Pattern.compile("(?i)(.+?)(?: with(?: the)? (\\S+)(?: at (.+))?)?");

  Lesson {
    steps = List.copyOf(steps);
  }

  /** What is said first, and the state that it leads to. */
  static Reply begin(PracticeCase hidden, long seed, int width) {
    Survey equipment = new LiveCircuit(hidden, seed).equipment();
    Lesson first = new Lesson(width, hidden, seed, List.of(), equipment, Situation.START, 0);
    Page page = new Page(width);
    page.paragraph(
        "Lamps dim when something heavy is switched on. One joint of this run has gone bad: find"
            + " the box in as few minutes as you can. Every reading, every walk and every box"
            + " opened takes its time. Nothing here is real; on a real circuit readings are taken"
            + " by people trained for live work.");
    page.heading("The run");
    CircuitTree.draw(hidden.circuit(), page);
    page.heading("At hand")
        .items(equipment.meters().stream().map(Lesson::described).toList())
        .items(equipment.loads().stream().map(Load::name).toList());
    return Reply.on(page + first.help(), first);
  }

  private static String described(Meter meter) {
    return meter.name() + ", " + Figures.ohms(meter.inputOhms()) + " input";
  }

  /** The words, with boxes and load of this run. */
  private String help() {
    List<Box> boxes = hidden.circuit().boxes();
    String box = boxes.get(1).name();
    String load = survey.loads().get(0).name();
    String other = boxes.get(boxes.size() - 1).name();
    return new Page(width)
        .heading("What can be typed")
        .items(
            List.of(
                box + ": what a meter shows there from hot to neutral, nothing on",
                box + " low: the same with the low-impedance meter",
                box + " neutral-ground: between other conductors",
                box + " with " + load + ": with the " + load + " plugged in there",
                box + " with " + load + " at " + other + ": with it plugged in elsewhere",
                "open " + box + ": look into that box",
                "map, readings: the run; what was read so far",
                "quit: give up and see where it was"))
        .toString();
  }

  @Override
  public String question() {
    return Math.round(minutes) + " min so far. What do you read, or which box do you open?";
  }

  @Override
  public Optional<CaseFile> caseFile() {
    return Optional.empty();
  }

  @Override
  public String closing() {
    return "";
  }

  @Override
  public Reply answer(String line) {
    String typed = line.strip();
    Matcher open = OPEN.matcher(typed);
    return switch (typed.toLowerCase(Locale.ROOT)) {
      case "" -> stay("Name a box.\nMaybe type help.");
      case "help", "?" -> Reply.on(help(), this);
      case "map" -> map();
      case "readings" -> Reply.on(readings(), this);
      case "quit", "q", "exit" -> Reply.end(ending("Given up after "), this);
      default -> open.matches() ? open(open.group(1).strip()) : read(typed);
    };
  }

  private Reply stay(String sentences) {
    return Reply.on(new Page(width).paragraphs(sentences).toString(), this);
  }

  private Reply map() {
    Page page = new Page(width);
    CircuitTree.draw(hidden.circuit(), page);
    return Reply.on(page.toString(), this);
  }

  private Optional<String> box(String typed) {
    return boxes().find(typed);
  }

  private Names boxes() {
    return BoxNames.of(hidden.circuit());
  }

  private Reply noBox(String typed) {
    String near = boxes().meant(typed, WORDS.meant(typed, "type help"));
    return stay("Box (" + Shown.of(typed) + ") " + boxes().rule() + ".\nMaybe " + near + ".");
  }

  private Reply open(String typed) {
    Optional<String> box = box(typed);
    if (box.isEmpty()) {
      return noBox(typed);
    }
    Choice choice = new Choice.Open(box.get());
    Lesson after = after(choice, survey.with(new Finding(box.get(), Finding.State.FINE)));
    String opened = box.get() + new WorkWords(hidden.circuit()).opened(box.get());
    return new LiveCircuit(hidden, seed).showsInside(box.get())
        ? Reply.end(after.ending("A joint in " + opened + " is burnt: found in "), after)
        : Reply.on(
            new Page(width).paragraphs("Every joint in " + opened + " looks fine.").toString(),
            after);
  }

  private Lesson after(Choice choice, Survey known) {
    Timetable timetable = new Timetable(hidden.circuit(), Minutes.defaults(), hidden.assumptions());
    List<Choice> all = new ArrayList<>(steps);
    all.add(choice);
    return new Lesson(
        width,
        hidden,
        seed,
        all,
        known,
        timetable.after(choice, situation),
        minutes + timetable.of(choice, survey, situation));
  }

  private Reply read(String typed) {
    Matcher parts = WITH.matcher(typed);
    String read = parts.matches() ? parts.group(1) : typed;
    Optional<Names.Leading> leading = boxes().leading(read);
    if (leading.isEmpty()) {
      return noBox(read);
    }
    String box = leading.get().name();
    String meter = survey.meters().get(0).name();
    ProbePoints between = ProbePoints.usual(hidden.circuit(), box);
    for (String word : leading.get().rest().split(" ", -1)) {
      Optional<String> named = word.isEmpty() ? Optional.of(meter) : meter(word);
      Optional<ProbePoints> pair = TypedAnswer.pair(word);
      if (named.isEmpty() && pair.isEmpty()) {
        return stay(
            "Word (" + Shown.of(word) + ") must be a meter or two conductors.\nMaybe type help.");
      }
      meter = named.orElse(meter);
      between = pair.orElse(between);
    }
    List<LoadInUse> loads = new ArrayList<>();
    if (parts.group(2) != null) {
      Optional<String> load =
          new Names(survey.loads().stream().map(Load::name).toList()).find(parts.group(2));
      Optional<String> at = parts.group(3) == null ? Optional.of(box) : box(parts.group(3));
      if (load.isEmpty() || at.isEmpty()) {
        return stay(
            "Load or box (" + parts.group(2) + ") must be one that is there.\nMaybe type map.");
      }
      loads.add(new LoadInUse(load.get(), at.get()));
    }
    return take(
        new Test(
            "reading " + (steps.size() + 1), loads, List.of(new Reading(box, between, meter, 0))));
  }

  /** By its name, or how that begins. */
  private Optional<String> meter(String word) {
    String begins = word.toLowerCase(Locale.ROOT);
    return survey.meters().stream()
        .map(Meter::name)
        .filter(name -> name.toLowerCase(Locale.ROOT).startsWith(begins))
        .findFirst();
  }

  private Reply take(Test blank) {
    try {
      LiveCircuit live = new LiveCircuit(hidden, seed);
      survey.tests().forEach(live::take);
      Test taken = live.take(blank);
      List<Test> tests = new ArrayList<>(survey.tests());
      tests.add(taken);
      Choice.Read visit = new Choice.Read(List.of(blank));
      Lesson after = after(visit, survey.withTests(tests));
      Page page = new Page(width).paragraphs(words(taken));
      onARealCircuit(visit).forEach(page::paragraph);
      return Reply.on(page.toString(), after);
    } catch (SurveyException impossible) {
      return stay(String.valueOf(impossible.getMessage()));
    }
  }

  /** What has to be off for a visit, and what would be refused: here nothing is real. */
  private List<String> onARealCircuit(Choice.Read visit) {
    List<String> remarks = new ArrayList<>();
    String around = new WorkWords(hidden.circuit()).around(visit.tests());
    if (!around.isEmpty()) {
      remarks.add("On a real circuit" + around + ".");
    }
    AdviceWords words = new AdviceWords(hidden.circuit(), survey, hidden.assumptions());
    tutor().hazards(visit, survey, situation).stream()
        .map(hazard -> words.hazard(visit, hazard))
        .map(reason -> "On a real circuit this is not to be done: it " + reason + ".")
        .forEach(remarks::add);
    return remarks;
  }

  private Tutor tutor() {
    return new Tutor(hidden, seed);
  }

  private String words(Test taken) {
    Reading reading = taken.readings().get(0);
    String on =
        taken.loads().isEmpty()
            ? ""
            : " with the " + taken.loads().get(0).load() + " at " + taken.loads().get(0).box();
    return reading.box()
        + ", "
        + new ReadingWords(Region.of(hidden.circuit().supply())).tap(reading.tap())
        + on
        + ": "
        + Figures.volts(reading.value())
        + " ("
        + reading.meter()
        + ")";
  }

  private String readings() {
    Page page = new Page(width);
    page.items(survey.tests().stream().map(this::words).collect(Collectors.toList()));
    return survey.tests().isEmpty()
        ? new Page(width).paragraphs("None yet.").toString()
        : page.toString();
  }

  /** The learner's path, the best one beside it, and the sums. */
  private String ending(String start) {
    AdviceWords words = new AdviceWords(hidden.circuit(), survey, hidden.assumptions());
    Page page = new Page(width);
    page.paragraph(start + Math.round(minutes) + " min.");
    page.heading("Your way")
        .items(
            steps.isEmpty() ? List.of("no step yet") : steps.stream().map(words::choice).toList());
    Tutor.Way best = tutor().advised();
    page.heading("As advised, in " + Math.round(best.minutes()) + " min")
        .items(best.steps().stream().map(words::choice).toList());
    page.heading("What the sums say")
        .items(SumsWords.of(hidden.circuit(), LoopSums.of(hidden, seed)));
    return page.toString();
  }
}
