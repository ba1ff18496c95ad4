package ohmtrail.cli.render.words;

import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import ohmtrail.circuit.Box;
import ohmtrail.circuit.Cable;
import ohmtrail.circuit.Circuit;
import ohmtrail.circuit.Joint;
import ohmtrail.circuit.JointRole;
import ohmtrail.locate.Suspect;

/** Joints as a person who stands before the open box would name them. Immutable. */
public final class JointWords {
  /** More joints than this are counted, not listed. */
  private static final int MOST_LISTED = 2;

  private final Circuit circuit;
  private final Region region;

  /** For the joints of a circuit, in the words of its supply's region. */
  public JointWords(Circuit circuit) {
    this.circuit = circuit;
    this.region = Region.of(circuit.supply());
  }

  /** A joint without its box: "the incoming neutral", "the outgoing hot to bed-2". */
  public String joint(Joint joint) {
    String conductor = region.conductor(joint.conductor());
    return switch (joint.role()) {
      case SUPPLY -> "the " + conductor + " on the supply side, at or before the panel";
      case INCOMING -> "the incoming " + conductor + otherBox(joint, " from ");
      case OUTGOING -> "the outgoing " + conductor + otherBox(joint, " to ");
      case TAIL -> "the " + conductor + " tail";
      case CONTACT -> "the " + conductor + " blade contact";
      case SWITCH -> "the switch contact";
    };
  }

  /** A joint with its box: "the incoming neutral at bed-1". */
  public String jointAt(Joint joint) {
    return joint(joint) + " at " + joint.box();
  }

  /** The box behind the joint's cable, where its box has several joints of that role. */
  private static String otherBox(Joint joint, String before) {
    String stem = joint.box() + "/" + joint.conductor().word() + "/" + joint.role().word();
    return joint.id().length() > stem.length()
        ? before + joint.id().substring(stem.length() + 1)
        : "";
  }

  /**
   * A suspect with the place it lies in: "the incoming neutral there", "the neutral between hall-2
   * and bed-1".
   *
   * @param opened the box that has just been named, where "there" will do
   */
  public String suspect(Suspect suspect, String opened) {
    List<String> boxes = boxes(suspect);
    double supplySide = suspect.supplySideProbability();
    if (boxes.size() > 1) {
      return "the " + conductors(suspect) + " " + spread(boxes, supplySide > 0);
    }
    if (supplySide > 0) {
      return "the " + conductors(suspect) + supplyPlace(suspect);
    }
    String place = boxes.get(0).equals(opened) ? " there" : " at " + boxes.get(0);
    if (suspect.joints().size() > MOST_LISTED) {
      return "one of " + suspect.joints().size() + " joints of the " + conductors(suspect) + place;
    }
    return listed(suspect.joints().stream().map(this::joint).toList(), "or") + place;
  }

  /**
   * Whether most of a suspect's probability lies before the panel: a matter for the utility or a
   * licensed electrician, and no box of the run need be opened for it.
   */
  public static boolean isSupplySide(Suspect suspect) {
    return 2 * suspect.supplySideProbability() > suspect.probability();
  }

  /** The boxes that a suspect's joints lie in, in the order in which the supply reaches them. */
  public List<String> boxes(Suspect suspect) {
    Set<String> held = suspect.joints().stream().map(Joint::box).collect(Collectors.toSet());
    return circuit.boxes().stream().map(Box::name).filter(held::contains).toList();
  }

  private String conductors(Suspect suspect) {
    return listed(
        suspect.joints().stream()
            .map(Joint::conductor)
            .distinct()
            .sorted()
            .map(region::conductor)
            .toList(),
        "or");
  }

  private static String supplyPlace(Suspect suspect) {
    return suspect.joints().stream().allMatch(joint -> joint.role() == JointRole.SUPPLY)
        ? " on the supply side, at or before the panel"
        : " at the panel or before it";
  }

  private String spread(List<String> boxes, boolean fromSupply) {
    String last = boxes.get(boxes.size() - 1);
    Set<String> wayToLast =
        Stream.concat(
                Stream.of(circuit.panel().name()), circuit.pathTo(last).stream().map(Cable::to))
            .collect(Collectors.toCollection(LinkedHashSet::new));
    return wayToLast.containsAll(boxes)
        ? "between " + (fromSupply ? "the supply" : boxes.get(0)) + " and " + last
        : "at " + listed(boxes, "or");
  }

  /** "a", "a or b", "a, b or c". */
  public static String listed(List<String> words, String conjunction) {
    int last = words.size() - 1;
    return last < 1
        ? String.join("", words)
        : String.join(", ", words.subList(0, last)) + " " + conjunction + " " + words.get(last);
  }
}
