package ohmtrail.survey;

import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import ohmtrail.circuit.Cable;
import ohmtrail.circuit.Circuit;
import ohmtrail.circuit.ConductorRole;
import ohmtrail.circuit.Joint;
import ohmtrail.circuit.JointRole;

/**
 * What somebody says who uses the circuit.
 *
 * @param symptom what is noticed
 * @param box where; empty where nobody said, or everywhere
 * @param load what is on then; empty where nobody said
 * @param loadBox where that is plugged in; empty where nobody said
 */
public record Complaint(
    Symptom symptom, Optional<String> box, Optional<String> load, Optional<String> loadBox) {

  /** A complaint of which only the kind is known. */
  public Complaint(Symptom symptom) {
    this(symptom, Optional.empty(), Optional.empty(), Optional.empty());
  }

  /**
   * Rejects the place of a load without a load.
   *
   * @throws SurveyException when there is one
   */
  public Complaint {
    if (load.isEmpty() && loadBox.isPresent()) {
      throw new SurveyException(
          "Complaint (" + symptom.word() + ") must name the load that is at " + loadBox.get());
    }
  }

  /** As a case file says it: {@code dims at tv with heater at bookcase}. */
  public String text() {
    return symptom.word()
        + box.map(name -> " at " + name).orElse("")
        + load.map(name -> " with " + name).orElse("")
        + loadBox.map(name -> " at " + name).orElse("");
  }

  /** The boxes that it names. */
  public List<String> boxes() {
    return Stream.of(box, loadBox).flatMap(Optional::stream).toList();
  }

  /**
   * The names of the joints that can be the cause: those that carry the current whose drop, heat or
   * want is noticed. A joint of a ground conductor carries none, and is never among them.
   *
   * <ul>
   *   <li>Dead, or flickering: on the way to the box.
   *   <li>Dimmed by a load elsewhere: on the way to the box and on that to the load, whose current
   *       makes the drop.
   *   <li>Brighter: a neutral that two legs share, on the way to the box or before the panel. On a
   *       supply of one leg no joint of the run can raise a voltage; that of another leg, before
   *       the panel, can.
   *   <li>Warm, or smelling: in the box itself.
   *   <li>Tripping: any that carries current, since heat at a terminal and arcs trip breakers.
   * </ul>
   */
  public Set<String> causes(Circuit circuit) {
    Set<Joint> carrying =
        circuit.joints().stream()
            .filter(joint -> joint.conductor() != ConductorRole.GROUND)
            .collect(Collectors.toSet());
    return carrying.stream()
        .filter(
            switch (symptom) {
              case DEAD, FLICKERS, DIMS -> onTheWay(circuit)::contains;
              case BRIGHTER -> joint -> raises(circuit, joint) && feeds(circuit, joint);
              case WARM, SMELLS ->
                  joint -> box.isEmpty() || Finding.placeOf(joint).equals(box.get());
              case TRIPS -> joint -> true;
            })
        .map(Joint::id)
        .collect(Collectors.toUnmodifiableSet());
  }

  private Set<Joint> onTheWay(Circuit circuit) {
    Set<Joint> way = new HashSet<>(circuit.joints());
    boxes().forEach(name -> way.retainAll(feeding(circuit, name)));
    return way;
  }

  private boolean feeds(Circuit circuit, Joint joint) {
    return box.map(name -> feeding(circuit, name).contains(joint)).orElse(true);
  }

  private static boolean raises(Circuit circuit, Joint joint) {
    return joint.conductor() == ConductorRole.NEUTRAL
        && (circuit.supply().legs().conductors().size() > 1 || joint.role() == JointRole.SUPPLY);
  }

  /**
   * The joints that carry the current of a box: before the panel, on every way there, and its own.
   */
  private static Set<Joint> feeding(Circuit circuit, String box) {
    Set<Joint> feeding = new HashSet<>(circuit.deviceJoints(box));
    circuit.joints().stream()
        .filter(joint -> joint.role() == JointRole.SUPPLY)
        .forEach(feeding::add);
    for (Cable cable : circuit.waysTo(box)) {
      circuit.sections(cable).forEach(section -> feeding.addAll(section.joints()));
    }
    return feeding;
  }
}
