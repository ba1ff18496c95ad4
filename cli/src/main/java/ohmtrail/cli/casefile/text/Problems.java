package ohmtrail.cli.casefile.text;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import ohmtrail.cli.casefile.text.Node.Scalar;
import ohmtrail.cli.names.Names;
import ohmtrail.cli.names.Shown;

/** Gathers what is wrong with a case, so that all of it can be told at once. */
public final class Problems {

  /** More than anybody corrects in one go; also keeps a hostile file from filling the memory. */
  private static final int MOST_PROBLEMS = 100;

  /** A longer message is cut: it quotes a value that is no slip of a key. */
  private static final int MOST_CHARACTERS = 500;

  private static final String MAYBE = "\nMaybe ";

  /** Files in the order in which they turned up, the case file first. */
  private final Map<String, Integer> files = new LinkedHashMap<>();

  private final List<Path> opened = new ArrayList<>();
  private final Set<Note> errors = new LinkedHashSet<>();
  private final Set<Note> warnings = new LinkedHashSet<>();
  private int noted;

  /**
   * What is wrong or odd, and where.
   *
   * @param place where it is
   * @param message what is wrong and what was expected, on a second line what was perhaps meant
   */
  public record Note(Place place, String message) {}

  /** Unwinds the reading where there is no use in going on. The problem has been noted. */
  public static final class Stop extends RuntimeException {
    private static final long serialVersionUID = 1;
  }

  /**
   * @param caseFile the file whose problems come first
   */
  public Problems(String caseFile) {
    files.put(caseFile, 0);
  }

  /** Notes what is wrong, where nobody can tell what was meant. */
  public void error(Place place, String rule) {
    addError(place, oneLine(rule));
  }

  /** Notes what is wrong, and what was perhaps meant: the end of a sentence after "Maybe". */
  public void error(Place place, String rule, String maybe) {
    addError(place, oneLine(rule) + MAYBE + oneLine(maybe));
  }

  /** Notes what the solver's own rules say is wrong. */
  public void error(Place place, RuntimeException broken) {
    String message = String.valueOf(broken.getMessage());
    int maybe = message.indexOf(MAYBE);
    if (maybe < 0) {
      error(place, sentence(message));
    } else {
      error(
          place, sentence(message.substring(0, maybe)), message.substring(maybe + MAYBE.length()));
    }
  }

  private static String sentence(String text) {
    return text.endsWith(".") ? text : text + ".";
  }

  /** Notes a name that names nothing, with the nearest one that does. */
  public void unknown(Word name, String what, Names known) {
    String rule =
        what + " (" + name.text() + ") " + (known.isEmpty() ? "is not known" : known.rule()) + ".";
    known
        .nearest(name.text())
        .ifPresentOrElse(
            nearest -> error(name.place(), rule, nearest + " was meant."),
            () -> error(name.place(), rule));
  }

  /** Notes what is odd but can be worked with. */
  public void warn(Place place, String rule, String maybe) {
    if (warnings.size() < MOST_PROBLEMS) {
      warnings.add(note(place, oneLine(rule) + MAYBE + oneLine(maybe)));
    }
  }

  /** Notes what is wrong and stops reading. */
  public Stop fatal(Place place, String rule, String maybe) {
    error(place, rule, maybe);
    return new Stop();
  }

  private void addError(Place place, String message) {
    noted++;
    errors.add(note(place, message));
    if (errors.size() >= MOST_PROBLEMS) {
      throw new Stop();
    }
  }

  private Note note(Place place, String message) {
    files.putIfAbsent(place.file(), files.size());
    return new Note(place, message);
  }

  /** Keeps a message from being torn, or a terminal from being steered, by what it quotes. */
  private static String oneLine(String text) {
    String safe = Shown.of(text.replaceAll("[\\n\\r\\t]+", " "));
    return safe.length() <= MOST_CHARACTERS
        ? safe
        : safe.substring(0, safe.offsetByCodePoints(0, MOST_CHARACTERS / 2)) + " ...";
  }

  /** Notes a name that holds characters which nobody sees or which steer a terminal. */
  public void requireVisible(Scalar name) {
    int hidden = Shown.firstSteering(name.text());
    if (hidden >= 0) {
      error(
          name.at(hidden),
          "Name (" + name.text() + ") must hold characters that can be seen and no others.",
          "it was copied from elsewhere: type it anew.");
    }
  }

  /** Notes that a file is read. */
  void open(Path file) {
    opened.add(file);
  }

  /** The files read so far. */
  public List<Path> opened() {
    return List.copyOf(opened);
  }

  /** How often an error was noted so far, the same one again included. */
  public int count() {
    return noted;
  }

  /** The errors, those of the case file first, each file's in the order of its lines. */
  public List<Note> errors() {
    return sorted(errors);
  }

  /** The warnings, in the same order. */
  public List<Note> warnings() {
    return sorted(warnings);
  }

  private List<Note> sorted(Set<Note> notes) {
    List<Note> sorted = new ArrayList<>(notes);
    sorted.sort(
        Comparator.comparing((Note note) -> files.getOrDefault(note.place().file(), 0))
            .thenComparing(note -> note.place().line())
            .thenComparing(note -> note.place().column()));
    return sorted;
  }
}
