package ohmtrail.cli.casefile.words;

import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
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
import ohmtrail.cli.casefile.words.Unit.Dimension;
import ohmtrail.cli.names.Names;
import ohmtrail.reference.ConductorMaterial;
import ohmtrail.survey.Finding;
import ohmtrail.survey.Measurand;

/** The words of a run, in both regions' spelling. */
public final class Vocabulary {

  private static final Set<JointKind> HOLDING_NO_WIRE =
      EnumSet.of(JointKind.BLADE_CONTACT, JointKind.CONDUIT_FITTING, JointKind.SWITCH_CONTACT);

  private static final String RECEPTACLES = "duplex duplex-receptacle duplex-outlet recept";
  private static final String JUNCTIONS = "junction-box j-box jbox";
  private static final String LUMINAIRES = "light-fixture";
  private static final String PUSH_INS = "backstab back-stab backstabbed back-stabbed stab-in stab";
  private static final String WIRE_NUTS = "wirenut twist-on";
  private static final String SCREWS = "screws screw-terminal";

  /** Words that are taken but not offered, nor written: each has a usual one beside it. */
  private static final Set<String> NOT_OFFERED =
      Stream.of(RECEPTACLES, JUNCTIONS, LUMINAIRES, PUSH_INS, WIRE_NUTS, SCREWS)
          .flatMap(words -> Stream.of(words.split(" ", -1)))
          .collect(Collectors.toUnmodifiableSet());

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

  /** The word between boxes of which one is meant. */
  public static final String OR = "or";

  /** The word between boxes that are all meant. */
  public static final String AND = "and";

  /** The word for the first box behind the panel. */
  public static final String FIRST = "first";

  /** The word for a box that feeds no other. */
  public static final String LAST = "last";

  /** The word before a box that lies on the way from the panel. */
  public static final String AFTER = "after";

  /** The word before a place on a plan. */
  public static final String PLAN = "plan";

  /** The word before a straight distance. */
  public static final String STRAIGHT = "straight";

  /** The word before the box that is so far away. */
  public static final String TO = "to";

  /** What is said before a box that one cable leads to from here. */
  public static final Map<String, String> NEXT_TO = all("next-to", "next-to beside");

  /** What is said before a box that no cable leads to from here. */
  public static final Map<String, String> NOT_NEXT_TO =
      all("not-next-to", "not-next-to not-beside");

  /** What is said of a box that another breaker may feed. */
  public static final Map<String, String> ELSEWHERE =
      all(
          "perhaps-elsewhere",
          "perhaps-elsewhere maybe-elsewhere possibly-elsewhere perhaps-another-circuit"
              + " maybe-another-circuit possibly-another-circuit");

  /** What is said of a box that was dead while the breaker was off. */
  public static final Map<String, String> WENT_DARK = all("went-dark", "went-dark this-circuit");

  /** What is said of a box that was live while the breaker was off. */
  public static final Map<String, String> STAYED_LIVE =
      all("stayed-live", "stayed-live another-circuit");

  /** The word before a companion. */
  public static final String WITH = "with";

  /** The word behind a companion. */
  public static final String COMPANION = "companion";

  /** The word for a length that nobody knows. */
  public static final String UNKNOWN = "unknown";

  /** What somebody says who does not know; each means the same. */
  public static final Map<String, String> UNKNOWNS =
      all(
          UNKNOWN,
          "unknown ? don't-know dont-know don\u2019t-know i-don't-know i-dont-know"
              + " i-don\u2019t-know not-known not-sure no-idea dunno");

  /** What an ohmmeter says of a way that is open; each means the same. */
  public static final Map<String, String> OVER_RANGE =
      all("open", "open ol o.l o.l. 0l over overload over-range");

  /** What is said before a length that was estimated; each means the same. */
  public static final Map<String, String> ABOUT =
      all("about", "about approx approx. approximately roughly around circa ca ca. ~ some");

  private Vocabulary() {}

  /** All words that a run entry is made of, to offer where one is misspelt. */
  public static Names runWords() {
    return new Names(
        Stream.concat(
                Stream.of(KINDS, WIRINGS, JOINTS, MATERIALS, CONDUITS)
                    .map(Vocabulary::offered)
                    .flatMap(names -> names.all().stream()),
                Stream.concat(
                    Stream.of(FROM, WITH, ON, "gfci", "rcd", UNKNOWN), orderWords().all().stream()))
            .toList());
  }

  /** The words that say a part of what feeds a box, to offer where one is misspelt. */
  public static Names orderWords() {
    return new Names(
        List.of(
            FIRST,
            LAST,
            AFTER,
            "next to",
            "not next to",
            PLAN,
            STRAIGHT,
            "perhaps elsewhere",
            "went dark",
            "stayed live"));
  }

  /** What the whole of a scalar means; empty when it means nothing, and noted. */
  public static <T> Optional<T> only(
      Scalar scalar, String key, Map<String, T> meanings, Problems problems) {
    Words words = new Words(scalar);
    Optional<T> meaning = words.takeMeaning(meanings);
    if (meaning.isEmpty() || words.hasNext()) {
      problems.unknown(scalar.word(), "Key (" + key + "): word", offered(meanings));
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

  /** Whether a text says no more than that nobody knows. */
  public static boolean isUnknown(Scalar scalar) {
    Words words = new Words(scalar);
    return words.takeMeaning(UNKNOWNS).isPresent() && !words.hasNext();
  }

  /** What a reading of that kind measures. */
  public static Dimension dimension(Measurand measurand) {
    return switch (measurand) {
      case VOLTAGE -> Dimension.VOLTAGE;
      case CURRENT -> Dimension.CURRENT;
      case LOOP_IMPEDANCE, RESISTANCE -> Dimension.RESISTANCE;
    };
  }

  private static Map<String, BoxKind> kinds() {
    Map<String, BoxKind> kinds = new LinkedHashMap<>();
    put(kinds, BoxKind.RECEPTACLE, "receptacle socket-outlet outlet socket");
    put(kinds, BoxKind.RECEPTACLE, RECEPTACLES);
    put(kinds, BoxKind.JUNCTION, "junction");
    put(kinds, BoxKind.JUNCTION, JUNCTIONS);
    put(kinds, BoxKind.PANEL, "panel");
    put(kinds, BoxKind.SWITCH, "switch");
    put(kinds, BoxKind.LUMINAIRE, "luminaire light");
    put(kinds, BoxKind.LUMINAIRE, LUMINAIRES);
    put(kinds, BoxKind.APPLIANCE, "appliance");
    return kinds;
  }

  /**
   * Adds the words of a value.
   *
   * @param words the usual one, then others, parted by spaces; a hyphen stands for a space too
   */
  private static <T> void put(Map<String, T> meanings, T value, String words) {
    List.of(words.split(" ", -1)).forEach(word -> meanings.put(word, value));
  }

  /** The words to offer where another one stands. */
  public static Names offered(Map<String, ?> meanings) {
    return new Names(
        meanings.keySet().stream().filter(word -> !NOT_OFFERED.contains(word)).toList());
  }

  private static Map<String, String> all(String value, String words) {
    Map<String, String> meanings = new LinkedHashMap<>();
    put(meanings, value, words);
    return meanings;
  }

  private static Map<String, JointKind> joints() {
    Map<String, JointKind> joints = new LinkedHashMap<>();
    for (JointKind kind : JointKind.values()) {
      if (!HOLDING_NO_WIRE.contains(kind)) {
        joints.put(kind.word(), kind);
      }
    }
    put(joints, JointKind.PUSH_IN, PUSH_INS);
    put(joints, JointKind.WIRE_NUT, WIRE_NUTS);
    put(joints, JointKind.SCREW, SCREWS);
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
      findings.put(state.word().replace(' ', '-'), state);
    }
    put(findings, Finding.State.FINE, "ok okay good sound");
    put(findings, Finding.State.BURNT, "burned loose broken bad melted charred");
    put(findings, Finding.State.OUT_OF_REACH, "cannot-reach can't-reach can\u2019t-reach");
    return findings;
  }

  private static <T> Map<String, T> ordered(String first, T one, String second, T other) {
    Map<String, T> words = new LinkedHashMap<>();
    words.put(first, one);
    words.put(second, other);
    return words;
  }
}
