package ohmtrail.survey;

import java.util.List;
import ohmtrail.circuit.Circuit;
import ohmtrail.circuit.ConductorRole;
import ohmtrail.circuit.Joint;

/** What a meter is held to or closed around. */
public sealed interface Tap {
  /** The box that one stands at. */
  String box();

  /** As it is written in a case file. */
  String word();

  /** Whether it touches two points; if not, it is closed around a conductor. */
  default boolean isTouching() {
    return true;
  }

  /** Whether the box has to be open for it. */
  default boolean isInside() {
    return false;
  }

  /**
   * Checks that the circuit has it, and that there is something between its two ends.
   *
   * @throws SurveyException when not
   */
  void requireFits(Circuit circuit);

  /** Two conductors at one box, where a plug or probe touches them. */
  record Pair(String box, ProbePoints between) implements Tap {
    @Override
    public String word() {
      return box + " " + between.word();
    }

    @Override
    public void requireFits(Circuit circuit) {
      requireBox(circuit, box);
      new ProbePoint.Contact(box, between.first()).metal(circuit);
      new ProbePoint.Contact(box, between.second()).metal(circuit);
    }
  }

  /**
   * Two points anywhere: a long lead back to the panel or to another circuit's box, one side of a
   * joint.
   */
  record Points(ProbePoint first, ProbePoint second) implements Tap {
    @Override
    public String box() {
      return first.box();
    }

    @Override
    public String word() {
      return first.word() + " to " + second.word();
    }

    @Override
    public boolean isInside() {
      return first instanceof ProbePoint.JointSide || second instanceof ProbePoint.JointSide;
    }

    @Override
    public void requireFits(Circuit circuit) {
      requireBox(circuit, first.box());
      requireBox(circuit, second.box());
      if (first.metal(circuit).equals(second.metal(circuit))) {
        throw new SurveyException(
            "Probe points ("
                + word()
                + ") must be two different pieces of metal\nMaybe the other side of the joint was meant.");
      }
    }
  }

  /** The two sides of one joint in an open box. */
  record AcrossJoint(Joint joint) implements Tap {
    @Override
    public String box() {
      return joint.box();
    }

    @Override
    public String word() {
      return "across " + joint.id();
    }

    @Override
    public boolean isInside() {
      return true;
    }

    @Override
    public void requireFits(Circuit circuit) {
      if (circuit.joint(joint.id()).isEmpty()) {
        throw new SurveyException("Joint (" + joint.id() + ") must be one of the circuit's");
      }
    }
  }

  /**
   * A clamp around one conductor of a cable.
   *
   * @param from the box at the supply's end of the cable
   * @param to the box at its other end
   * @param conductor the conductor
   */
  record AroundConductor(String from, String to, ConductorRole conductor) implements Tap {
    @Override
    public String box() {
      return from;
    }

    @Override
    public String word() {
      return "around " + from + " to " + to + " " + conductor.word();
    }

    @Override
    public boolean isInside() {
      return true;
    }

    @Override
    public boolean isTouching() {
      return false;
    }

    @Override
    public void requireFits(Circuit circuit) {
      boolean there =
          circuit.sections().stream()
              .anyMatch(
                  section ->
                      section.conductor() == conductor
                          && section.cable().from().equals(from)
                          && section.cable().to().equals(to));
      if (!there) {
        throw new SurveyException(
            "Clamp ("
                + word()
                + ") must be around a conductor of a cable of the circuit: "
                + cables(circuit));
      }
    }

    private static List<String> cables(Circuit circuit) {
      return circuit.cables().stream().map(cable -> cable.from() + " to " + cable.to()).toList();
    }
  }

  /** A clamp around one conductor of what a load is connected with. */
  record AroundLoad(String load, String box) implements Tap {
    @Override
    public String word() {
      return "around " + load + " at " + box;
    }

    @Override
    public boolean isTouching() {
      return false;
    }

    @Override
    public void requireFits(Circuit circuit) {
      requireBox(circuit, box);
    }
  }

  private static void requireBox(Circuit circuit, String box) {
    if (circuit.box(box).isEmpty()) {
      throw new SurveyException(
          "Reading at box ("
              + box
              + ") must be at one of "
              + circuit.boxes().stream().map(each -> each.name()).toList());
    }
  }
}
