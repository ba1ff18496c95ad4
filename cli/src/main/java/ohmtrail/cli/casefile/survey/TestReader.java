package ohmtrail.cli.casefile.survey;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import ohmtrail.cli.casefile.text.Fields;
import ohmtrail.cli.casefile.text.Node;
import ohmtrail.cli.casefile.text.Node.Entry;
import ohmtrail.cli.casefile.text.Node.Items;
import ohmtrail.cli.casefile.text.Node.Mapping;
import ohmtrail.cli.casefile.text.Node.Scalar;
import ohmtrail.cli.casefile.text.Place;
import ohmtrail.cli.casefile.text.Problems;
import ohmtrail.cli.casefile.text.Size;
import ohmtrail.cli.casefile.words.Keys;
import ohmtrail.survey.Reading;
import ohmtrail.survey.SurveyException;
import ohmtrail.survey.Test;
import ohmtrail.survey.Trip;

/** Reads the tests of a case. */
final class TestReader {

  private static final String EXAMPLE = "write - heater at bed-1: and the readings below it.";

  private final ConditionReader conditions;
  private final ReadingReader readings;
  private final TripReader trips;
  private final Problems problems;
  private final TestNames names = new TestNames();
  private final Map<String, Draft> drafts = new LinkedHashMap<>();
  private int read;

  /** A test that readings are still added to. */
  private static final class Draft {
    private final Place place;
    private final Condition condition;
    private final List<Reading> readings = new ArrayList<>();
    private final List<Trip> trips = new ArrayList<>();

    Draft(Place place, Condition condition) {
      this.place = place;
      this.condition = condition;
    }
  }

  TestReader(
      ConditionReader conditions, ReadingReader readings, TripReader trips, Problems problems) {
    this.trips = trips;
    this.conditions = conditions;
    this.readings = readings;
    this.problems = problems;
  }

  /** Reads a list of tests. */
  void read(Items tests) {
    for (Node node : tests.nodes()) {
      if (node instanceof Mapping mapping && !mapping.entries().isEmpty()) {
        read(mapping);
      } else {
        problems.error(
            node.place(),
            "Test must say which loads were on, not hold " + node.what() + ".",
            EXAMPLE);
      }
    }
  }

  private void read(Mapping test) {
    boolean keyed =
        test.entries().stream().anyMatch(entry -> Keys.TEST.all().contains(entry.key().text()));
    if (keyed) {
      readKeys(test);
    } else {
      readShort(test);
    }
  }

  /** The loads as the key, the readings as the value. */
  private void readShort(Mapping test) {
    Entry first = test.entries().get(0);
    for (Entry entry : test.entries()) {
      if (!entry.key().equals(first.key())) {
        problems.error(
            entry.key().place(),
            "Test (" + entry.key().text() + ") must begin with a dash of its own.",
            "the dash is missing, or a reading lacks one.");
      }
      Condition condition = conditions.read(entry.key());
      Draft draft = add(names.of(entry.key().text()), entry.key().place(), condition);
      addReadings(draft, entry.value());
    }
  }

  private void readKeys(Mapping test) {
    Fields fields = new Fields(test, Keys.TEST, problems);
    Optional<Node> on = fields.node("loads");
    Condition condition = on.map(conditions::read).orElseGet(() -> Condition.live(List.of()));
    Optional<Scalar> name = fields.scalar("name");
    name.ifPresent(problems::requireVisible);
    String called = name.map(Scalar::text).orElseGet(() -> names.of(nameOf(on, condition)));
    Place place = name.map(Scalar::place).orElse(test.place());
    if (name.isPresent() && !names.take(called)) {
      problems.error(place, "Test name (" + called + ") must be given to one test only.");
      return;
    }
    Draft draft = add(called, place, condition);
    fields.node("readings").ifPresent(node -> addReadings(draft, node));
  }

  /** A text is its own name. */
  private static String nameOf(Optional<Node> on, Condition condition) {
    return on.isPresent() && on.get() instanceof Scalar scalar ? scalar.text() : condition.text();
  }

  private Draft add(String name, Place place, Condition condition) {
    Draft draft = new Draft(place, condition);
    drafts.put(name, draft);
    return draft;
  }

  private void addReadings(Draft draft, Node value) {
    if (value instanceof Items items) {
      items.nodes().forEach(node -> addReading(draft, node));
    } else if (!(value instanceof Scalar scalar && scalar.blank())) {
      problems.error(
          value.place(),
          "Readings must be a list, not " + value.what() + ".",
          "a dash is missing in front of each reading.");
    }
  }

  private void addReading(Draft draft, Node node) {
    Size.READINGS.require(++read, node.place(), problems);
    if (node instanceof Scalar scalar && TripReader.isTrip(scalar)) {
      trips.read(scalar).ifPresent(draft.trips::add);
      return;
    }
    readings
        .read(node, draft.condition)
        .filter(reading -> isAllowed(draft, reading, node.place()))
        .ifPresent(draft.readings::add);
  }

  /** Whether a reading can be taken in a test; if not, it is noted. */
  private boolean isAllowed(Draft draft, Reading reading, Place place) {
    try {
      test(reading.box(), draft, List.of(reading));
      return true;
    } catch (SurveyException broken) {
      problems.error(place, broken);
      return false;
    }
  }

  private static Test test(String name, Draft draft, List<Reading> readings) {
    Condition condition = draft.condition;
    return new Test(name, condition.loads(), condition.isolation(), readings)
        .withSwitching(condition.switching());
  }

  /** What the test of that name was taken under, if there is one. */
  Optional<Condition> conditionOf(String name) {
    return Optional.ofNullable(drafts.get(name)).map(draft -> draft.condition);
  }

  /** Begins a test with the name that its condition gives it; gives the name back. */
  String begin(String text, Place place, Condition condition) {
    String name = names.of(text);
    add(name, place, condition);
    return name;
  }

  /** Adds a reading to a test that has begun. */
  void add(String name, Reading reading, Place place) {
    Size.READINGS.require(++read, place, problems);
    Optional.ofNullable(drafts.get(name))
        .filter(draft -> isAllowed(draft, reading, place))
        .ifPresent(draft -> draft.readings.add(reading));
  }

  /** The tests, in the order in which they began. */
  List<Test> tests() {
    List<Test> tests = new ArrayList<>();
    drafts.forEach(
        (name, draft) -> {
          try {
            tests.add(test(name, draft, draft.readings).withTrips(draft.trips));
          } catch (SurveyException broken) {
            problems.error(draft.place, broken);
          }
        });
    return tests;
  }
}
