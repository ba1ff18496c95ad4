package ohmtrail.circuit;

import java.util.Locale;
import java.util.Optional;

/** What a conductor is for. */
public enum ConductorRole {
  /** The live conductor (line). */
  HOT,
  /** The return conductor. */
  NEUTRAL,
  /** The protective conductor (ground, protective earth). */
  GROUND;

  /** The name used in joint names and files: lower case. */
  public String word() {
    return name().toLowerCase(Locale.ROOT);
  }

  /**
   * Reads the North American word or that of IEC 60364 (line, earth, pe); empty when it is neither.
   */
  public static Optional<ConductorRole> parse(String text) {
    return switch (text.strip().toLowerCase(Locale.ROOT)) {
      case "hot", "line", "live", "h", "l" -> Optional.of(HOT);
      case "neutral", "n" -> Optional.of(NEUTRAL);
      case "ground", "earth", "pe", "g" -> Optional.of(GROUND);
      default -> Optional.empty();
    };
  }
}
