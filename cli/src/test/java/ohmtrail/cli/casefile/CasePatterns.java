package ohmtrail.cli.casefile;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import ohmtrail.circuit.ConductorRole;
import ohmtrail.cli.casefile.words.Unit;
import ohmtrail.cli.casefile.words.Unit.Dimension;
import ohmtrail.cli.casefile.words.Vocabulary;
import ohmtrail.reference.ConductorSize;

/**
 * The patterns of the case-file schema that are made of words: taken from the reader's own
 * vocabulary, so that an editor knows a word as soon as the reader does. Regular expressions of
 * ECMA 262, which have no flag for capitals: each letter is spelt in both.
 */
final class CasePatterns {
  private static final String GAP = "[ ,\\t]*";
  private static final String WITHIN = "[^ ,\\t]";
  private static final String NUMBER = "[+-]?([0-9]+[.,]?[0-9]*|[.,][0-9]+)";

  /** A leg has its number behind a hyphen, a space or nothing. */
  private static final String ROLE =
      "("
          + any(List.of("leg", "line"))
          + "[ -]?[12]|"
          + any(
              Stream.of(ConductorRole.values())
                  .flatMap(role -> role.spellings().stream())
                  .filter(spelling -> !spelling.startsWith("leg"))
                  .toList())
          + ")";

  /** One word, or two as in {@code hot to neutral}. */
  private static final String PAIR =
      ROLE + "( ?[-/\u2013+] ?" + ROLE + "|( " + word("to") + ")? " + ROLE + ")";

  private static final String ROLES = ROLE + "([-/\u2013+]" + ROLE + ")+";

  private static final String LENGTH =
      NUMBER + " ?" + unit(Dimension.LENGTH) + "( ?-?" + NUMBER + " ?" + units(Unit.INCH) + ")?";

  private static final String ABOUT = "(" + any(Vocabulary.ABOUT.keySet()) + " ?)?";

  private static final String NOBODY_KNOWS =
      any(Vocabulary.UNKNOWNS.keySet())
          + "( "
          + word("length")
          + "| ?"
          + unit(Dimension.LENGTH)
          + ")?";

  private static final String SIZE =
      "("
          + String.join(
              "|",
              "#[0-9]+(/0)?",
              word("awg") + " ?[0-9]+(/0)?",
              "[0-9]+/0( ?" + word("awg") + ")?",
              "[0-9]+ ?" + word("awg"),
              "[0-9]{1,2}[-/][2-5]( ?" + word("w") + "/?" + word("g") + ")?( " + word("awg") + ")?",
              "[0-9.,]+(/[0-9.,]+)? ?" + any(ConductorSize.SQUARE_MILLIMETRES))
          + ")";

  private static final String CABLE =
      "("
          + String.join(
              "|",
              SIZE,
              any(Vocabulary.MATERIALS.keySet()),
              any(Vocabulary.CONDUITS.keySet()),
              any(Vocabulary.UNKNOWNS.keySet()))
          + ")";

  /** One box, or several with a word between; the name of a box may have several words. */
  private static final String NAMES =
      "( +[^ ]+){1,4}( " + any(List.of(Vocabulary.OR, Vocabulary.AND)) + "( +[^ ]+){1,4})*";

  private static final String ENTRY =
      "("
          + String.join(
              "|",
              any(Vocabulary.KINDS.keySet()),
              any(Vocabulary.WIRINGS.keySet()),
              any(Vocabulary.JOINTS.keySet()),
              CABLE,
              NOBODY_KNOWS,
              ABOUT + LENGTH,
              "(\u00b1|\\+-|\\+/-) ?" + NUMBER + " ?%",
              NUMBER + " ?" + unit(Dimension.TIME),
              word(Vocabulary.ON) + " " + ROLE + "([-/\u2013+]" + ROLE + ")*",
              ROLES,
              word(Vocabulary.WITH)
                  + " "
                  + any(Vocabulary.COMPANIONS.keySet())
                  + " "
                  + word(Vocabulary.COMPANION),
              word("gfci"),
              word("rcd") + "( " + NUMBER + " ?" + unit(Dimension.CURRENT) + ")?",
              word(Vocabulary.FROM) + NAMES,
              word(Vocabulary.FIRST),
              word(Vocabulary.LAST),
              word(Vocabulary.AFTER) + NAMES,
              any(Vocabulary.NEXT_TO.keySet()) + NAMES,
              any(Vocabulary.NOT_NEXT_TO.keySet()) + NAMES,
              any(
                  Stream.of(Vocabulary.ELSEWHERE, Vocabulary.WENT_DARK, Vocabulary.STAYED_LIVE)
                      .flatMap(meanings -> meanings.keySet().stream())
                      .toList()),
              word(Vocabulary.PLAN)
                  + " "
                  + NUMBER
                  + "( ?"
                  + unit(Dimension.LENGTH)
                  + ")?,? "
                  + LENGTH,
              word(Vocabulary.STRAIGHT) + " " + LENGTH + " " + word(Vocabulary.TO) + NAMES)
          + ")";

  private static final String PLACE =
      String.join(
          "|",
          "(^|[ ,])" + PAIR + "($|[ ,])",
          word("across") + " ",
          word("around") + " ",
          " " + word("to") + " ",
          "(^|[ ,])" + word("dead") + "($|[ ,])");

  private CasePatterns() {}

  /** Every pattern with the place in the schema where it stands. */
  static Map<String, String> all() {
    Map<String, String> patterns = new LinkedHashMap<>();
    patterns.put("/$defs/cable", listed(CABLE));
    patterns.put("/$defs/entry/anyOf/0", listed(ENTRY));
    patterns.put("/properties/conductors", "^ *" + ROLES + " *$");
    patterns.put("/$defs/entry/anyOf/2/properties/conductors", "^ *" + ROLES + " *$");
    patterns.put(
        "/$defs/entry/anyOf/2/properties/device", "^ *" + ROLE + "([-/\u2013+]" + ROLE + ")* *$");
    patterns.put(
        "/$defs/reading/anyOf/0",
        "^(?=.*([0-9]|"
            + any(Vocabulary.OVER_RANGE.keySet())
            + "|"
            + word("dead")
            + "))(?=.*("
            + PLACE
            + ")).*$");
    patterns.put(
        "/$defs/reading/anyOf/2/properties/between",
        "^ *("
            + PAIR
            + "|"
            + word("across")
            + " .+|"
            + word("around")
            + " .+|.+ "
            + word("to")
            + " .+) *$");
    return patterns;
  }

  /** Puts the patterns into a schema. */
  static void putInto(JsonNode schema) {
    all().forEach((place, pattern) -> ((ObjectNode) schema.at(place)).put("pattern", pattern));
  }

  private static String listed(String item) {
    return "^(" + GAP + item + "(?!" + WITHIN + "))+" + GAP + "$";
  }

  private static String unit(Dimension dimension) {
    return units(
        Stream.of(Unit.values())
            .filter(unit -> unit.dimension() == dimension)
            .toArray(Unit[]::new));
  }

  private static String units(Unit... units) {
    return any(Stream.of(units).flatMap(unit -> unit.spellings().stream()).toList());
  }

  /** Any of some words; the longest first, so that none hides behind its own beginning. */
  private static String any(Collection<String> words) {
    return words.stream()
        .distinct()
        .sorted((one, other) -> Integer.compare(other.length(), one.length()))
        .map(CasePatterns::word)
        .collect(Collectors.joining("|", "(", ")"));
  }

  /** A word in capitals or not, a space for a hyphen. */
  private static String word(String word) {
    return word.codePoints().mapToObj(CasePatterns::letter).collect(Collectors.joining());
  }

  private static String letter(int c) {
    String text = Character.toString(c);
    if (c == '-' || c == ' ') {
      return "[ -]";
    }
    String lower = text.toLowerCase(java.util.Locale.ROOT);
    String upper = text.toUpperCase(java.util.Locale.ROOT);
    if (!lower.equals(upper) && c < 0x80) {
      return "[" + lower + upper + "]";
    }
    return List.of(".", "?", "^", "*", "+", "(", ")", "|", "/").contains(text) && c != '/'
        ? "\\" + text
        : text;
  }
}
