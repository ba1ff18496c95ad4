package ohmtrail.cli.walk;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;
import ohmtrail.cli.names.Names;

/** A word that can be typed in a search, with what help says of it. */
enum Verb {
  NUMBER(
      "",
      "a number: what the meter shows, as 118.6, 118,6 V or 350 mV; 88-117 where it flickers; OL"
          + " where an ohmmeter shows that the way is open"),
  FINE(
      "fine",
      "fine, burnt (or loose, broken): what an open box showed; fine hall-2, or fine 2, for another"
          + " box than the one asked for"),
  BURNT("burnt", ""),
  REMADE("remade", "remade: the bad joint was made anew"),
  UNREACHABLE(
      "cannot reach",
      "cannot reach: the box cannot be read at or opened as it is; reach BOX takes that back"),
  REACH("reach", ""),
  SKIP(
      "skip",
      "skip, or don't know: another step instead; open: look into the box that comes first"),
  OPEN("open", ""),
  AT("at", "at BOX: read there instead, nothing on; at BOX hot-ground: between other conductors"),
  NOTE(
      "note",
      "note TEST: READINGS: any other test, as a case file says it: note heater at hall-2: around"
          + " panel to hall-1 hot 9.8 A; note off + link hot-ground at panel: hall-2 hot-ground"
          + " 0.43 ohm"),
  KEEP("keep|yes|y", "keep: a reading that was doubted is as typed; no: it is not"),
  AGAIN("no|n", ""),
  UNDO("undo|back|u", "undo, or back: take the last answer back"),
  MAP(
      "map",
      "map, ranking, profile, why: the run with the numbers of its boxes, the boxes, the volts along"
          + " it, what must not be done"),
  RANKING("ranking", ""),
  PROFILE("profile", ""),
  WHY("why", ""),
  MORE("more", "more: the whole answer: readings beside the fit, suspects, assumptions, cautions"),
  HELP("help|h|?", ""),
  QUIT("quit|q|exit", "help: this list; quit: end; everything is saved all the time");

  private final String words;
  private final String help;

  /**
   * @param words the usual one, then others, parted by strokes
   */
  Verb(String words, String help) {
    this.words = words;
    this.help = help;
  }

  /**
   * A word and what was typed behind it.
   *
   * @param verb the word
   * @param rest what was typed behind it; empty where nothing was
   */
  record Typed(Verb verb, Optional<String> rest) {}

  /** The word that a line begins with. */
  static Optional<Typed> of(String line) {
    String typed = line.strip().replaceAll("\\s+", " ");
    String lower = typed.toLowerCase(Locale.ROOT);
    for (Verb verb : values()) {
      for (String word : verb.words()) {
        if (!word.isEmpty() && (lower + " ").startsWith(word + " ")) {
          String rest = typed.substring(word.length()).strip();
          return Optional.of(
              new Typed(verb, rest.isEmpty() ? Optional.empty() : Optional.of(rest)));
        }
      }
    }
    return Optional.empty();
  }

  private List<String> words() {
    return List.of(words.split("\\|", -1));
  }

  /** What help says. */
  static List<String> help() {
    return Stream.of(values()).map(verb -> verb.help).filter(help -> !help.isEmpty()).toList();
  }

  /** The usual words, to offer. */
  static Names offered() {
    List<String> usual = new ArrayList<>();
    Stream.of(values())
        .map(verb -> verb.words().get(0))
        .filter(w -> !w.isEmpty())
        .forEach(usual::add);
    return new Names(usual);
  }
}
