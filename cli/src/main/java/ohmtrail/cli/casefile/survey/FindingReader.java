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

  /** Reads a list of them; of several at one place the last one holds. */
  List<Finding> read(Items items) {
    Map<String, Finding> found = new LinkedHashMap<>();
    for (Node node : items.nodes()) {
      if (node instanceof Mapping mapping) {
        for (Entry entry : mapping.entries()) {
          read(entry).ifPresent(finding -> put(finding, found));
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

  private static void put(Finding finding, Map<String, Finding> found) {
    found.remove(finding.place());
    found.put(finding.place(), finding);
  }

  private Optional<Finding> read(Entry entry) {
    Optional<String> place = places.find(entry.key().text());
    if (place.isEmpty()) {
      problems.unknown(entry.key().word(), "Box", places);
    }
    if (entry.value() instanceof Scalar word) {
      Words said = new Words(word);
      Optional<Finding.State> state = said.takeMeaning(Vocabulary.FINDINGS);
      if (state.isEmpty() || said.hasNext()) {
        problems.unknown(word.word(), "What was found", WORDS);
      }
      return place.flatMap(name -> state.map(seen -> new Finding(name, seen)));
    }
    problems.error(
        entry.value().place(),
        "What was found must be a word, not " + entry.value().what() + ".",
        "write fine, burnt, remade or out of reach.");
    return Optional.empty();
  }
}
