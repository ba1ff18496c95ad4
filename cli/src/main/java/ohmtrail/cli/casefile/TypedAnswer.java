package ohmtrail.cli.casefile;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import ohmtrail.cli.casefile.text.Node.Scalar;
import ohmtrail.cli.casefile.text.Place;
import ohmtrail.cli.casefile.text.Word;
import ohmtrail.cli.casefile.text.Words;
import ohmtrail.cli.casefile.words.Conductors;
import ohmtrail.cli.casefile.words.Quantities;
import ohmtrail.cli.casefile.words.Unit;
import ohmtrail.cli.casefile.words.Vocabulary;
import ohmtrail.cli.names.Names;
import ohmtrail.survey.Finding;
import ohmtrail.survey.ProbePoints;

/** What people type in answer to a question, read by the words of a case file. */
public final class TypedAnswer {
  private static final Names YES_OR_NO =
      new Names(
          List.of("yes", "no"),
          Map.of(
              "y", "yes", "yeah", "yes", "yep", "yes", "sure", "yes", "n", "no", "nope", "no",
              "none", "no"));

  /** Words that begin what is known of a box, besides those that mean something by themselves. */
  private static final Set<String> LEADING =
      Set.of(Vocabulary.FROM, Vocabulary.WITH, Vocabulary.ON, "gfci", "rcd", "±", "+-");

  private TypedAnswer() {}

  /**
   * What was seen at a box.
   *
   * @param state what
   * @param box how the box was called; empty where none was
   */
  public record Seen(Finding.State state, Optional<String> box) {}

  /**
   * Something with a name, and what was said of it.
   *
   * @param name its name; blank where none was typed
   * @param words the rest
   */
  public record Named(String name, String words) {}

  /** Whether somebody says that nobody knows. */
  public static boolean isUnknown(String line) {
    return Vocabulary.isUnknown(scalar(line));
  }

  /** Two conductors, however they are called: {@code hot-neutral}, {@code H-N}. */
  public static Optional<ProbePoints> pair(String line) {
    Words words = words(line);
    return Conductors.takePair(words)
        .filter(roles -> !words.hasNext() && roles.get(0) != roles.get(1))
        .map(roles -> new ProbePoints(roles.get(0), roles.get(1)));
  }

  /** Yes or no; empty where it is neither. */
  public static Optional<Boolean> yes(String line) {
    return YES_OR_NO.find(line).map("yes"::equals);
  }

  /** What is said where neither yes nor no was typed. */
  public static String neither(String line) {
    return "Answer ("
        + line
        + ") must be yes or no.\nMaybe "
        + YES_OR_NO.meant(line, "type Enter alone, which is no")
        + ".";
  }

  /**
   * What was seen, with the box before it or behind it: {@code loose hall-2}, {@code 3 is fine}.
   */
  public static Optional<Seen> seen(String line) {
    Words words = words(line);
    Optional<Finding.State> first = words.takeMeaning(Vocabulary.FINDINGS);
    if (first.isPresent()) {
      return first.map(state -> new Seen(state, rest(words)));
    }
    List<String> before = new ArrayList<>();
    while (words.hasNext()) {
      before.add(words.next().text());
      int here = words.position();
      Optional<Finding.State> last = words.takeMeaning(Vocabulary.FINDINGS);
      if (last.isPresent() && !words.hasNext()) {
        String box = String.join(" ", before).replaceAll("(?i)(:| is| looks| was)$", "");
        return last.map(state -> new Seen(state, Optional.of(box)));
      }
      words.back(here);
    }
    return Optional.empty();
  }

  private static Optional<String> rest(Words words) {
    List<String> rest = new ArrayList<>();
    while (words.hasNext()) {
      rest.add(words.next().text());
    }
    return rest.isEmpty() ? Optional.empty() : Optional.of(String.join(" ", rest));
  }

  /**
   * Parts a name of one word or several from what is said of it: {@code living room 12 ft}. A colon
   * says where the name ends.
   */
  public static Named named(String line) {
    int colon = line.indexOf(':');
    if (colon > 0) {
      return new Named(line.substring(0, colon).strip(), line.substring(colon + 1).strip());
    }
    Words words = words(line);
    StringBuilder name = new StringBuilder();
    while (words.hasNext() && !isSaid(words, name)) {
      name.append(name.isEmpty() ? "" : " ").append(words.next().text());
    }
    return new Named(name.toString(), rest(words).orElse(""));
  }

  /** Whether the next words say something rather than being a name's. */
  private static boolean isSaid(Words words, CharSequence name) {
    Word next = words.peek().orElseThrow();
    if (Quantities.isNumber(next)) {
      boolean numbered = next.text().matches("[0-9]") && name.chars().noneMatch(Character::isDigit);
      return isQuantity(words, next) || !(name.isEmpty() || numbered);
    }
    boolean leads = LEADING.contains(next.lower()) || next.text().startsWith("~");
    return !name.isEmpty() && (leads || isMeaning(words));
  }

  private static boolean isQuantity(Words words, Word number) {
    int end = Quantities.endOfNumber(number.text());
    Optional<String> unit =
        end < number.text().length()
            ? Optional.of(number.text().substring(end))
            : words.peek(1).map(Word::text);
    return unit.filter(text -> isUnit(text) || text.startsWith("/")).isPresent();
  }

  private static boolean isUnit(String text) {
    return Unit.parse(text).isPresent()
        || Unit.nearest(text).isPresent()
        || text.toLowerCase(Locale.ROOT).startsWith("awg")
        || text.startsWith("'");
  }

  /** Of two kinds of boxes the first is a part of the name: hall light switch. */
  private static boolean isMeaning(Words words) {
    int here = words.position();
    boolean kind = words.takeMeaning(Vocabulary.KINDS).isPresent();
    boolean twoKinds = kind && words.takeMeaning(Vocabulary.KINDS).isPresent();
    words.back(here);
    if (twoKinds) {
      return false;
    }
    boolean meaning =
        Stream.<Map<String, ?>>of(
                Vocabulary.KINDS,
                Vocabulary.WIRINGS,
                Vocabulary.JOINTS,
                Vocabulary.MATERIALS,
                Vocabulary.UNKNOWNS,
                Vocabulary.ABOUT)
            .anyMatch(meanings -> words.takeMeaning(meanings).isPresent());
    words.back(here);
    return meaning;
  }

  /** Whether words say what a box is. */
  public static boolean saysKind(String line) {
    Words words = words(line);
    while (words.hasNext()) {
      if (words.takeMeaning(Vocabulary.KINDS).isPresent()) {
        return true;
      }
      words.next();
    }
    return false;
  }

  private static Words words(String line) {
    return new Words(scalar(line));
  }

  private static Scalar scalar(String line) {
    return new Scalar(line.strip(), Place.startOf("answer"), true, line.isBlank());
  }
}
