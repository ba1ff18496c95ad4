package ohmtrail.cli.casefile;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.Set;
import ohmtrail.circuit.Box;
import ohmtrail.circuit.BoxKind;
import ohmtrail.circuit.Cable;
import ohmtrail.circuit.Cable.Companion;
import ohmtrail.circuit.Circuit;
import ohmtrail.circuit.ConductorRole;
import ohmtrail.circuit.DeviceWiring;
import ohmtrail.circuit.JointKind;
import ohmtrail.circuit.Supply;
import ohmtrail.cli.casefile.words.Vocabulary;
import ohmtrail.reference.Assumption;
import ohmtrail.reference.Assumptions;
import ohmtrail.reference.Conductor;
import ohmtrail.reference.ConductorMaterial;
import ohmtrail.reference.ConductorSize;
import ohmtrail.survey.Accuracy;
import ohmtrail.survey.Finding;
import ohmtrail.survey.LoadInUse;
import ohmtrail.survey.Meter;
import ohmtrail.survey.ProbePoints;
import ohmtrail.survey.Reading;
import ohmtrail.survey.Survey;
import ohmtrail.survey.Test;
import ohmtrail.survey.load.ElectronicLoad;
import ohmtrail.survey.load.FilamentLamp;
import ohmtrail.survey.load.HeatingElement;
import ohmtrail.survey.load.KnownCurrent;
import ohmtrail.survey.load.Load;
import ohmtrail.survey.load.Motor;
import ohmtrail.survey.load.NameplateCurrent;

/** One case drawn at random: any circuit and survey whose quantities a case file takes. */
final class DrawnCase {

  /** Names that a person gives, and names chosen to be taken for something else. */
  private static final List<String> NAMES =
      List.of(
          "hall-1",
          "bed_2",
          "Küche",
          "küche",
          "no",
          "on",
          "null",
          "~",
          "12",
          "120 V",
          "-1",
          "hall 1",
          "hall",
          "1",
          "hall  1",
          " hall",
          "a: b",
          "a #b",
          "\"quoted\"",
          "it's",
          "from",
          "receptacle",
          "panel",
          "Panel",
          "hot-neutral",
          "n",
          "hot",
          "idle",
          "heater at x",
          "a + b",
          "at",
          "14 AWG",
          "unknown",
          "with live companion",
          "1500 W",
          "1,5",
          "a,b",
          "[x]",
          "{y}",
          "*a",
          "&a",
          "!t",
          "%d",
          "@x",
          "`y`",
          "- dash",
          "? what",
          "\ud83d\udd0c",
          "\\",
          "|",
          ">",
          "name",
          "loads",
          "high",
          "low",
          "dmm",
          "load-meter",
          "true",
          "V",
          "1500  W",
          "<<",
          "=",
          "kind",
          "ft",
          "±20 %",
          "?",
          "#14",
          "1/0");

  private final Random random;

  DrawnCase(long seed) {
    random = new Random(seed);
  }

  CaseFile caseFile() {
    Supply supply = random.nextBoolean() ? Supply.NORTH_AMERICA_120 : new Supply(real(20, 400), 50);
    Circuit circuit = circuit(supply);
    return new CaseFile(one(NAMES), circuit, survey(circuit), assumptions(), List.of());
  }

  private Circuit circuit(Supply supply) {
    List<String> names =
        names(2 + random.nextInt(7)).stream().filter(name -> !name.contains("/")).toList();
    if (names.size() < 2) {
      names = List.of("panel", "hall-1");
    }
    List<Box> boxes = new ArrayList<>();
    List<Cable> cables = new ArrayList<>();
    boolean wild = random.nextInt(3) == 0;
    boxes.add(wild ? box(names.get(0), BoxKind.PANEL) : Box.panel(names.get(0)));
    for (int i = 1; i < names.size(); i++) {
      BoxKind kind = random.nextInt(4) == 0 ? BoxKind.JUNCTION : BoxKind.RECEPTACLE;
      Box box = wild ? box(names.get(i), kind) : ordinary(names.get(i), kind);
      boxes.add(random.nextInt(5) == 0 ? box.opening(OptionalDouble.of(real(1, 100))) : box);
      int from = random.nextInt(3) == 0 ? random.nextInt(i) : i - 1;
      cables.add(cable(names.get(from), names.get(i)));
    }
    if (names.size() > 3 && random.nextInt(3) == 0) {
      addRing(names, cables);
    }
    Circuit circuit = new Circuit(supply, real(1, 100), boxes, cables);
    return random.nextInt(4) == 0 ? circuit.inWetSurroundings() : circuit;
  }

  private void addRing(List<String> names, List<Cable> cables) {
    String one = one(names);
    String other = one(names);
    Set<String> pair = Set.copyOf(List.of(one, other));
    boolean taken =
        cables.stream().anyMatch(cable -> Set.of(cable.from(), cable.to()).equals(pair));
    if (!one.equals(other) && !taken) {
      cables.add(cable(one, other));
    }
  }

  private Box box(String name, BoxKind kind) {
    return new Box(name, kind, one(List.of(DeviceWiring.values())), joint(), joint());
  }

  private Box ordinary(String name, BoxKind kind) {
    if (kind == BoxKind.JUNCTION) {
      return Box.junction(name);
    }
    return random.nextBoolean() ? Box.pigtail(name) : Box.feedThrough(name, joint());
  }

  private JointKind joint() {
    return one(List.copyOf(Vocabulary.JOINTS.values()));
  }

  private Cable cable(String from, String to) {
    OptionalDouble length =
        switch (random.nextInt(4)) {
          case 0 -> OptionalDouble.empty();
          case 1 -> OptionalDouble.of((1 + random.nextInt(300)) * 0.3048);
          case 2 -> OptionalDouble.of((1 + random.nextInt(300)) / 10.0);
          default -> OptionalDouble.of(real(0.05, 1000));
        };
    OptionalDouble tolerance =
        random.nextInt(4) == 0 ? OptionalDouble.of(real(0.01, 1)) : OptionalDouble.empty();
    Companion companion = random.nextInt(5) == 0 ? Companion.LIVE : Companion.NONE;
    return new Cable(from, to, length, tolerance, conductor(), companion);
  }

  private Conductor conductor() {
    ConductorSize size =
        random.nextInt(4) == 0
            ? one(ConductorSize.all())
            : ConductorSize.parse("14 AWG").orElseThrow();
    try {
      return new Conductor(size, one(List.of(ConductorMaterial.values())));
    } catch (IllegalArgumentException unlisted) {
      return new Conductor(size, ConductorMaterial.COPPER);
    }
  }

  private Survey survey(Circuit circuit) {
    List<Meter> meters = names(random.nextInt(4)).stream().map(this::meter).toList();
    List<Load> loads = names(random.nextInt(4)).stream().map(name -> load(name, circuit)).toList();
    List<Test> tests = new ArrayList<>();
    Set<String> taken = new LinkedHashSet<>();
    for (int i = random.nextInt(5); i > 0; i--) {
      List<LoadInUse> uses = uses(circuit, loads);
      String text = usualName(uses);
      String name = taken.contains(text) || random.nextInt(4) == 0 ? one(NAMES) : text;
      if (!name.isBlank() && taken.add(name)) {
        tests.add(new Test(name, uses, readings(circuit, meters)));
      }
    }
    Survey survey = new Survey(meters, loads, tests);
    for (int i = random.nextInt(4); i > 0; i--) {
      List<String> places = new ArrayList<>(circuit.boxes().stream().map(Box::name).toList());
      places.add(Finding.SUPPLY);
      survey = survey.with(new Finding(one(places), one(List.of(Finding.State.values()))));
    }
    return survey;
  }

  private Meter meter(String name) {
    if (random.nextBoolean()) {
      return random.nextBoolean() ? Meter.highImpedance(name) : Meter.lowImpedance(name);
    }
    Accuracy accuracy = new Accuracy(real(0, 0.1), random.nextInt(10));
    return new Meter(name, real(100, 1e8), real(0, 1e-9), accuracy, one(List.of(1.0, 0.1, 0.01)));
  }

  private Load load(String name, Circuit circuit) {
    double volts = random.nextBoolean() ? circuit.supply().volts() : real(100, 250);
    double share = random.nextBoolean() ? ElectronicLoad.USUAL_CUT_OUT_SHARE : real(0.1, 1);
    return switch (random.nextInt(6)) {
      case 0 -> new FilamentLamp(name, real(1, 500), volts);
      case 1 -> new ElectronicLoad(name, real(1, 500), volts, share);
      case 2 -> new Motor(name, real(50, 2000), volts, real(0.3, 1), real(0.5, 1));
      case 3 -> new KnownCurrent(name, real(0.1, 20), volts);
      case 4 -> new NameplateCurrent(name, real(0.1, 20), volts);
      default -> new HeatingElement(name, real(1, 5000), volts);
    };
  }

  private List<LoadInUse> uses(Circuit circuit, List<Load> loads) {
    List<String> receptacles =
        circuit.boxes().stream().filter(Box::hasReceptacle).map(Box::name).toList();
    List<LoadInUse> uses = new ArrayList<>();
    if (!receptacles.isEmpty() && !loads.isEmpty()) {
      for (int i = random.nextInt(3); i > 0; i--) {
        uses.add(new LoadInUse(one(loads).name(), one(receptacles)));
      }
    }
    return uses;
  }

  private static String usualName(List<LoadInUse> uses) {
    return uses.isEmpty()
        ? "idle"
        : String.join(" + ", uses.stream().map(use -> use.load() + " at " + use.box()).toList());
  }

  private List<Reading> readings(Circuit circuit, List<Meter> meters) {
    List<Reading> readings = new ArrayList<>();
    if (!meters.isEmpty()) {
      for (int i = random.nextInt(4); i > 0; i--) {
        ConductorRole first = one(Cable.USUAL);
        ConductorRole second = one(Cable.USUAL);
        double most = circuit.supply().volts() * 1.4;
        double volts = random.nextBoolean() ? Math.round(real(0, most) * 10) / 10.0 : real(0, most);
        if (first != second) {
          readings.add(
              new Reading(
                  one(circuit.boxes()).name(),
                  new ProbePoints(first, second),
                  one(meters).name(),
                  volts));
        }
      }
    }
    return readings;
  }

  private Assumptions assumptions() {
    Assumptions assumptions = Assumptions.defaults();
    for (int i = random.nextInt(4); i > 0; i--) {
      Assumption assumption = one(List.of(Assumption.values()));
      double value = assumptions.value(assumption) * real(0.9, 1.0);
      assumptions = assumptions.with(assumption, value);
    }
    return assumptions;
  }

  private List<String> names(int count) {
    Set<String> names = new LinkedHashSet<>();
    while (names.size() < count) {
      names.add(random.nextBoolean() ? "box-" + random.nextInt(50) : one(NAMES));
    }
    return names.stream().filter(name -> !name.isBlank()).toList();
  }

  private <T> T one(List<T> of) {
    return of.get(random.nextInt(of.size()));
  }

  /** Of up to seven digits, as people write numbers, or of all digits. */
  private double real(double least, double most) {
    double value = least + random.nextDouble() * (most - least);
    return random.nextBoolean() ? value : Math.max(least, (float) value);
  }
}
