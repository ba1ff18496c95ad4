package ohmtrail.cli.casefile.words;

import java.util.Collection;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import ohmtrail.circuit.BoxKind;
import ohmtrail.circuit.Cable.Companion;
import ohmtrail.circuit.DeviceWiring;
import ohmtrail.circuit.Grounding.Conduit;
import ohmtrail.circuit.JointKind;
import ohmtrail.circuit.Supply;
import ohmtrail.cli.casefile.text.Node.Scalar;
import ohmtrail.cli.casefile.text.Problems;
import ohmtrail.cli.casefile.text.Words;
import ohmtrail.cli.names.Names;
import ohmtrail.reference.ConductorMaterial;
import ohmtrail.survey.Finding;

/** The words of a run, in both regions' spelling. */
public final class Vocabulary {

  private static final Set<JointKind> HOLDING_NO_WIRE =
      EnumSet.of(JointKind.BLADE_CONTACT, JointKind.CONDUIT_FITTING, JointKind.SWITCH_CONTACT);

  /** What a box is. */
  public static final Map<String, BoxKind> KINDS = kinds();

  /** How a device hangs on the run. */
  public static final Map<String, DeviceWiring> WIRINGS =
      ordered("feed-through", DeviceWiring.FEED_THROUGH, "pigtail", DeviceWiring.PIGTAIL);

  /** How wires are held: all kinds of joints but those that hold none. */
  public static final Map<String, JointKind> JOINTS = joints();

  /** What conductors are made of. */
  public static final Map<String, ConductorMaterial> MATERIALS = materials();

  /** The metal conduit that is the ground. */
  public static final Map<String, Conduit> CONDUITS = conduits();

  /** What else runs in the jacket of a cable. */
  public static final Map<String, Companion> COMPANIONS =
      ordered("none", Companion.NONE, "live", Companion.LIVE);

  /** How a supply is earthed, by the names of IEC 60364-1. */
  public static final Map<String, Supply.Earthing> EARTHINGS = earthings();

  /** What was found at a box. */
  public static final Map<String, Finding.State> FINDINGS = findings();

  /** The word before the conductors that a device is connected to. */
  public static final String ON = "on";

  /** The word between an entry and the box that feeds it. */
  public static final String FROM = "from";

  /** The word before a companion. */
  public static final String WITH = "with";

  /** The word behind a companion. */
  public static final String COMPANION = "companion";

  /** The word for a length that nobody knows. */
  public static final String UNKNOWN = "unknown";

  private Vocabulary() {}

  /** All words that a run entry is made of, to offer where one is misspelt. */
  public static Names runWords() {
    return new Names(
        Stream.of(
                KINDS.keySet(),
                WIRINGS.keySet(),
                JOINTS.keySet(),
                MATERIALS.keySet(),
                CONDUITS.keySet(),
                List.of(FROM, WITH, ON, "gfci", "rcd", UNKNOWN))
            .flatMap(Collection::stream)
            .toList());
  }

  /** What the whole of a scalar means; empty when it means nothing, and noted. */
  public static <T> Optional<T> only(
      Scalar scalar, String key, Map<String, T> meanings, Problems problems) {
    Words words = new Words(scalar);
    Optional<T> meaning = words.takeMeaning(meanings);
    if (meaning.isEmpty() || words.hasNext()) {
      problems.unknown(scalar.word(), "Key (" + key + "): word", new Names(meanings.keySet()));
      return Optional.empty();
    }
    return meaning;
  }

  /** The word that a value is written with. */
  public static <T> String word(Map<String, T> words, T value) {
    return words.entrySet().stream()
        .filter(entry -> entry.getValue().equals(value))
        .map(Map.Entry::getKey)
        .findFirst()
        .orElseThrow(
            () -> new IllegalArgumentException("No word of a case file means (" + value + ")."));
  }

  private static Map<String, BoxKind> kinds() {
    Map<String, BoxKind> kinds = new LinkedHashMap<>();
    kinds.put("receptacle", BoxKind.RECEPTACLE);
    kinds.put("socket-outlet", BoxKind.RECEPTACLE);
    kinds.put("outlet", BoxKind.RECEPTACLE);
    kinds.put("socket", BoxKind.RECEPTACLE);
    kinds.put("junction", BoxKind.JUNCTION);
    kinds.put("panel", BoxKind.PANEL);
    kinds.put("switch", BoxKind.SWITCH);
    kinds.put("luminaire", BoxKind.LUMINAIRE);
    kinds.put("light", BoxKind.LUMINAIRE);
    kinds.put("appliance", BoxKind.APPLIANCE);
    return kinds;
  }

  private static Map<String, JointKind> joints() {
    Map<String, JointKind> joints = new LinkedHashMap<>();
    for (JointKind kind : JointKind.values()) {
      if (!HOLDING_NO_WIRE.contains(kind)) {
        joints.put(kind.word(), kind);
      }
    }
    return joints;
  }

  private static Map<String, Supply.Earthing> earthings() {
    Map<String, Supply.Earthing> earthings = new LinkedHashMap<>();
    earthings.put("tn-c-s", Supply.Earthing.TN_C_S);
    earthings.put("tn-s", Supply.Earthing.TN_S);
    earthings.put("tt", Supply.Earthing.TT);
    return earthings;
  }

  private static Map<String, ConductorMaterial> materials() {
    Map<String, ConductorMaterial> materials = new LinkedHashMap<>();
    for (ConductorMaterial material : ConductorMaterial.values()) {
      materials.put(material.name().toLowerCase(Locale.ROOT), material);
    }
    materials.put("aluminum", ConductorMaterial.ALUMINIUM);
    return materials;
  }

  private static Map<String, Conduit> conduits() {
    Map<String, Conduit> conduits = new LinkedHashMap<>();
    conduits.put("emt", Conduit.EMT);
    conduits.put("conduit", Conduit.EMT);
    conduits.put("rigid-conduit", Conduit.RIGID);
    conduits.put("rmc", Conduit.RIGID);
    return conduits;
  }

  private static Map<String, Finding.State> findings() {
    Map<String, Finding.State> findings = new LinkedHashMap<>();
    for (Finding.State state : Finding.State.values()) {
      findings.put(state.word(), state);
    }
    return findings;
  }

  private static <T> Map<String, T> ordered(String first, T one, String second, T other) {
    Map<String, T> words = new LinkedHashMap<>();
    words.put(first, one);
    words.put(second, other);
    return words;
  }
}
