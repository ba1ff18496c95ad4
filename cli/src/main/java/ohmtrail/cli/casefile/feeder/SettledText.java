package ohmtrail.cli.casefile.feeder;

import java.util.ArrayList;
import java.util.Comparator;
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
import ohmtrail.cli.casefile.text.YamlText;
import ohmtrail.cli.casefile.text.YamlTree;
import ohmtrail.cli.casefile.words.Vocabulary;
import ohmtrail.cli.names.Names;
import ohmtrail.map.known.RunMap;

/**
 * Puts feeders that are settled into the text of a case: word by word where the entries of the
 * boxes stand; everything else, comments too, stays as it is.
 */
public final class SettledText {
  private static final String FROM = "from: ";

  private final List<String> lines;
  private final Names boxes;
  private final List<Edit> edits = new ArrayList<>();

  /**
   * Characters of a line with what takes their place.
   *
   * @param line counted from 1
   * @param begin first character, counted from 0
   * @param end the one behind the last
   */
  private record Edit(int line, int begin, int end, String text) {}

  private SettledText(String text, Names boxes) {
    this.lines = new ArrayList<>(List.of(text.split("\n", -1)));
    this.boxes = boxes;
  }

  /**
   * The text with feeders put in.
   *
   * @param name the file that it was read from
   * @param text what it holds, a case that can be read
   * @param boxes the names of its boxes
   * @param feeders what feeds each box that is settled; perhaps {@link RunMap#ANOTHER_CIRCUIT}
   * @param complete whether no box is left open, so that none hides
   */
  public static String of(
      String name, String text, Names boxes, Map<String, String> feeders, boolean complete) {
    SettledText settled = new SettledText(text, boxes);
    Node root = YamlTree.of(name, text, new Problems(name));
    if (root instanceof Mapping keys) {
      for (Entry key : keys.entries()) {
        settled.visit(key, feeders, complete);
      }
    }
    return settled.edited();
  }

  private void visit(Entry key, Map<String, String> feeders, boolean complete) {
    boolean listed = List.of("run", "boxes").contains(key.key().text());
    if (listed && key.value() instanceof Items items) {
      items.nodes().forEach(node -> visit(node, feeders));
    } else if (complete
        && key.key().text().equals("hidden")
        && key.value() instanceof Scalar count) {
      replace(count, "0");
    }
  }

  private void visit(Node node, Map<String, String> feeders) {
    if (node instanceof Scalar name) {
      feeder(name, feeders).ifPresent(words -> insertBehind(name, ": " + YamlText.of(words)));
    } else if (node instanceof Mapping mapping && mapping.entries().size() == 1) {
      Entry entry = mapping.entries().get(0);
      Optional<String> words = feeder(entry.key(), feeders);
      if (words.isPresent()) {
        settle(entry, words.get());
      }
    }
  }

  /** What is to be said of what feeds a box. */
  private Optional<String> feeder(Scalar name, Map<String, String> feeders) {
    return boxes
        .find(name.text())
        .flatMap(box -> Optional.ofNullable(feeders.get(box)))
        .map(
            feeder ->
                feeder.equals(RunMap.ANOTHER_CIRCUIT)
                    ? "another circuit"
                    : Vocabulary.FROM + " " + feeder);
  }

  private void settle(Entry entry, String words) {
    if (entry.value() instanceof Mapping keys) {
      settleKeys(keys, words);
    } else if (entry.value() instanceof Scalar said && said.blank()) {
      insertBehindColon(entry.key(), " " + YamlText.of(words));
    } else if (entry.value() instanceof Scalar said) {
      String kept = without(said);
      replace(said, kept.isEmpty() ? words : kept + " " + words);
    }
  }

  private void settleKeys(Mapping keys, String words) {
    boolean foreign = !words.startsWith(Vocabulary.FROM + " ");
    String value = foreign ? words : words.substring(Vocabulary.FROM.length() + 1);
    Optional<Entry> order = entry(keys, "order");
    order.ifPresent(
        given -> {
          if (given.value() instanceof Scalar said) {
            String kept = without(said);
            replace(said, (foreign ? kept + " " + words : kept).strip());
          }
        });
    Optional<Entry> from = entry(keys, "from");
    if (!foreign && from.isPresent() && from.get().value() instanceof Scalar said) {
      replace(said, value);
    } else if (!foreign || order.isEmpty()) {
      Scalar first = keys.entries().get(0).key();
      int begin = first.place().column() - 1;
      String line = lines.get(first.place().line() - 1);
      boolean flow = !line.substring(0, begin).isBlank();
      edits.add(
          new Edit(
              first.place().line(),
              begin,
              begin,
              (foreign ? "order: " + words : FROM + YamlText.of(value))
                  + (flow ? ", " : "\n" + line.substring(0, begin))));
    }
  }

  private static Optional<Entry> entry(Mapping keys, String name) {
    return keys.entries().stream().filter(entry -> entry.key().text().equals(name)).findFirst();
  }

  /** The words of an entry but for what they say of a feeder and of another circuit. */
  private String without(Scalar said) {
    Words words = new Words(said);
    FeederWords feeders = new FeederWords(boxes, new Problems(""));
    List<String> kept = new ArrayList<>();
    while (words.hasNext()) {
      int here = words.position();
      FeederWords.Draft draft = new FeederWords.Draft(new Problems(""));
      boolean taken = feeders.take(words, draft);
      if (!taken) {
        kept.add(words.next().text());
      } else if (!draft.from.isGiven() && !draft.mayBeForeign()) {
        int end = words.position();
        words.back(here);
        while (words.position() < end) {
          kept.add(words.next().text());
        }
      }
    }
    return String.join(" ", kept);
  }

  /** Puts words in the place of those that stand there; within quotes where these do. */
  private void replace(Scalar said, String words) {
    int begin = said.place().column() - 1;
    int end = begin + said.text().length();
    edits.add(new Edit(said.place().line(), begin, end, words));
  }

  private void insertBehind(Scalar name, String words) {
    int end = end(name);
    edits.add(new Edit(name.place().line(), end, end, words));
  }

  private void insertBehindColon(Scalar key, String words) {
    int colon = lines.get(key.place().line() - 1).indexOf(':', end(key)) + 1;
    edits.add(new Edit(key.place().line(), colon, colon, words));
  }

  /** Behind the last character of a text, its closing quote included. */
  private int end(Scalar said) {
    String line = lines.get(said.place().line() - 1);
    int end = Math.min(line.length(), said.place().column() - 1 + said.text().length());
    boolean quoted = end < line.length() && (line.charAt(end) == '"' || line.charAt(end) == '\'');
    return quoted ? end + 1 : end;
  }

  private String edited() {
    Stream<Edit> fromTheEnd =
        edits.stream()
            .sorted(Comparator.comparingInt(Edit::line).thenComparingInt(Edit::begin).reversed());
    fromTheEnd.forEach(
        edit -> {
          String line = lines.get(edit.line() - 1);
          lines.set(
              edit.line() - 1,
              line.substring(0, edit.begin()) + edit.text() + line.substring(edit.end()));
        });
    return String.join("\n", lines);
  }
}
