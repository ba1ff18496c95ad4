package ohmtrail.practice.search;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import ohmtrail.advise.Advisor;
import ohmtrail.advise.Choice;
import ohmtrail.advise.Situation;
import ohmtrail.advise.Timetable;
import ohmtrail.advise.TrueHarm;
import ohmtrail.advise.safety.Harm;
import ohmtrail.circuit.Box;
import ohmtrail.circuit.BoxKind;
import ohmtrail.circuit.Cable;
import ohmtrail.circuit.Circuit;
import ohmtrail.circuit.ConductorRole;
import ohmtrail.circuit.DeviceWiring;
import ohmtrail.circuit.Joint;
import ohmtrail.circuit.JointKind;
import ohmtrail.circuit.Supply;
import ohmtrail.practice.LiveCircuit;
import ohmtrail.practice.Population;
import ohmtrail.practice.Practice;
import ohmtrail.practice.PracticeCase;
import ohmtrail.predict.Degradation;
import ohmtrail.reference.Assumptions;
import ohmtrail.reference.Conductor;
import ohmtrail.reference.ConductorMaterial;
import ohmtrail.reference.ConductorSize;
import ohmtrail.reference.Minutes;
import ohmtrail.survey.Finding;
import ohmtrail.survey.LoadInUse;
import ohmtrail.survey.Measurand;
import ohmtrail.survey.Meter;
import ohmtrail.survey.Reading;
import ohmtrail.survey.Survey;
import ohmtrail.survey.Test;
import ohmtrail.survey.load.HeatingElement;

/**
 * Searches as advised on circuits drawn by chance, each test held against every harm under the
 * truth. The kinds and what is wrong with the file come round by number.
 */
final class HarmlessSearch {
  private static final List<String> POPULATIONS =
      List.of(
          "loose",
          "loose-every-meter",
          "open",
          "charred",
          "loose-230",
          "two-leg",
          "ring",
          "unstable",
          "two-joints",
          "ground-too",
          "weak-heater");

  private static final int WIRED_IN = POPULATIONS.size();
  private static final int KINDS = WIRED_IN + 1;
  private static final int MOST_STEPS = 12;
  private static final double MOVED = 0.97;
  private static final double[] OHMS = {0.2, 0.9, 3, 12, 60, 900, Double.POSITIVE_INFINITY};

  /** What the file does not know of the first or of every later test. */
  private enum Slip {
    NONE,
    LOAD_OFF,
    SUPPLY_MOVED
  }

  private final long seed;
  private final Map<Harm, Integer> checked = new EnumMap<>(Harm.class);
  private final List<String> harmful = new ArrayList<>();

  HarmlessSearch(long seed) {
    this.seed = seed;
  }

  /** Plays the searches from one number on, up to another one that is not played. */
  void play(int from, int to) {
    IntStream.range(from, to).parallel().forEach(this::playOne);
  }

  /** What each harmful test did, with the number of its search. */
  List<String> harmful() {
    return List.copyOf(harmful);
  }

  /** How often each harm was looked for at a moment of a test. */
  Map<Harm, Integer> checked() {
    return checked;
  }

  private void playOne(int number) {
    Slip slip = Slip.values()[(number / KINDS) % Slip.values().length];
    PracticeCase drawn = drawn(number);
    LiveCircuit live = new LiveCircuit(drawn, seed + number);
    Timetable timetable = new Timetable(drawn.circuit(), Minutes.defaults(), drawn.assumptions());
    Advisor advisor = new Advisor(drawn.circuit(), drawn.assumptions(), Minutes.defaults());
    Survey survey = live.equipment();
    Situation situation = Situation.START;
    for (int step = 0; step < MOST_STEPS; step++) {
      Choice choice = advisor.next(survey, situation).best().choice();
      if (choice instanceof Choice.Read read) {
        List<Test> tests = new ArrayList<>(survey.tests());
        for (Test test : read.tests()) {
          note(number, slip, live, timetable, read, test);
          tests.add(slipped(slip, live, test, tests.size()));
        }
        survey = survey.withTests(tests);
      } else if (choice instanceof Choice.Open open && !live.showsInside(open.box())) {
        survey = survey.with(new Finding(open.box(), Finding.State.FINE));
      } else if (choice.equals(new Choice.Stop(Choice.Stop.Reason.CALL_UTILITY))) {
        survey = survey.with(new Finding(Finding.SUPPLY, Finding.State.FINE));
      } else {
        return;
      }
      situation = timetable.after(choice, situation);
    }
  }

  /** The load is taken to be on all the same: what it does then is what must not be done. */
  private void note(
      int number, Slip slip, LiveCircuit live, Timetable timetable, Choice.Read read, Test test) {
    List<TrueHarm.Looked> looked =
        TrueHarm.of(
            live.circuit(),
            live.equipment(),
            live.assumptions(),
            live.truePoint(),
            live.degraded(),
            timetable,
            read,
            test);
    synchronized (this) {
      for (TrueHarm.Looked each : looked) {
        checked.merge(each.harm(), 1, Integer::sum);
        if (each.isDone()) {
          harmful.add("search " + number + ", " + slip + ": " + each + " by " + read);
        }
      }
    }
  }

  private static Test slipped(Slip slip, LiveCircuit live, Test test, int before) {
    if (slip == Slip.LOAD_OFF && before == 0 && !test.loads().isEmpty()) {
      Test off = new Test(test.name(), List.of(), test.readings());
      boolean clamped =
          test.readings().stream().anyMatch(each -> each.measurand() == Measurand.CURRENT);
      return clamped ? live.take(test) : test.withReadings(live.take(off).readings());
    }
    Test taken = live.take(test);
    return slip == Slip.SUPPLY_MOVED && before > 0
        ? taken.withReadings(taken.readings().stream().map(HarmlessSearch::moved).toList())
        : taken;
  }

  private static Reading moved(Reading reading) {
    return reading.measurand() == Measurand.VOLTAGE
        ? reading.showing(MOVED * reading.value())
        : reading;
  }

  private PracticeCase drawn(int number) {
    int kind = number % KINDS;
    if (kind == WIRED_IN) {
      return wiredIn(number);
    }
    Population population = Population.named(POPULATIONS.get(kind)).orElseThrow();
    PracticeCase drawn = new Practice(population, Assumptions.defaults(), seed).caseOf(number);
    return number % 2 == 0
        ? drawn
        : new PracticeCase(
            drawn.circuit().inWetSurroundings(),
            drawn.survey(),
            drawn.assumptions(),
            drawn.truth());
  }

  /** A wall heater behind its switch, beside two receptacles; any joint, any of the ohms. */
  private PracticeCase wiredIn(int number) {
    Conductor copper =
        new Conductor(ConductorSize.parse("12 AWG").orElseThrow(), ConductorMaterial.COPPER);
    List<ConductorRole> switched =
        List.of(ConductorRole.NEUTRAL, ConductorRole.GROUND, ConductorRole.SWITCHED);
    Box heater =
        new Box(
            "heater", BoxKind.APPLIANCE, DeviceWiring.PIGTAIL, JointKind.SCREW, JointKind.WIRE_NUT);
    Circuit circuit =
        new Circuit(
            Supply.NORTH_AMERICA_120,
            20,
            List.of(
                Box.panel("panel"),
                Box.feedThrough("hall", JointKind.SCREW),
                Box.feedThrough("landing", JointKind.PUSH_IN),
                Box.switchWith("switch", JointKind.SCREW),
                heater),
            List.of(
                Cable.of("panel", "hall", 9, copper),
                Cable.of("hall", "landing", 5, copper),
                Cable.of("hall", "switch", 4, copper),
                Cable.of("switch", "heater", 3, copper).with(switched)));
    Survey blank =
        new Survey(
            List.of(
                Meter.highImpedance("high"),
                Meter.lowImpedance("low"),
                Meter.usual("loop", Measurand.LOOP_IMPEDANCE)),
            List.of(
                new HeatingElement("wall heater", 1500, 120), new HeatingElement("iron", 900, 120)),
            List.of(),
            List.of(),
            List.of(new LoadInUse("wall heater", "heater")));
    List<Joint> joints = circuit.joints();
    Joint joint = joints.get((int) ((seed + 7L * number) % joints.size()));
    double ohms = OHMS[number / KINDS % OHMS.length];
    return PracticeCase.staged(
        circuit,
        blank,
        List.of(new Degradation(joint.id(), ohms)),
        Assumptions.defaults(),
        seed + number);
  }
}
