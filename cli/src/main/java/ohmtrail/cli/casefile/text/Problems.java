package ohmtrail.cli.casefile;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** Gathers what is wrong with a case, so that all of it can be told at once. */
final class Problems {

  /** More than anybody corrects in one go; also keeps a hostile file from filling the memory. */
  private static final int MOST_PROBLEMS = 100;

  /** A longer message is cut: it quotes a value that is no slip of a key. */
  private static final int MOST_CHARACTERS = 500;

  /** Control and format characters, ends of line and of paragraph: shown, and made harmless. */
  private static final String INVISIBLE = "[\\p{Cc}\\p{Cf}\\p{Zl}\\p{Zp}]";

  private static final String MAYBE = "\nMaybe ";

  /** Files in the order in which they turned up, the case file first. */
  private final Map<String, Integer> files = new LinkedHashMap<>();

  private final Set<Problem> errors = new LinkedHashSet<>();
  private final Set<Problem> warnings = new LinkedHashSet<>();
  private int noted;

  /** Unwinds the reading where there is no use in going on. The problem has been noted. */
  static final class Stop extends RuntimeException {
    private static final long serialVersionUID = 1;
  }

  Problems(String caseFile) {
    files.put(caseFile, 0);
  }

  /** Notes what is wrong, where nobody can tell what was meant. */
  void error(Place place, String rule) {
    addError(place, oneLine(rule));
  }

  /** Notes what is wrong, and what was perhaps meant: the end of a sentence after "Maybe". */
  void error(Place place, String rule, String maybe) {
    addError(place, oneLine(rule) + MAYBE + oneLine(maybe));
  }

  /** Notes what the solver's own rules say is wrong. */
  void error(Place place, RuntimeException broken) {
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
  void unknown(Word name, String what, Names known) {
    String rule =
        what + " (" + name.text() + ") " + (known.isEmpty() ? "is not known" : known.rule()) + ".";
    known
        .nearest(name.text())
        .ifPresentOrElse(
            nearest -> error(name.place(), rule, nearest + " was meant."),
            () -> error(name.place(), rule));
  }

  /** Notes what is odd but can be worked with. */
  void warn(Place place, String rule, String maybe) {
    if (warnings.size() < MOST_PROBLEMS) {
      warnings.add(problem(place, oneLine(rule) + MAYBE + oneLine(maybe)));
    }
  }

  /** Notes what is wrong and stops reading. */
  Stop fatal(Place place, String rule, String maybe) {
    error(place, rule, maybe);
    return new Stop();
  }

  private void addError(Place place, String message) {
    noted++;
    errors.add(problem(place, message));
    if (errors.size() >= MOST_PROBLEMS) {
      throw new Stop();
    }
  }

  private Problem problem(Place place, String message) {
    files.putIfAbsent(place.file(), files.size());
    return new Problem(place.file(), place.line(), place.column(), message);
  }

  /** Keeps a message from being torn, or a terminal from being steered, by what it quotes. */
  private static String oneLine(String text) {
    String safe = text.replaceAll("[\\n\\r\\t]+", " ").replaceAll(INVISIBLE, "\uFFFD");
    return safe.length() <= MOST_CHARACTERS
        ? safe
        : safe.substring(0, safe.offsetByCodePoints(0, MOST_CHARACTERS / 2)) + " ...";
  }

  /** How often an error was noted so far, the same one again included. */
  int count() {
    return noted;
  }

  /** The warnings, in the order of the file. */
  List<Problem> warnings() {
    return sorted(warnings);
  }

  /** Throws if anything is wrong. */
  void throwIfAny() throws CaseFileException {
    if (!errors.isEmpty()) {
      throw new CaseFileException(sorted(errors));
    }
  }

  private List<Problem> sorted(Set<Problem> problems) {
    List<Problem> sorted = new ArrayList<>(problems);
    sorted.sort(
        Comparator.comparing((Problem problem) -> files.getOrDefault(problem.file(), 0))
            .thenComparing(Problem::line)
            .thenComparing(Problem::column));
    return sorted;
  }
}
