package ohmtrail.cli.casefile.equipment;

import java.util.LinkedHashMap;
import java.util.Map;

/**
 * What a case says of one load.
 *
 * @param name its name
 * @param rating watts or amperes
 * @param volts voltage that they hold for
 * @param options figures of its kind
 */
record LoadDraft(String name, double rating, double volts, Map<Option, Double> options) {
  /** A figure that only some kinds have. */
  enum Option {
    /** Share of the rated voltage below which an electronic load is off. */
    CUT_OUT("cut-out", LoadKind.ELECTRONIC),
    /** Share of the rated voltage below which a motor does not run. */
    STALL("stall", LoadKind.MOTOR),
    /** Cosine of the angle by which a motor's current lags. */
    POWER_FACTOR("power-factor", LoadKind.MOTOR);

    /** The options by their words. */
    static final Map<String, Option> WORDS = words();

    private final String word;
    private final LoadKind kind;

    Option(String word, LoadKind kind) {
      this.word = word;
      this.kind = kind;
    }

    String word() {
      return word;
    }

    /** Whether a kind of load has it. */
    boolean suits(LoadKind other) {
      return kind == other;
    }

    private static Map<String, Option> words() {
      Map<String, Option> words = new LinkedHashMap<>();
      for (Option option : values()) {
        words.put(option.word, option);
      }
      return words;
    }
  }

  /** A figure, or what is usual. */
  double get(Option option, double usual) {
    return options.getOrDefault(option, usual);
  }
}
