package ohmtrail.circuit;

import java.util.List;
import java.util.Objects;
import java.util.OptionalDouble;

/**
 * A place that can be opened.
 *
 * @param name unique in its circuit
 * @param kind what it is
 * @param wiring how its device hangs on the run; of no effect where there is no device
 * @param terminals how the wires are held at the device's terminals, or at the panel's
 * @param splices how wires are joined to each other where they are
 * @param device the conductors that its device is connected to, such as one leg of two; empty for
 *     all that reach the box
 * @param openingMinutes how long it takes to open it and look, where somebody knows: because a
 *     cupboard stands before it, say; positive
 */
public record Box(
    String name,
    BoxKind kind,
    DeviceWiring wiring,
    JointKind terminals,
    JointKind splices,
    List<ConductorRole> device,
    OptionalDouble openingMinutes) {
  /** Rejects a blank name. */
  public Box {
    if (name.isBlank() || name.contains("/")) {
      throw new CircuitException("Box name (" + name + ") must not be blank or contain a slash");
    }
    Objects.requireNonNull(kind, "kind");
    Objects.requireNonNull(wiring, "wiring");
    Objects.requireNonNull(terminals, "terminals");
    Objects.requireNonNull(splices, "splices");
    if (openingMinutes.isPresent() && !(openingMinutes.getAsDouble() > 0)) {
      throw new CircuitException(
          "Minutes to open box ("
              + name
              + ") must be more than 0, not ("
              + openingMinutes.getAsDouble()
              + ")");
    }
    device = device.stream().sorted().distinct().toList();
  }

  /** A box that takes as long to open as any. */
  public Box(
      String name,
      BoxKind kind,
      DeviceWiring wiring,
      JointKind terminals,
      JointKind splices,
      List<ConductorRole> device) {
    this(name, kind, wiring, terminals, splices, device, OptionalDouble.empty());
  }

  /** The same box, with so many minutes to open it. */
  public Box opening(OptionalDouble minutes) {
    return new Box(name, kind, wiring, terminals, splices, device, minutes);
  }

  /** A box whose device, if it has one, is connected to every conductor there. */
  public Box(
      String name, BoxKind kind, DeviceWiring wiring, JointKind terminals, JointKind splices) {
    this(name, kind, wiring, terminals, splices, List.of());
  }

  /** The same with its device connected to these conductors. */
  public Box on(List<ConductorRole> conductors) {
    return new Box(name, kind, wiring, terminals, splices, conductors, openingMinutes);
  }

  /** The panel: screws at breaker and bars. */
  public static Box panel(String name) {
    return new Box(
        name, BoxKind.PANEL, DeviceWiring.FEED_THROUGH, JointKind.SCREW, JointKind.SCREW);
  }

  /** A receptacle whose terminals, of the given kind, carry the run onward. */
  public static Box feedThrough(String name, JointKind terminals) {
    return new Box(
        name, BoxKind.RECEPTACLE, DeviceWiring.FEED_THROUGH, terminals, JointKind.WIRE_NUT);
  }

  /** A receptacle that hangs off wire-nut splices. */
  public static Box pigtail(String name) {
    return new Box(
        name, BoxKind.RECEPTACLE, DeviceWiring.PIGTAIL, JointKind.SCREW, JointKind.WIRE_NUT);
  }

  /** A box with wire-nut splices only. */
  public static Box junction(String name) {
    return new Box(
        name, BoxKind.JUNCTION, DeviceWiring.PIGTAIL, JointKind.WIRE_NUT, JointKind.WIRE_NUT);
  }

  /** A switch whose terminals, of the given kind, hold the wires. */
  public static Box switchWith(String name, JointKind terminals) {
    return new Box(name, BoxKind.SWITCH, DeviceWiring.FEED_THROUGH, terminals, JointKind.WIRE_NUT);
  }

  /** A luminaire whose leads are spliced to the run by wire nuts. */
  public static Box luminaire(String name) {
    return new Box(
        name, BoxKind.LUMINAIRE, DeviceWiring.PIGTAIL, JointKind.SCREW, JointKind.WIRE_NUT);
  }

  /**
   * How the wires of the cables are held: by the splices where the box has any, else by the
   * terminals. A conductor that passes a device is spliced; a switch is passed by all but the live
   * ones.
   */
  JointKind runJoints(ConductorRole conductor) {
    if (kind == BoxKind.SWITCH) {
      boolean held = conductor == ConductorRole.SWITCHED || (conductor.isLive() && !hasTail());
      return held && !passes(conductor) ? terminals : splices;
    }
    boolean spliced = kind == BoxKind.JUNCTION || hasTail() || passes(conductor);
    return spliced ? splices : terminals;
  }

  private boolean passes(ConductorRole conductor) {
    return !device.isEmpty()
        && !device.contains(conductor)
        && !(kind == BoxKind.SWITCH && conductor == ConductorRole.SWITCHED);
  }

  /** Whether loads and meters can be plugged in here. */
  public boolean hasReceptacle() {
    return kind == BoxKind.RECEPTACLE;
  }

  /** Whether a load can be connected here: plugged in, or fastened and wired in. */
  public boolean takesLoad() {
    return hasReceptacle() || kind.isHardWired();
  }

  /** Whether a tail leads from the splices to a device. */
  public boolean hasTail() {
    return kind.hasDevice() && wiring == DeviceWiring.PIGTAIL;
  }
}
