package ohmtrail.advise;

import java.util.List;
import ohmtrail.advise.safety.Hazard;

/**
 * A visit that must not be made, and why.
 *
 * @param choice the visit
 * @param hazards what it could do; at least one
 */
public record RuledOut(Choice.Read choice, List<Hazard> hazards) {
  /** Copies the list. */
  public RuledOut {
    hazards = List.copyOf(hazards);
  }
}
