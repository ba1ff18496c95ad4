package ohmtrail.circuit;

import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;

/** What a conductor is for. */
public enum ConductorRole {
  /** The live conductor (line) of a supply of one leg. */
  HOT("hot line live h l"),
  /** One of the two live conductors of a supply of two legs. */
  LEG_1("leg-1 leg1 leg_1 l1"),
  /** The other. */
  LEG_2("leg-2 leg2 leg_2 l2"),
  /** What a switch makes live: the switch leg, and what it leads to. */
  SWITCHED("switched switched_hot switched_line"),
  /** The return conductor. */
  NEUTRAL("neutral n"),
  /** The protective conductor (ground, protective earth). */
  GROUND("ground earth pe g");

  private final String word;
  private final String spellings;

  /**
   * @param spellings the usual one, then others, parted by spaces; a low line stands for a space
   */
  ConductorRole(String spellings) {
    this.spellings = spellings;
    this.word = spellings.substring(0, spellings.indexOf(' '));
  }

  /** The name used in joint names and files: lower case with hyphens. */
  public String word() {
    return word;
  }

  /**
   * The North American words and those of IEC 60364 (line, earth, pe) in lower case, the usual one
   * first.
   */
  public List<String> spellings() {
    return Stream.of(spellings.split(" ", -1)).map(text -> text.replace('_', ' ')).toList();
  }

  /** Whether the supply drives it: neither neutral nor ground. */
  public boolean isLive() {
    return this != NEUTRAL && this != GROUND;
  }

  /** Whether the supply itself has it: live whatever any switch does. */
  public boolean isLeg() {
    return isLive() && this != SWITCHED;
  }

  /** Reads one of its spellings, in capitals or not; empty when it is none. */
  public static Optional<ConductorRole> parse(String text) {
    return Optional.ofNullable(Loaded.BY_SPELLING.get(text.strip().toLowerCase(Locale.ROOT)));
  }

  /** Made when first asked for, once. */
  private static final class Loaded {
    static final Map<String, ConductorRole> BY_SPELLING = new HashMap<>();

    static {
      for (ConductorRole role : ConductorRole.values()) {
        role.spellings().forEach(spelling -> BY_SPELLING.put(spelling, role));
      }
    }
  }
}
