package ohmtrail.report.heat;

import java.util.List;
import ohmtrail.circuit.Box;
import ohmtrail.circuit.Cable;
import ohmtrail.circuit.Circuit;
import ohmtrail.circuit.ConductorRole;
import ohmtrail.circuit.Joint;
import ohmtrail.circuit.JointRole;

/**
 * The most voltage that can stand across a joint, whatever is plugged in behind it: what its
 * conductor carries beyond the joint, against what it is used with there.
 *
 * <p>A neutral joint: with conductances G1 and G2 from the legs to the neutral behind an open
 * joint, that neutral floats at (G1 E1 + G2 E2)/(G1 + G2), which lies between the two leg voltages
 * and so never farther from the bonded neutral than one of them. A live joint: one leg's voltage to
 * neutral; that between the legs where a device that takes both lies behind it, or the rest of the
 * service does.
 */
final class DrivingVolts {
  private DrivingVolts() {}

  static double across(Joint joint, Circuit circuit) {
    double toNeutral = circuit.supply().volts();
    if (!joint.conductor().isLive()) {
      return toNeutral;
    }
    boolean bothLegs =
        joint.role() == JointRole.SUPPLY
            || circuit.boxes().stream()
                .filter(box -> mayBeFedThrough(joint, box, circuit))
                .anyMatch(box -> takesBothLegs(circuit, box));
    return bothLegs ? circuit.supply().greatestVolts() : toNeutral;
  }

  /** A tail and a contact feed their own box alone; any other joint may feed what lies beyond. */
  private static boolean mayBeFedThrough(Joint joint, Box box, Circuit circuit) {
    if (box.name().equals(joint.box())) {
      return true;
    }
    boolean onlyHere = joint.role() == JointRole.TAIL || joint.role() == JointRole.CONTACT;
    return !onlyHere
        && (joint.box().equals(circuit.panel().name())
            || circuit.pathTo(box.name()).stream().map(Cable::to).anyMatch(joint.box()::equals));
  }

  private static boolean takesBothLegs(Circuit circuit, Box box) {
    List<ConductorRole> conductors = circuit.deviceConductors(box);
    return conductors.stream().filter(ConductorRole::isLeg).count() == 2;
  }
}
