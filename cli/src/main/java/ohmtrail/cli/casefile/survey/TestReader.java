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
import ohmtrail.cli.casefile.words.Keys;
import ohmtrail.survey.LoadInUse;
import ohmtrail.survey.Reading;
import ohmtrail.survey.SurveyException;
import ohmtrail.survey.Test;

/** Reads the tests of a case. */
final class TestReader {

  private static final String EXAMPLE = "write - heater at bed-1: and the readings below it.";

  private final UseReader uses;
  private final ReadingReader readings;
  private final Problems problems;
  private final TestNames names = new TestNames();
  private final Map<String, Draft> drafts = new LinkedHashMap<>();

  /** A test that readings are still added to. */
  private static final class Draft {
    private final Place place;
    private final List<LoadInUse> loads;
    private final List<Reading> readings = new ArrayList<>();

    Draft(Place place, List<LoadInUse> loads) {
      this.place = place;
      this.loads = loads;
    }
  }

  TestReader(UseReader uses, ReadingReader readings, Problems problems) {
    this.uses = uses;
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
      List<LoadInUse> loads = uses.read(entry.key());
      addReadings(add(names.of(entry.key().text()), entry.key().place(), loads), entry.value());
    }
  }

  private void readKeys(Mapping test) {
    Fields fields = new Fields(test, Keys.TEST, problems);
    Optional<Node> on = fields.node("loads");
    List<LoadInUse> loads = on.map(uses::read).orElse(List.of());
    Optional<Scalar> name = fields.scalar("name");
    String called = name.map(Scalar::text).orElseGet(() -> names.of(UseReader.nameOf(on, loads)));
    Place place = name.map(Scalar::place).orElse(test.place());
    if (name.isPresent() && !names.take(called)) {
      problems.error(place, "Test name (" + called + ") must be given to one test only.");
      return;
    }
    Draft draft = add(called, place, loads);
    fields.node("readings").ifPresent(node -> addReadings(draft, node));
  }

  private Draft add(String name, Place place, List<LoadInUse> loads) {
    Draft draft = new Draft(place, loads);
    drafts.put(name, draft);
    return draft;
  }

  private void addReadings(Draft draft, Node value) {
    if (value instanceof Items items) {
      items.nodes().forEach(node -> readings.read(node).ifPresent(draft.readings::add));
    } else if (!(value instanceof Scalar scalar && scalar.blank())) {
      problems.error(
          value.place(),
          "Readings must be a list, not " + value.what() + ".",
          "a dash is missing in front of each reading.");
    }
  }

  /** The loads of the test of that name, if there is one. */
  Optional<List<LoadInUse>> loadsOf(String name) {
    return Optional.ofNullable(drafts.get(name)).map(draft -> draft.loads);
  }

  /** Begins a test with the name that its loads give it; gives the name back. */
  String begin(String text, Place place, List<LoadInUse> loads) {
    String name = names.of(text);
    add(name, place, loads);
    return name;
  }

  /** Adds a reading to a test that has begun. */
  void add(String name, Reading reading) {
    Optional.ofNullable(drafts.get(name)).ifPresent(draft -> draft.readings.add(reading));
  }

  /** The tests, in the order in which they began. */
  List<Test> tests() {
    List<Test> tests = new ArrayList<>();
    drafts.forEach(
        (name, draft) -> {
          try {
            tests.add(new Test(name, draft.loads, draft.readings));
          } catch (SurveyException broken) {
            problems.error(draft.place, broken);
          }
        });
    return tests;
  }
}
