package ohmtrail.cli.names;

import java.util.ArrayList;
import java.util.Collection;
import java.util.Collections;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/**
 * The names that a word may be: boxes, meters, keys. Found exactly as written, else without regard
 * to case where that leaves one: a spreadsheet puts capitals where it likes.
 */
public final class Names {

  /** A list of more names than this helps nobody. */
  private static final int MOST_LISTED = 12;

  /** No name is compared beyond this length: the time goes with the product of the lengths. */
  private static final int MOST_COMPARED = 64;

  /** Nor are more names than a building circuit has. */
  private static final int MOST_OFFERED = 1000;

  /** A name of more words is not looked for among other words. */
  private static final int MOST_WORDS = 12;

  /** One slip in three characters, and always at least one. */
  private static final int CHARACTERS_PER_SLIP = 3;

  private final Set<String> all;
  private final Map<String, String> spaced = new HashMap<>();
  private final Map<String, List<String>> folded = new HashMap<>();
  private final Map<String, String> otherwise;
  private int mostWords = 1;

  /**
   * @param names the names, in the order to offer them
   */
  public Names(Collection<String> names) {
    this(names, Map.of());
  }

  /**
   * @param names the names, in the order to offer them
   * @param otherwise what else is said for some of them, in lower case: taken where no name is
   *     that, and never offered
   */
  public Names(Collection<String> names, Map<String, String> otherwise) {
    all = Collections.unmodifiableSet(new LinkedHashSet<>(names));
    this.otherwise = Map.copyOf(otherwise);
    for (String name : all) {
      spaced.putIfAbsent(spaced(name), name);
      folded.computeIfAbsent(fold(name), key -> new ArrayList<>()).add(name);
      mostWords = Math.max(mostWords, Math.min(MOST_WORDS, spaced(name).split(" ", -1).length));
    }
  }

  private static String spaced(String name) {
    return name.strip().replaceAll("\\s+", " ");
  }

  private static String fold(String name) {
    return spaced(name).toLowerCase(Locale.ROOT);
  }

  /** Whether there is none. */
  public boolean isEmpty() {
    return all.isEmpty();
  }

  /** The names, in their order. */
  public Collection<String> all() {
    return all;
  }

  /** Words of the name that has most of them, as far as names are looked for among words. */
  public int mostWords() {
    return mostWords;
  }

  /** The name that a text is. */
  public Optional<String> find(String text) {
    if (all.contains(text)) {
      return Optional.of(text);
    }
    String same = spaced.get(spaced(text));
    if (same != null) {
      return Optional.of(same);
    }
    List<String> alike = folded.getOrDefault(fold(text), List.of());
    return alike.size() == 1
        ? Optional.of(alike.get(0))
        : alike.isEmpty() ? Optional.ofNullable(otherwise.get(fold(text))) : Optional.empty();
  }

  /**
   * A name and what stands behind it.
   *
   * @param name the name
   * @param rest what stands behind it; perhaps nothing
   */
  public record Leading(String name, String rest) {}

  /** The longest name, of one word or several, that a text begins with. */
  public Optional<Leading> leading(String text) {
    List<String> words = List.of(spaced(text).split(" ", -1));
    return IntStream.rangeClosed(1, words.size())
        .map(count -> words.size() + 1 - count)
        .boxed()
        .flatMap(
            count ->
                find(String.join(" ", words.subList(0, count))).stream()
                    .map(
                        name ->
                            new Leading(
                                name, String.join(" ", words.subList(count, words.size())))))
        .findFirst();
  }

  /** The rest of a sentence that says what was expected. */
  public String rule() {
    List<String> listed = all.stream().limit(MOST_LISTED).toList();
    int further = all.size() - listed.size();
    String more = further > 0 ? " and " + further + " more" : "";
    return (all.size() == 1 ? "must be " : "must be one of ") + String.join(", ", listed) + more;
  }

  /** The name that a text was most likely meant to be, if any is near. */
  public Optional<String> nearest(String text) {
    int most = Math.max(1, fold(text).length() / CHARACTERS_PER_SLIP);
    return nearestFirst(text).filter(name -> distance(fold(text), fold(name)) <= most).findFirst();
  }

  /** All names, those with the fewest slips between them and a text first. */
  public Stream<String> nearestFirst(String text) {
    String wanted = fold(text);
    return all.stream()
        .limit(MOST_OFFERED)
        .sorted(
            Comparator.comparingInt((String name) -> distance(wanted, fold(name)))
                .thenComparingInt(name -> distance(text, name)));
  }

  /** That the nearest name was meant, in words; what else to say where none is near. */
  public String meant(String text, String otherwise) {
    return nearest(text).map(name -> name + " was meant").orElse(otherwise);
  }

  /**
   * Characters to insert, delete, replace or swap with their neighbour to turn one text into the
   * other.
   */
  static int distance(String one, String other) {
    if (one.length() > MOST_COMPARED || other.length() > MOST_COMPARED) {
      return one.equals(other) ? 0 : Integer.MAX_VALUE;
    }
    int[][] edits = new int[one.length() + 1][other.length() + 1];
    for (int i = 0; i <= one.length(); i++) {
      for (int j = 0; j <= other.length(); j++) {
        edits[i][j] = i == 0 || j == 0 ? i + j : fewest(edits, one, other, i, j);
      }
    }
    return edits[one.length()][other.length()];
  }

  private static int fewest(int[][] edits, String one, String other, int i, int j) {
    int replaced = edits[i - 1][j - 1] + (one.charAt(i - 1) == other.charAt(j - 1) ? 0 : 1);
    int fewest = Math.min(replaced, 1 + Math.min(edits[i - 1][j], edits[i][j - 1]));
    boolean swapped =
        i > 1
            && j > 1
            && one.charAt(i - 1) == other.charAt(j - 2)
            && one.charAt(i - 2) == other.charAt(j - 1);
    return swapped ? Math.min(fewest, edits[i - 2][j - 2] + 1) : fewest;
  }
}
