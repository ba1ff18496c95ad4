package ohmtrail.cli.walk;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Stream;
import ohmtrail.advise.Choice;
import ohmtrail.advise.Situation;
import ohmtrail.cli.casefile.BoxNames;
import ohmtrail.cli.casefile.CaseFile;
import ohmtrail.cli.casefile.TypedAnswer;
import ohmtrail.cli.casefile.TypedTest;
import ohmtrail.cli.names.Names;
import ohmtrail.cli.names.Shown;
import ohmtrail.survey.Finding;
import ohmtrail.survey.Measurand;
import ohmtrail.survey.Meter;
import ohmtrail.survey.ProbePoints;
import ohmtrail.survey.Reading;
import ohmtrail.survey.Survey;
import ohmtrail.survey.Test;

/**
 * What somebody saw or did at a box, or wants to do at one of their own choice.
 *
 * @param search where the search stands
 */
record Sighting(Search search) {
  /** Takes in what was seen. */
  Reply of(TypedAnswer.Seen seen) {
    return switch (seen.state()) {
      case FINE -> onBox(seen.box(), opened(), this::fine);
      case BURNT -> onBox(seen.box(), here(), this::burnt);
      case REMADE -> onBox(seen.box(), here(), this::remade);
      case OUT_OF_REACH -> onBox(seen.box(), here(), this::unreachable);
    };
  }

  /**
   * Does what is to be done at a box, by its name or number; at the usual one where none is named.
   */
  private Reply onBox(Optional<String> named, String usual, Function<String, Reply> deed) {
    Names boxes = boxes();
    return named
        .map(boxes::find)
        .orElse(Optional.of(usual))
        .map(deed)
        .orElseGet(() -> noBox(named.orElse(""), boxes));
  }

  private Names boxes() {
    return BoxNames.of(search.taken().circuit());
  }

  private Reply noBox(String named, Names boxes) {
    return search.stay(
        "Box ("
            + Shown.of(named)
            + ") "
            + boxes.rule()
            + ".\nMaybe "
            + boxes.meant(named, "see map")
            + ".");
  }

  /** The box can be reached after all. */
  Reply reach(Optional<String> named) {
    return onBox(
        named,
        here(),
        box -> search.weigh(search.taken().with(survey().without(box)), situation()));
  }

  /** A look into a box is wanted, into the first one where none is named. */
  Reply open(Optional<String> named) {
    return onBox(named, Search.firstBox(search.now()), this::open);
  }

  /** A reading with nothing on is wanted at a box, perhaps between other conductors than usual. */
  Reply at(Optional<String> named) {
    if (named.isEmpty()) {
      return search.stay("Which box?\nMaybe type at and its name.");
    }
    Optional<String> box = boxes().find(named.get());
    Optional<Test> test = box.isPresent() ? Optional.empty() : between(named.get());
    return test.map(this::take).orElseGet(() -> onBox(named, here(), this::usual));
  }

  /** The reading that words such as {@code hall-2 hot-ground} ask for. */
  private Optional<Test> between(String typed) {
    return boxes().leading(typed).flatMap(box -> blank(box.name() + " " + box.rest()).findFirst());
  }

  /** With the meter that it names, else with the voltmeter that draws least. */
  private Stream<Test> blank(String words) {
    return Stream.concat(Stream.of(""), voltmeter().map(meter -> " " + meter.name()).stream())
        .map(meter -> TypedTest.of(search.taken(), "idle: " + words + meter + " 0 V"))
        .flatMap(read -> read.test().stream());
  }

  private Optional<Meter> voltmeter() {
    return survey().meters(Measurand.VOLTAGE).stream()
        .max(Comparator.comparingDouble(Meter::inputOhms));
  }

  private Survey survey() {
    return search.taken().survey();
  }

  private Situation situation() {
    return search.now().situation();
  }

  private CaseFile found(String place, Finding.State state) {
    return search.taken().with(survey().with(new Finding(place, state)));
  }

  /** The box that the present step is about. */
  private String here() {
    if (search.task() instanceof Task.Take take) {
      return take.visit().box();
    }
    if (search.task() instanceof Task.Sure sure) {
      return sure.take().visit().box();
    }
    if (search.task() instanceof Task.Look look) {
      return look.box();
    }
    return search.task() instanceof Task.Found found ? found.box() : Search.firstBox(search.now());
  }

  /** The same; the supply where the utility was called. */
  private String opened() {
    boolean called =
        search.task() instanceof Task.End end
            && end.stop().reason() == Choice.Stop.Reason.CALL_UTILITY;
    return called ? Finding.SUPPLY : here();
  }

  private Reply fine(String place) {
    Situation there = place.equals(Finding.SUPPLY) ? situation() : situation().opened(place);
    return search.weigh(found(place, Finding.State.FINE), there);
  }

  private Reply burnt(String box) {
    CaseFile more = found(box, Finding.State.BURNT);
    return Reply.keep(more, search, () -> burnt(box, more));
  }

  private Reply burnt(String box, CaseFile more) {
    Assessment then = Assessment.of(more, situation().moved(box, Set.of()));
    Task found = new Task.Found(box);
    Search after = search.weighedAnew(then, found);
    return Reply.on(after.words().danger().offer(found).toString(), after);
  }

  /** What was read holds no longer; what was seen does. */
  private Reply remade(String box) {
    Survey survey = survey();
    for (String burnt : survey.places(Finding.State.BURNT)) {
      survey = survey.without(burnt);
    }
    survey = survey.with(new Finding(box, Finding.State.REMADE));
    Reply after =
        search.weigh(
            search.taken().with(survey.withTests(List.of())), situation().moved(box, Set.of()));
    boolean anyRead = survey().readingCount() > 0;
    return anyRead ? after.settingAside(search.taken()) : after;
  }

  private Reply unreachable(String box) {
    return search.weigh(found(box, Finding.State.OUT_OF_REACH), situation());
  }

  private Reply open(String box) {
    Task look = new Task.Look(box);
    Search after = search.then(search.taken(), look);
    return Reply.on(after.words().offer(look).toString(), after);
  }

  /** A reading between the usual conductors, at a box of the user's own choice. */
  private Reply usual(String box) {
    Optional<Meter> meter = voltmeter();
    if (meter.isEmpty()) {
      return search.stay("No meter at hand reads volts.");
    }
    if (search.taken().circuit().conductorsAt(box).size() < 2) {
      return search.stay("Nothing can be read at " + box + ".");
    }
    Reading blank =
        new Reading(box, ProbePoints.usual(search.taken().circuit(), box), meter.get().name(), 0);
    return take(new Test("idle", List.of(), List.of(blank)));
  }

  private Reply take(Test blank) {
    String box = blank.readings().get(0).box();
    if (survey().places(Finding.State.OUT_OF_REACH).contains(box)) {
      return search.stay(
          box
              + " is marked as out of reach, so nothing is read there.\nMaybe it can be reached"
              + " after all: type reach "
              + box
              + ".");
    }
    Test test = blank.named(survey().freeTestName("idle at " + box));
    Task take = new Task.Take(new Choice.Read(List.of(test)), 0);
    return Reply.on("", search.then(search.taken(), take));
  }
}
