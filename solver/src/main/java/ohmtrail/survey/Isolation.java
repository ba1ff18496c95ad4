package ohmtrail.survey;

import java.util.HashSet;
import java.util.List;
import ohmtrail.circuit.Joint;

/**
 * The breaker off, and what was changed by hand before an ohmmeter was held to the dead circuit.
 *
 * @param links bare pieces of wire or clips, each between the two points of its tap: the link at
 *     the far end of a continuity test
 * @param lifted joints taken apart, such as the ends of a ring at its board
 */
public record Isolation(List<Tap> links, List<Joint> lifted) {
  /** The breaker off, everything else as it was. */
  public static final Isolation BREAKER_OFF = new Isolation(List.of(), List.of());

  /** Copies the lists; rejects a link that is not between two points, and a joint lifted twice. */
  public Isolation {
    links = List.copyOf(links);
    lifted = List.copyOf(lifted);
    for (Tap link : links) {
      if (!(link instanceof Tap.Pair || link instanceof Tap.Points)) {
        throw new SurveyException("Link (" + link.word() + ") must be between two points");
      }
    }
    if (new HashSet<>(lifted).size() < lifted.size()) {
      throw new SurveyException(
          "Joints lifted ("
              + lifted.stream().map(Joint::id).toList()
              + ") must be named once each");
    }
  }
}
