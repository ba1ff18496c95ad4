package ohmtrail.cli.casefile.run;

import java.util.List;
import java.util.OptionalDouble;
import ohmtrail.circuit.Box;
import ohmtrail.circuit.BoxKind;
import ohmtrail.circuit.Cable.Companion;
import ohmtrail.circuit.ConductorRole;
import ohmtrail.circuit.DeviceWiring;
import ohmtrail.circuit.JointKind;
import ohmtrail.circuit.ResidualCurrentDevice.Rating;
import ohmtrail.cli.casefile.feeder.FeederWords;
import ohmtrail.cli.casefile.text.Node.Scalar;
import ohmtrail.cli.casefile.text.Once;
import ohmtrail.cli.casefile.text.Problems;

/** What one entry of a run says of a box and of the cable that leads to it. */
final class RunEntry {

  final Scalar name;
  final Once<BoxKind> kind;
  final Once<DeviceWiring> wiring;
  final Once<JointKind> joints;
  final Once<JointKind> terminals;
  final Once<JointKind> splices;
  final Once<OptionalDouble> length;
  final Once<Double> tolerance;
  final FeederWords.Draft feeder;
  final Once<Companion> companion;
  final ConductorWords.Draft conductor;
  final Once<List<ConductorRole>> roles;
  final Once<List<ConductorRole>> device;
  final Once<Rating> protection;
  final Once<Double> minutes;

  /** How far a length may be off that somebody estimated, as a share of it: common practice. */
  private static final double ESTIMATED_TOLERANCE = 0.2;

  /** Whether its length was estimated. */
  boolean estimated;

  /** Whether it stands among the boxes whose order nobody knows. */
  boolean unordered;

  /** Whether something in it is wrong, so that nothing else in it need be missed. */
  boolean flawed;

  RunEntry(Scalar name, Problems problems) {
    this.name = name;
    kind = new Once<>("Kind of box", problems);
    wiring = new Once<>("Wiring of the device", problems);
    joints = new Once<>("Kind of joint", problems);
    terminals = new Once<>("Kind of terminals", problems);
    splices = new Once<>("Kind of splices", problems);
    length = new Once<>("Length", problems);
    tolerance = new Once<>("Length tolerance", problems);
    feeder = new FeederWords.Draft(problems);
    companion = new Once<>("Companion", problems);
    minutes = new Once<>("Time to open", problems);
    conductor = new ConductorWords.Draft(problems);
    roles = new Once<>("Conductors", problems);
    device = new Once<>("Conductors of the device", problems);
    protection = new Once<>("Protection", problems);
  }

  /** Whether it says anything of a box, its device or joints. */
  boolean saysBox() {
    return wiring.isGiven()
        || minutes.isGiven()
        || joints.isGiven()
        || terminals.isGiven()
        || splices.isGiven()
        || device.isGiven()
        || protection.isGiven()
        || feeder.saysBox();
  }

  /** Whether it says anything of a cable. */
  boolean saysCable() {
    return feeder.from.isGiven() || length.isGiven() || saysLaid();
  }

  /** Whether it says how a cable is laid: how long, of what. */
  boolean saysLaid() {
    return length.value().filter(OptionalDouble::isPresent).isPresent()
        || tolerance.isGiven()
        || companion.isGiven()
        || roles.isGiven()
        || conductor.isGiven();
  }

  /** Whether not all is known of what feeds the box. */
  boolean isOpen() {
    return feeder.isOpen() || (unordered && feeder.only().isEmpty() && !feeder.first.isGiven());
  }

  /** How far the length may be off, as a share of it; empty where the entry does not say. */
  OptionalDouble tolerance() {
    return tolerance.isGiven() || estimated
        ? OptionalDouble.of(tolerance.or(ESTIMATED_TOLERANCE))
        : OptionalDouble.empty();
  }

  /**
   * The box.
   *
   * @param is what it is
   * @param usual how wires are held at a device's terminals where the entry does not say
   */
  Box box(BoxKind is, JointKind usual) {
    return boxOfAll(is, usual)
        .on(device.or(List.of()))
        .opening(minutes.value().map(OptionalDouble::of).orElse(OptionalDouble.empty()));
  }

  private Box boxOfAll(BoxKind is, JointKind usual) {
    String called = name.text();
    if (is == BoxKind.PANEL) {
      JointKind held = terminals.or(joints.or(JointKind.SCREW));
      return new Box(
          called, is, wiring.or(DeviceWiring.FEED_THROUGH), held, splices.or(JointKind.SCREW));
    }
    if (is == BoxKind.JUNCTION) {
      JointKind spliced = splices.or(joints.or(JointKind.WIRE_NUT));
      return new Box(called, is, wiring.or(DeviceWiring.PIGTAIL), terminals.or(spliced), spliced);
    }
    // A luminaire or an appliance has leads, which are spliced to the wires of the run.
    DeviceWiring hung =
        wiring.or(is.isHardWired() ? DeviceWiring.PIGTAIL : DeviceWiring.FEED_THROUGH);
    if (hung == DeviceWiring.PIGTAIL) {
      JointKind spliced = splices.or(joints.or(JointKind.WIRE_NUT));
      return new Box(called, is, DeviceWiring.PIGTAIL, terminals.or(usual), spliced);
    }
    return new Box(
        called,
        is,
        DeviceWiring.FEED_THROUGH,
        terminals.or(joints.or(usual)),
        splices.or(JointKind.WIRE_NUT));
  }
}
