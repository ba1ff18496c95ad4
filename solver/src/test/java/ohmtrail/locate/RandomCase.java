package ohmtrail.locate;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Random;
import ohmtrail.circuit.Box;
import ohmtrail.circuit.Cable;
import ohmtrail.circuit.Circuit;
import ohmtrail.circuit.Joint;
import ohmtrail.circuit.JointKind;
import ohmtrail.circuit.JointRole;
import ohmtrail.circuit.Supply;
import ohmtrail.reference.Assumption;
import ohmtrail.reference.Assumptions;
import ohmtrail.reference.Conductor;
import ohmtrail.reference.ConductorMaterial;
import ohmtrail.reference.ConductorSize;
import ohmtrail.survey.LoadInUse;
import ohmtrail.survey.Meter;
import ohmtrail.survey.ProbePoints;
import ohmtrail.survey.Reading;
import ohmtrail.survey.Survey;
import ohmtrail.survey.Test;
import ohmtrail.survey.load.HeatingElement;
import ohmtrail.survey.load.Load;

/**
 * A small circuit, a fault drawn from the prior, and readings of it with everything that is known
 * only roughly drawn from its tolerance: all from one seed. In every fifth case one reading is
 * wrong, in every twenty-fifth two are.
 */
record RandomCase(long seed, Circuit circuit, Survey survey, BruteForceFault fault, int wrong) {
  private static final double LEAST_OHMS = 0.05;
  private static final double MOST_OHMS = 1e5;
  private static final double UNKNOWN_LENGTH_SHARE = 0.15;
  private static final double LIVE_COMPANION_SHARE = 0.1;
  private static final List<String> NAMES = List.of("hall", "bath", "den", "porch");

  static RandomCase of(long seed, Assumptions assumptions) {
    Maker maker = new Maker(seed, assumptions);
    Circuit circuit = maker.circuit();
    return maker.make(circuit, maker.plan(circuit));
  }

  /** The same of a circuit with a switch and what it switches. */
  static RandomCase switched(long seed, Assumptions assumptions) {
    Maker maker = new Maker(seed, assumptions);
    SwitchedPlan drawn = new SwitchedPlan(maker.random, maker.american);
    Circuit circuit = drawn.circuit();
    return maker.make(circuit, drawn.survey(circuit));
  }

  /** What to print beside a failure. */
  String description() {
    return "seed "
        + seed
        + ", "
        + (circuit.boxes().size() - 1)
        + " boxes, "
        + survey.readingCount()
        + " readings ("
        + wrong
        + " wrong), true fault "
        + (fault.joint().isEmpty() ? "none" : fault.joint() + " " + fault.ohms() + " ohm");
  }

  private static final class Maker {
    private final long seed;
    private final Assumptions assumptions;
    private final Random random;
    private final boolean american;

    Maker(long seed, Assumptions assumptions) {
      this.seed = seed;
      this.assumptions = assumptions;
      this.random = new Random(seed);
      this.random.nextInt();
      this.american = random.nextBoolean();
    }

    RandomCase make(Circuit circuit, Survey plan) {
      BruteForceFault fault = fault(circuit);
      int wrong = seed % 25 == 24 ? 2 : seed % 5 == 4 ? 1 : 0;
      return new RandomCase(seed, circuit, taken(circuit, plan, fault, wrong), fault, wrong);
    }

    private Circuit circuit() {
      int count = 2 + random.nextInt(3);
      boolean tee = count > 2 && random.nextBoolean();
      Conductor conductor =
          new Conductor(
              ConductorSize.parse(american ? "14 AWG" : "2.5 mm2").orElseThrow(),
              ConductorMaterial.COPPER);
      List<Box> boxes = new ArrayList<>(List.of(Box.panel("panel")));
      List<Cable> cables = new ArrayList<>();
      for (int k = 0; k < count; k++) {
        boxes.add(box(NAMES.get(k), tee && k == 0));
        String from = k == 0 ? "panel" : tee && k == 2 ? NAMES.get(0) : NAMES.get(k - 1);
        cables.add(cable(from, NAMES.get(k), conductor));
      }
      return new Circuit(
          american ? Supply.NORTH_AMERICA_120 : Supply.IEC_230, american ? 15 : 16, boxes, cables);
    }

    private Box box(String name, boolean mayBeJunction) {
      if (mayBeJunction && random.nextInt(3) == 0) {
        return Box.junction(name);
      }
      return switch (random.nextInt(3)) {
        case 0 -> Box.pigtail(name);
        case 1 -> Box.feedThrough(name, JointKind.PUSH_IN);
        default -> Box.feedThrough(name, JointKind.SCREW);
      };
    }

    private Cable cable(String from, String to, Conductor conductor) {
      boolean known = random.nextDouble() >= UNKNOWN_LENGTH_SHARE;
      boolean live = random.nextDouble() < LIVE_COMPANION_SHARE;
      return new Cable(
          from,
          to,
          known ? OptionalDouble.of(3 + random.nextInt(12)) : OptionalDouble.empty(),
          OptionalDouble.empty(),
          conductor,
          live ? Cable.Companion.LIVE : Cable.Companion.NONE);
    }

    /** Which readings are taken; their volts are all zero. */
    private Survey plan(Circuit circuit) {
      List<String> receptacles =
          circuit.boxes().stream().filter(Box::hasReceptacle).map(Box::name).toList();
      Load heater =
          american
              ? new HeatingElement("heater", 1500, 120)
              : new HeatingElement("heater", 2000, 230);
      List<Test> tests = new ArrayList<>();
      int testCount = 2 + random.nextInt(3);
      int readings = 4 + random.nextInt(7);
      for (int t = 0; t < testCount; t++) {
        int share = readings / testCount + (t < readings % testCount ? 1 : 0);
        boolean idle = t == 0 || (t == 2 && random.nextBoolean());
        boolean loaded = t == 1 || t == 3;
        List<LoadInUse> loads =
            loaded
                ? List.of(
                    new LoadInUse(
                        heater.name(),
                        t == 1 ? receptacles.get(receptacles.size() - 1) : pick(receptacles)))
                : List.of();
        String meter = idle || loaded ? "high" : "low";
        List<Reading> taken = new ArrayList<>();
        for (int r = 0; r < share; r++) {
          taken.add(new Reading(pick(receptacles), points(), meter, 0));
        }
        tests.add(new Test("test " + (t + 1), loads, taken));
      }
      return new Survey(
          List.of(Meter.highImpedance("high"), Meter.lowImpedance("low")), List.of(heater), tests);
    }

    private <T> T pick(List<T> from) {
      return from.get(random.nextInt(from.size()));
    }

    private ProbePoints points() {
      return switch (random.nextInt(6)) {
        case 0 -> ProbePoints.HOT_GROUND;
        case 1 -> ProbePoints.NEUTRAL_GROUND;
        default -> ProbePoints.HOT_NEUTRAL;
      };
    }

    private BruteForceFault fault(Circuit circuit) {
      if (random.nextDouble() < assumptions.value(Assumption.HEALTHY_PRIOR)) {
        return BruteForceFault.HEALTHY;
      }
      List<Joint> joints =
          circuit.joints().stream().filter(joint -> joint.role() != JointRole.SUPPLY).toList();
      double left =
          random.nextDouble()
              * joints.stream().mapToDouble(joint -> joint.weight(assumptions)).sum();
      String chosen = joints.get(joints.size() - 1).id();
      for (Joint joint : joints) {
        left -= joint.weight(assumptions);
        if (left < 0) {
          chosen = joint.id();
          break;
        }
      }
      if (random.nextDouble() < assumptions.value(Assumption.OPEN_SHARE)) {
        return BruteForceFault.open(chosen);
      }
      double ohms = LEAST_OHMS * Math.pow(MOST_OHMS / LEAST_OHMS, random.nextDouble());
      return new BruteForceFault(chosen, ohms);
    }

    private Survey taken(Circuit circuit, Survey plan, BruteForceFault fault, int wrong) {
      BruteForceModel model = new BruteForceModel(circuit, plan, assumptions);
      double[] u = new double[model.parameterCount()];
      for (int k = 0; k < u.length; k++) {
        u[k] = random.nextGaussian();
      }
      model.evaluate(fault, u);
      double[] shown = model.volts.clone();
      for (int r = 0; r < shown.length; r++) {
        shown[r] += Math.sqrt(model.variance[r]) * random.nextGaussian();
      }
      for (int w = 0; w < wrong; w++) {
        // Two different ones: in the first and in the last half.
        int half = shown.length / 2;
        int place = w * half + random.nextInt(half);
        shown[place] = 1.25 * circuit.supply().volts() * random.nextDouble();
      }
      return withVolts(plan, shown);
    }

    private static Survey withVolts(Survey plan, double[] shown) {
      List<Test> tests = new ArrayList<>();
      int next = 0;
      for (Test test : plan.tests()) {
        List<Reading> readings = new ArrayList<>();
        for (Reading reading : test.readings()) {
          double rounded = Math.round(Math.abs(shown[next++]) * 10) / 10.0;
          readings.add(reading.showing(rounded));
        }
        tests.add(test.withReadings(readings));
      }
      return plan.withTests(tests);
    }
  }
}
