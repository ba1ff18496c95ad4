package ohmtrail.cli.casefile.text;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.Iterator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import ohmtrail.cli.casefile.text.Node.Entry;
import ohmtrail.cli.casefile.text.Node.Items;
import ohmtrail.cli.casefile.text.Node.Mapping;
import ohmtrail.cli.casefile.text.Node.Scalar;
import org.snakeyaml.engine.v2.api.LoadSettings;
import org.snakeyaml.engine.v2.api.lowlevel.Parse;
import org.snakeyaml.engine.v2.common.Anchor;
import org.snakeyaml.engine.v2.events.AliasEvent;
import org.snakeyaml.engine.v2.events.Event;
import org.snakeyaml.engine.v2.events.NodeEvent;
import org.snakeyaml.engine.v2.events.ScalarEvent;
import org.snakeyaml.engine.v2.events.SequenceStartEvent;
import org.snakeyaml.engine.v2.exceptions.Mark;
import org.snakeyaml.engine.v2.exceptions.MarkedYamlEngineException;

/**
 * Builds the tree of a YAML document from the parser's events.
 *
 * <p>From events and not from the library's own tree, because that one is built by recursion
 * without a limit: a file of nothing but brackets would exhaust the stack.
 */
public final class YamlTree {

  /** A case needs seven levels. */
  private static final int MOST_LEVELS = 20;

  /** What aliases may repeat, all together, counted in nodes. */
  private static final int MOST_REPEATED_NODES = 10_000;

  /** What YAML 1.2's core schema takes for nothing. */
  private static final Set<String> NULLS = Set.of("", "~", "null", "Null", "NULL");

  private final String file;
  private final Problems problems;
  private final Iterator<Event> events;
  private final Map<Anchor, Anchored> anchors = new HashMap<>();
  private Place latest;
  private int nodes;
  private int repeatedNodes;

  private record Anchored(Node node, int nodes) {}

  private YamlTree(String file, String text, Problems problems) {
    this.file = file;
    this.problems = problems;
    this.latest = Place.startOf(file);
    LoadSettings settings =
        LoadSettings.builder().setLabel(file).setCodePointLimit(Integer.MAX_VALUE).build();
    this.events = new Parse(settings).parseString(text).iterator();
  }

  /** The tree of a text that holds one document. */
  public static Node of(String file, String text, Problems problems) {
    return new YamlTree(file, text, problems).document();
  }

  private Node document() {
    Event event = next();
    while (!(event instanceof NodeEvent)) {
      if (event.getEventId() == Event.ID.StreamEnd) {
        throw problems.fatal(
            Place.startOf(file),
            "File holds comments only.",
            "this is not the file that was meant.");
      }
      event = next();
    }
    Node root = node(event, 0);
    for (Event after = next(); after.getEventId() != Event.ID.StreamEnd; after = next()) {
      if (after.getEventId() == Event.ID.DocumentStart) {
        throw problems.fatal(
            latest, "File must hold one case.", "the line (---) should go, or a file of its own.");
      }
    }
    return root;
  }

  private Node node(Event event, int level) {
    Place place = latest;
    if (level > MOST_LEVELS) {
      throw problems.fatal(
          place,
          "Nesting must be at most " + MOST_LEVELS + " levels deep.",
          "a bracket is not closed.");
    }
    int before = nodes++;
    if (event instanceof AliasEvent alias) {
      return aliased(alias, place);
    }
    Node node =
        event instanceof ScalarEvent scalar
            ? scalar(scalar, place)
            : event instanceof SequenceStartEvent ? items(place, level) : mapping(place, level);
    if (event instanceof NodeEvent named) {
      named.getAnchor().ifPresent(name -> anchors.put(name, new Anchored(node, nodes - before)));
    }
    return node;
  }

  private Node aliased(AliasEvent alias, Place place) {
    Anchored anchored = anchors.get(alias.getAlias());
    if (anchored == null) {
      throw problems.fatal(
          place,
          "Alias (*" + alias.getAlias() + ") must repeat an anchor that is complete above it.",
          "the text should stand in quotes.");
    }
    nodes += anchored.nodes();
    repeatedNodes += anchored.nodes();
    if (repeatedNodes > MOST_REPEATED_NODES) {
      throw problems.fatal(
          place,
          "Aliases must not repeat more than " + MOST_REPEATED_NODES + " texts and lists in all.",
          "they multiply one another; write out what is meant.");
    }
    return anchored.node();
  }

  private Scalar scalar(ScalarEvent event, Place place) {
    String text = event.getValue();
    Size.CHARACTERS.require(text.length(), place, problems);
    boolean blank = event.isPlain() && NULLS.contains(text);
    int quotes = event.isPlain() ? 0 : 1;
    boolean verbatim =
        quotes * 2 + text.codePointCount(0, text.length()) == width(event)
            && !event.isLiteral()
            && !event.isFolded();
    return new Scalar(blank ? "" : text, verbatim ? place.plus(quotes) : place, verbatim, blank);
  }

  /** Characters between the marks, or -1 when they stand on two lines. */
  private static int width(Event event) {
    Optional<Mark> start = event.getStartMark();
    Optional<Mark> end = event.getEndMark();
    if (start.isEmpty() || end.isEmpty() || start.get().getLine() != end.get().getLine()) {
      return -1;
    }
    return end.get().getColumn() - start.get().getColumn();
  }

  private Items items(Place place, int level) {
    List<Node> items = new ArrayList<>();
    for (Event event = next(); event.getEventId() != Event.ID.SequenceEnd; event = next()) {
      items.add(node(event, level + 1));
    }
    return new Items(items, place);
  }

  private Mapping mapping(Place place, int level) {
    Map<String, Entry> entries = new LinkedHashMap<>();
    for (Event event = next(); event.getEventId() != Event.ID.MappingEnd; event = next()) {
      Node key = node(event, level + 1);
      Node value = node(next(), level + 1);
      if (key instanceof Scalar name) {
        problems.requireVisible(name);
        addOnce(entries, new Entry(name, value));
      } else {
        problems.error(key.place(), "Key must be a text, not " + key.what() + ".");
      }
    }
    return new Mapping(List.copyOf(entries.values()), place);
  }

  private void addOnce(Map<String, Entry> entries, Entry entry) {
    Entry earlier = entries.putIfAbsent(entry.key().text(), entry);
    if (earlier != null) {
      problems.error(
          entry.key().place(),
          "Key ("
              + entry.key().text()
              + ") must be given once; it stands in line "
              + earlier.key().place().line()
              + " already.");
    }
  }

  /** The next event; notes where it stands. */
  private Event next() {
    try {
      Event event = events.next();
      event.getStartMark().ifPresent(mark -> latest = place(mark));
      return event;
    } catch (MarkedYamlEngineException broken) {
      Place place = markOf(broken).map(this::place).orElse(latest);
      throw problems.fatal(place, "This is not YAML: " + broken.getProblem() + ".", hint(broken));
    } catch (RuntimeException broken) {
      throw problems.fatal(
          latest, "This is not YAML: " + broken.getMessage(), "the file was damaged.");
    }
  }

  /** What is never closed is wrong where it opens, not where the file ends. */
  private static Optional<Mark> markOf(MarkedYamlEngineException broken) {
    boolean atEnd = String.valueOf(broken.getProblem()).contains("end of stream");
    return atEnd ? broken.getContextMark().or(broken::getProblemMark) : broken.getProblemMark();
  }

  private static String hint(MarkedYamlEngineException broken) {
    String problem = String.valueOf(broken.getProblem());
    if (problem.contains("\\t")) {
      return "a tab should be spaces.";
    }
    return problem.contains("mapping values")
        ? "a text with a colon in it should stand in quotes."
        : "a quote or bracket is not closed, or a line does not line up with those above it.";
  }

  private Place place(Mark mark) {
    return new Place(file, mark.getLine() + 1, mark.getColumn() + 1);
  }
}
