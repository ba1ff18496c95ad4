package ohmtrail.circuit;

import java.util.Locale;
import java.util.Optional;

/** What a conductor is for. */
public enum ConductorRole {
  /** The live conductor (line) of a supply of one leg. */
  HOT,
  /** One of the two live conductors of a supply of two legs. */
  LEG_1,
  /** The other. */
  LEG_2,
  /** What a switch makes live: the switch leg, and what it leads to. */
  SWITCHED,
  /** The return conductor. */
  NEUTRAL,
  /** The protective conductor (ground, protective earth). */
  GROUND;

  /** The name used in joint names and files: lower case with hyphens. */
  public String word() {
    return name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  /** Whether the supply drives it: neither neutral nor ground. */
  public boolean isLive() {
    return this != NEUTRAL && this != GROUND;
  }

  /** Whether the supply itself has it: live whatever any switch does. */
  public boolean isLeg() {
    return isLive() && this != SWITCHED;
  }

  /**
   * Reads the North American word or that of IEC 60364 (line, earth, pe); empty when it is neither.
   */
  public static Optional<ConductorRole> parse(String text) {
    return switch (text.strip().toLowerCase(Locale.ROOT)) {
      case "hot", "line", "live", "h", "l" -> Optional.of(HOT);
      case "leg-1", "leg1", "leg 1", "l1" -> Optional.of(LEG_1);
      case "leg-2", "leg2", "leg 2", "l2" -> Optional.of(LEG_2);
      case "switched", "switched hot", "switched line" -> Optional.of(SWITCHED);
      case "neutral", "n" -> Optional.of(NEUTRAL);
      case "ground", "earth", "pe", "g" -> Optional.of(GROUND);
      default -> Optional.empty();
    };
  }
}
