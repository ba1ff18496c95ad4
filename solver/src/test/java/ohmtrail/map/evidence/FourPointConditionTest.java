package ohmtrail.map.evidence;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import ohmtrail.circuit.Box;
import ohmtrail.circuit.Circuit;
import ohmtrail.circuit.JointKind;
import ohmtrail.circuit.Supply;
import ohmtrail.map.known.CableKind;
import ohmtrail.map.known.MapProblem;
import ohmtrail.map.known.Outlet;
import ohmtrail.map.known.UnknownRun;
import ohmtrail.map.tree.RunNodes;
import ohmtrail.map.tree.RunTree;
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

/**
 * What the model predicts are path lengths of a tree: of d(i,j) + d(k,l), d(i,k) + d(j,l) and
 * d(i,l) + d(j,k) the two greatest are equal (the four-point condition, Buneman 1971, from memory).
 */
class FourPointConditionTest {
  private static final double VOLTS = 120;
  private static final int BOXES = 6;

  @Property(tries = 60)
  void readingsWithAHeaterAtEveryBoxAreLengthsOfATree(@ForAll @IntRange(max = 1_000_000) int seed) {
    Random random = new Random(seed);
    MapProblem problem = problem();
    RunNodes nodes = RunNodes.of(problem.run());
    int[] parents = new int[BOXES + 1];
    for (int node = 1; node <= BOXES; node++) {
      parents[node] = random.nextInt(node);
    }
    RunTree tree = RunTree.of(parents);
    Circuit circuit = problem.run().circuit(nodes.map(tree), problem.assumptions());
    ReducedSurvey survey = ReducedSurvey.of(problem, circuit, nodes);
    RunModel model =
        new RunModel(survey, CableBelief.of(problem, circuit, nodes), VOLTS, nodes.count());
    model.on(tree);
    Arrays.fill(model.loadFactors, 1);
    model.source = 0.1;
    for (int node = 1; node <= BOXES; node++) {
      model.hot[node] = Math.exp(3 * random.nextGaussian() - 2);
      model.neutral[node] = Math.exp(3 * random.nextGaussian() - 2);
    }
    model.predict();

    double[][] shared = shared(model.values);
    double[][] lengths = new double[BOXES][BOXES];
    for (int i = 0; i < BOXES; i++) {
      for (int j = 0; j < BOXES; j++) {
        lengths[i][j] = i == j ? 0 : shared[i][i] + shared[j][j] - 2 * shared[i][j];
      }
    }
    for (int i = 0; i < BOXES; i++) {
      for (int j = i + 1; j < BOXES; j++) {
        for (int k = j + 1; k < BOXES; k++) {
          for (int l = k + 1; l < BOXES; l++) {
            double[] sums = {
              lengths[i][j] + lengths[k][l],
              lengths[i][k] + lengths[j][l],
              lengths[i][l] + lengths[j][k]
            };
            Arrays.sort(sums);
            assertEquals(sums[2], sums[1], 1e-7 * (1 + sums[2]), "seed " + seed);
          }
        }
      }
    }
  }

  /** The drop at j over the current of the heater at h, which its own voltage tells. */
  private static double[][] shared(double[] volts) {
    double siemens = 1500 / (VOLTS * VOLTS);
    double[][] shared = new double[BOXES][BOXES];
    for (int heater = 0; heater < BOXES; heater++) {
      double amperes = siemens * volts[heater * BOXES + heater];
      for (int box = 0; box < BOXES; box++) {
        shared[heater][box] = (VOLTS - volts[heater * BOXES + box]) / amperes;
      }
    }
    return shared;
  }

  private static MapProblem problem() {
    List<Outlet> outlets = new ArrayList<>();
    List<Test> tests = new ArrayList<>();
    for (int box = 1; box <= BOXES; box++) {
      outlets.add(Outlet.unknown(Box.feedThrough("box-" + box, JointKind.SCREW)));
    }
    for (int heater = 1; heater <= BOXES; heater++) {
      List<Reading> readings = new ArrayList<>();
      for (int box = 1; box <= BOXES; box++) {
        readings.add(new Reading("box-" + box, ProbePoints.HOT_NEUTRAL, "meter", VOLTS));
      }
      tests.add(
          new Test(
              "heater at " + heater, List.of(new LoadInUse("heater", "box-" + heater)), readings));
    }
    UnknownRun run =
        UnknownRun.of(
            Supply.NORTH_AMERICA_120,
            15,
            Box.panel("panel"),
            outlets,
            CableKind.of(
                new Conductor(
                    ConductorSize.parse("14 AWG").orElseThrow(), ConductorMaterial.COPPER)));
    return new MapProblem(
        run,
        new Survey(
            List.of(Meter.highImpedance("meter")),
            List.of(new HeatingElement("heater", 1500, VOLTS)),
            tests),
        Assumptions.defaults());
  }
}
