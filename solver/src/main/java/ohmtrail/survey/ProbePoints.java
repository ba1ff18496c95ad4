package ohmtrail.survey;

import java.util.List;
import ohmtrail.circuit.Box;
import ohmtrail.circuit.BoxKind;
import ohmtrail.circuit.Cable;
import ohmtrail.circuit.Circuit;
import ohmtrail.circuit.ConductorRole;

/**
 * The two conductors that a meter is held to.
 *
 * @param first a conductor
 * @param second another
 */
public record ProbePoints(ConductorRole first, ConductorRole second) {
  /** Hot to neutral. */
  public static final ProbePoints HOT_NEUTRAL =
      new ProbePoints(ConductorRole.HOT, ConductorRole.NEUTRAL);

  /** Hot to ground. */
  public static final ProbePoints HOT_GROUND =
      new ProbePoints(ConductorRole.HOT, ConductorRole.GROUND);

  /** Neutral to ground. */
  public static final ProbePoints NEUTRAL_GROUND =
      new ProbePoints(ConductorRole.NEUTRAL, ConductorRole.GROUND);

  /** Rejects two probes on one conductor; puts them in the order of {@link ConductorRole}. */
  public ProbePoints {
    if (first == second) {
      throw new SurveyException(
          "Probe points ("
              + first.word()
              + " and "
              + second.word()
              + ") must be two different conductors");
    }
    if (first.compareTo(second) > 0) {
      ConductorRole swap = first;
      first = second;
      second = swap;
    }
  }

  /**
   * What an ordinary plug or hard-wired load connects to in a box: the live conductor and the
   * neutral, the unswitched one where there are both; both legs where there are two.
   *
   * @throws SurveyException when fewer than two conductors reach the box
   */
  public static ProbePoints usual(Circuit circuit, String box) {
    List<ConductorRole> there =
        circuit.box(box).map(each -> connectable(circuit, each)).orElse(Cable.USUAL);
    List<ConductorRole> legs = there.stream().filter(ConductorRole::isLeg).toList();
    if (legs.size() == 2) {
      return new ProbePoints(legs.get(0), legs.get(1));
    }
    List<ConductorRole> apart =
        there.stream().filter(role -> legs.isEmpty() || role != ConductorRole.SWITCHED).toList();
    if (apart.size() < 2) {
      throw new SurveyException(
          "Box (" + box + ") must have two conductors for anything to be connected there");
    }
    return new ProbePoints(apart.get(0), apart.get(1));
  }

  /** A switch has no neutral of its own; what passes it is there all the same. */
  private static List<ConductorRole> connectable(Circuit circuit, Box box) {
    return box.kind() == BoxKind.SWITCH
        ? circuit.conductorsAt(box.name())
        : circuit.deviceConductors(box);
  }

  /** As it is written: {@code hot-neutral}. */
  public String word() {
    return first.word() + "-" + second.word();
  }
}
