package ohmtrail.cli.casefile.survey;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import ohmtrail.cli.casefile.text.Node;
import ohmtrail.cli.casefile.text.Node.Entry;
import ohmtrail.cli.casefile.text.Node.Items;
import ohmtrail.cli.casefile.text.Node.Mapping;
import ohmtrail.cli.casefile.text.Node.Scalar;
import ohmtrail.cli.casefile.text.Problems;
import ohmtrail.cli.casefile.text.Words;
import ohmtrail.cli.casefile.words.Vocabulary;
import ohmtrail.cli.names.Names;
import ohmtrail.survey.Finding;

/** Reads what was found at boxes: {@code hall-2: fine}. */
final class FindingReader {
  private static final Names WORDS =
      new Names(Stream.of(Finding.State.values()).map(Finding.State::word).toList());

  private final Names places;
  private final Problems problems;

  FindingReader(Names boxes, Problems problems) {
    List<String> all = new ArrayList<>(boxes.all());
    all.add(Finding.SUPPLY);
    this.places = new Names(all);
    this.problems = problems;
  }

  /** What is said of a box that was looked into once more. */
  static final String AGAIN = "again";

  /** A finding, and whether it is that of a second look. */
  private record Said(Finding finding, boolean again) {}

  /**
   * Reads a list of them; of several at one place the last one holds. Both fine and burnt a box is
   * only if it was looked into again.
   */
  List<Finding> read(Items items) {
    Map<String, Finding> found = new LinkedHashMap<>();
    for (Node node : items.nodes()) {
      if (node instanceof Mapping mapping) {
        for (Entry entry : mapping.entries()) {
          read(entry).ifPresent(said -> put(said, entry, found));
        }
      } else {
        problems.error(
            node.place(),
            "What was found must be a box with a word, not " + node.what() + ".",
            "write - hall-1: fine.");
      }
    }
    return List.copyOf(found.values());
  }

  private void put(Said said, Entry entry, Map<String, Finding> found) {
    Finding finding = said.finding;
    Finding before = found.remove(finding.place());
    if (before != null && before.contradicts(finding) && !said.again) {
      problems.error(
          entry.value().place(),
          "Box ("
              + finding.place()
              + ") must not be both "
              + before.state().word()
              + " and "
              + finding.state().word()
              + ".",
          "it was looked into once more: write " + finding.state().word() + " " + AGAIN + ".");
    }
    found.put(finding.place(), finding);
  }

  private Optional<Said> read(Entry entry) {
    Optional<String> place = places.find(entry.key().text());
    if (place.isEmpty()) {
      problems.unknown(entry.key().word(), "Box", places);
    }
    if (entry.value() instanceof Scalar word) {
      Words said = new Words(word);
      Optional<Finding.State> state = said.takeMeaning(Vocabulary.FINDINGS);
      boolean again =
          state.isPresent() && said.peek().filter(next -> next.lower().equals(AGAIN)).isPresent();
      if (again) {
        said.next();
      }
      if (state.isEmpty() || said.hasNext()) {
        problems.unknown(word.word(), "What was found", WORDS);
      }
      return place.flatMap(name -> state.map(seen -> new Said(new Finding(name, seen), again)));
    }
    problems.error(
        entry.value().place(),
        "What was found must be a word, not " + entry.value().what() + ".",
        "write fine, burnt, remade or out of reach.");
    return Optional.empty();
  }
}
