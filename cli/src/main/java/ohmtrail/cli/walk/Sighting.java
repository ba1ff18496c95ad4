package ohmtrail.cli.walk;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import ohmtrail.advise.Choice;
import ohmtrail.advise.Situation;
import ohmtrail.cli.casefile.BoxNames;
import ohmtrail.cli.casefile.CaseFile;
import ohmtrail.cli.names.Names;
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
  /** Takes it in. */
  Reply of(String word, Optional<String> named) {
    Names boxes = BoxNames.of(search.taken().circuit());
    Optional<String> box = named.isPresent() ? boxes.find(named.get()) : Optional.of(here());
    if (box.isEmpty()) {
      return search.stay(
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
      case "open" -> open(named.isPresent() ? box.get() : Search.firstBox(search.now()));
      case "reach" -> search.weigh(search.taken().with(survey().without(box.get())), situation());
      case "fine", "ok" -> fine(named.isPresent() ? box.get() : opened());
      case "burnt", "burned", "bad" -> burnt(box.get());
      case "remade" -> remade(box.get());
      default -> unreachable(box.get());
    };
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
    return new Reply(
        after.says(),
        after.next(),
        false,
        anyRead ? Optional.of(search.taken()) : Optional.empty());
  }

  private Reply unreachable(String box) {
    return search.weigh(found(box, Finding.State.OUT_OF_REACH), situation());
  }

  private Reply open(String box) {
    Task look = new Task.Look(box);
    Search after = search.then(search.taken(), look);
    return Reply.on(after.words().offer(look).toString(), after);
  }

  /** A reading with nothing on, at a box of the user's own choice. */
  private Reply at(String box, boolean named) {
    Optional<Meter> meter =
        survey().meters(Measurand.VOLTAGE).stream()
            .max(Comparator.comparingDouble(Meter::inputOhms));
    if (!named || meter.isEmpty()) {
      return search.stay("Which box?\nMaybe type at and its name.");
    }
    if (survey().places(Finding.State.OUT_OF_REACH).contains(box)) {
      return search.stay(
          box
              + " is marked as out of reach, so nothing is read there.\nMaybe it can be reached"
              + " after all: type reach "
              + box
              + ".");
    }
    if (search.taken().circuit().conductorsAt(box).size() < 2) {
      return search.stay("Nothing can be read at " + box + ".");
    }
    Reading blank =
        new Reading(box, ProbePoints.usual(search.taken().circuit(), box), meter.get().name(), 0);
    Test test = new Test(survey().freeTestName("idle at " + box), List.of(), List.of(blank));
    Task take = new Task.Take(new Choice.Read(List.of(test)), 0);
    return Reply.on("", search.then(search.taken(), take));
  }
}
