package ohmtrail.survey;

import ohmtrail.circuit.Circuit;
import ohmtrail.circuit.ConductorRole;
import ohmtrail.circuit.Joint;
import ohmtrail.circuit.JointRole;

/** A place that one probe, or one end of a link, is held to. */
public sealed interface ProbePoint {
  /** The box that it is in. */
  String box();

  /** The conductor that it is metal of. */
  ConductorRole conductor();

  /** As it is written in a case file. */
  String word();

  /**
   * The piece of metal that it is: equal for two points that nothing lies between.
   *
   * @throws SurveyException when the circuit has no such point
   */
  Metal metal(Circuit circuit);

  /**
   * A piece of metal in a box.
   *
   * @param box the box
   * @param conductor the conductor
   * @param end the joint that parts it from where the wires of the box meet; empty for that place
   */
  record Metal(String box, ConductorRole conductor, String end) {}

  /**
   * Where a plug or probe touches a conductor of a box: the contacts of a receptacle, the splice of
   * any other box, the bar of the panel.
   */
  record Contact(String box, ConductorRole conductor) implements ProbePoint {
    @Override
    public String word() {
      return box + " " + conductor.word();
    }

    @Override
    public Metal metal(Circuit circuit) {
      if (!circuit.conductorsAt(box).contains(conductor)) {
        throw new SurveyException(
            "Conductor ("
                + conductor.word()
                + ") at "
                + box
                + " must be one of those that reach the box: "
                + circuit.conductorsAt(box).stream().map(ConductorRole::word).toList());
      }
      return circuit.deviceJoints(box).stream()
          .filter(joint -> joint.conductor() == conductor && joint.role() != JointRole.SWITCH)
          .reduce((nearer, farther) -> farther)
          .map(last -> new Metal(box, conductor, last.id()))
          .orElseGet(() -> new Metal(box, conductor, ""));
    }
  }

  /** The side of a joint that the supply is on, or the other. */
  enum Side {
    /** Towards the supply, as the cables are listed. */
    BEFORE("before"),
    /** Away from the supply. */
    AFTER("after");

    private final String word;

    Side(String word) {
      this.word = word;
    }

    /** The word in case files. */
    public String word() {
      return word;
    }
  }

  /**
   * One side of a joint in an open box: the end of the wire there, or what it is joined to.
   *
   * @param joint the joint
   * @param side which side of it
   */
  record JointSide(Joint joint, Side side) implements ProbePoint {
    @Override
    public String box() {
      return joint.box();
    }

    @Override
    public ConductorRole conductor() {
      return joint.conductor();
    }

    @Override
    public String word() {
      return side.word() + " " + joint.id();
    }

    @Override
    public Metal metal(Circuit circuit) {
      if (circuit.joint(joint.id()).isEmpty()) {
        throw new SurveyException("Joint (" + joint.id() + ") must be one of the circuit's");
      }
      if (joint.role() == JointRole.SWITCH && side == Side.BEFORE) {
        ConductorRole broken =
            circuit.box(box()).map(circuit::deviceConductors).orElseThrow().get(0);
        return new Metal(box(), broken, tail(circuit, broken));
      }
      String end = joint.id();
      if (joint.role() == JointRole.CONTACT && side == Side.BEFORE) {
        end = tail(circuit, joint.conductor());
      } else if (meetsOtherWires()) {
        end = "";
      }
      return new Metal(box(), conductor(), end);
    }

    private String tail(Circuit circuit, ConductorRole conductor) {
      return circuit.deviceJoints(box()).stream()
          .filter(other -> other.role() == JointRole.TAIL && other.conductor() == conductor)
          .map(Joint::id)
          .findFirst()
          .orElse("");
    }

    /** Whether this side is where the wires of the box meet. */
    private boolean meetsOtherWires() {
      return switch (joint.role()) {
        case SUPPLY, INCOMING, SWITCH -> side == Side.AFTER;
        case OUTGOING, TAIL -> side == Side.BEFORE;
        case CONTACT -> false;
      };
    }
  }
}
