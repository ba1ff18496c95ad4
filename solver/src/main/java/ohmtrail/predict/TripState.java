package ohmtrail.predict;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import ohmtrail.circuit.Box;
import ohmtrail.circuit.Circuit;
import ohmtrail.circuit.ConductorRole;
import ohmtrail.circuit.Joint;
import ohmtrail.circuit.JointRole;
import ohmtrail.circuit.ResidualCurrentDevice;
import ohmtrail.network.Attachment;
import ohmtrail.network.Complex;
import ohmtrail.predict.operating.SettledNetwork;
import ohmtrail.predict.operating.Shunts;
import ohmtrail.survey.Meter;

/**
 * What a GFCI or RCD sees at a moment that somebody noted: the loads of the test on, and a meter
 * where one was held.
 *
 * @param shunts the meter and the loads that stay what they are
 * @param series ohms that are there already
 * @param guarded the ports of the joints through which live and neutral conductors leave it
 */
record TripState(
    Wiring wiring,
    double sourceVolts,
    TestLoads loads,
    Shunts shunts,
    List<Attachment> series,
    Set<Integer> guarded) {

  /** The joints through which live and neutral conductors leave a device. */
  static List<Joint> guarded(Circuit circuit, ResidualCurrentDevice device) {
    Box box = circuit.box(device.box()).orElseThrow();
    JointRole own = box.hasTail() ? JointRole.TAIL : JointRole.CONTACT;
    return circuit.jointsIn(box.name()).stream()
        .filter(joint -> joint.conductor() != ConductorRole.GROUND)
        .filter(joint -> joint.role() == JointRole.OUTGOING || joint.role() == own)
        .toList();
  }

  /** A meter beside loads, by its stated input. */
  static Shunts withMeter(Shunts loads, Wiring wiring, Meter meter, int port) {
    Shunts shunts = new Shunts(loads);
    shunts.add(port, new Complex(1 / meter.inputOhms(), wiring.omega() * meter.inputFarads()));
    return shunts;
  }

  /** Amperes that flow out and do not come back, with ohms added in one more joint or none. */
  double amperes(Optional<Attachment> added) {
    List<Attachment> all = new ArrayList<>(series);
    added.ifPresent(all::add);
    double[] driven =
        SettledNetwork.of(
                wiring.response(),
                shunts,
                all,
                loads.dependent(),
                sourceVolts,
                wiring::drivenBySupply)
            .drivenBySupply();
    double re = 0;
    double im = 0;
    for (int port : guarded) {
      re += driven[2 * port];
      im += driven[2 * port + 1];
    }
    return sourceVolts * Math.hypot(re, im);
  }
}
