package ohmtrail.map.evidence;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import ohmtrail.circuit.Circuit;
import ohmtrail.circuit.ConductorRole;
import ohmtrail.circuit.Joint;
import ohmtrail.circuit.JointRole;
import ohmtrail.map.known.MapProblem;
import ohmtrail.map.tree.RunNodes;
import ohmtrail.map.tree.RunTree;
import ohmtrail.reference.Assumption;
import ohmtrail.reference.Assumptions;
import ohmtrail.survey.Finding;

/**
 * How likely each place of a map is to have the bad joint before any reading, what was seen in open
 * boxes taken in. The joints of a box are of one kind for all its cables. Immutable.
 */
final class JointPriors {
  /** By node, then hot and neutral: one joint of the run in that box. */
  private final double[][] run;

  private final double[][] tails;
  private final double[] supply;
  private final double[] ground;
  private final double groundTails;
  private final double soundPrior;
  private final double[] ifBad;
  private final double[] ifSound;
  private final double supplyIfBad;
  private final double supplyIfSound;
  private final boolean tellsConductors;

  private JointPriors(
      MapProblem problem, Circuit circuit, RunNodes nodes, boolean tellsConductors) {
    Assumptions assumptions = problem.assumptions();
    int count = nodes.count();
    this.tellsConductors = tellsConductors;
    this.run = new double[count][2];
    this.tails = new double[count][2];
    this.supply = new double[2];
    this.ground = new double[count];
    this.ifBad = new double[count];
    this.ifSound = new double[count];
    this.soundPrior = assumptions.value(Assumption.HEALTHY_PRIOR);
    double others = 0;
    for (int node = 0; node < count; node++) {
      String name = nodes.name(node);
      for (Joint joint : circuit.jointsIn(name)) {
        int conductor = joint.conductor() == ConductorRole.NEUTRAL ? 1 : 0;
        double weight = joint.weight(assumptions);
        boolean isRun = joint.role() == (node == 0 ? JointRole.OUTGOING : JointRole.INCOMING);
        if (joint.role() == JointRole.SUPPLY) {
          supply[conductor] += weight;
        } else if (joint.conductor() == ConductorRole.GROUND) {
          ground[node] = isRun ? weight : ground[node];
          others += isRun || joint.role() == JointRole.OUTGOING ? 0 : weight;
        } else if (isRun) {
          run[node][conductor] = weight;
        } else if (joint.role() != JointRole.OUTGOING) {
          tails[node][conductor] += weight;
        }
      }
      if (nodes.isHidden(node)) {
        run[node][0] = assumptions.value(Assumption.WEIGHT_WIRE_NUT);
        run[node][1] = run[node][0];
      }
      Optional<Finding.State> seen = seen(problem, name);
      ifBad[node] = ifBad(seen, assumptions);
      ifSound[node] = ifSound(seen, assumptions);
    }
    this.groundTails = others;
    this.supplyIfBad = ifBad(seen(problem, Finding.SUPPLY), assumptions);
    this.supplyIfSound = ifSound(seen(problem, Finding.SUPPLY), assumptions);
  }

  /**
   * The priors of a problem.
   *
   * @param circuit any circuit with the boxes of the run
   * @param tellsConductors whether a reading tells a bad hot from a bad neutral
   */
  static JointPriors of(
      MapProblem problem, Circuit circuit, RunNodes nodes, boolean tellsConductors) {
    return new JointPriors(problem, circuit, nodes, tellsConductors);
  }

  private static Optional<Finding.State> seen(MapProblem problem, String place) {
    return problem.survey().findings().stream()
        .filter(finding -> finding.place().equals(place))
        .map(Finding::state)
        .findFirst();
  }

  private static double ifBad(Optional<Finding.State> seen, Assumptions assumptions) {
    double missed = assumptions.value(Assumption.MISSED_BY_LOOKING);
    return seen.map(
            state ->
                switch (state) {
                  case FINE, REMADE -> missed;
                  case BURNT -> 1 - missed;
                  case OUT_OF_REACH -> 1.0;
                })
        .orElse(1.0);
  }

  private static double ifSound(Optional<Finding.State> seen, Assumptions assumptions) {
    double alarm = assumptions.value(Assumption.FALSE_ALARM);
    return seen.map(
            state ->
                switch (state) {
                  case FINE, REMADE -> 1 - alarm;
                  case BURNT -> alarm;
                  case OUT_OF_REACH -> 1.0;
                })
        .orElse(1.0);
  }

  private double allSound() {
    double product = supplyIfSound;
    for (double each : ifSound) {
      product *= each;
    }
    return product;
  }

  /** Logarithm of the prior that nothing is bad, and what was seen came of that. */
  double logSound() {
    return Math.log(soundPrior * allSound());
  }

  /** The places of a map, each with its prior, both ends of a cable apart. */
  List<PlacePrior> places(RunTree tree) {
    List<PlacePrior> places = new ArrayList<>();
    double total = supply[0] + supply[1] + groundTails;
    for (int node = 1; node < tree.size(); node++) {
      if (tree.isPresent(node)) {
        int feeder = tree.parent(node);
        total += run[node][0] + run[node][1] + run[feeder][0] + run[feeder][1];
        total += tails[node][0] + tails[node][1] + ground[node] + ground[feeder];
      }
    }
    double scale = (1 - soundPrior) / total * allSound();
    for (int node = 1; node < tree.size(); node++) {
      if (tree.isPresent(node) && run[node][0] > 0) {
        int feeder = tree.parent(node);
        double near = scale * ifBad[feeder] / ifSound[feeder];
        double far = scale * ifBad[node] / ifSound[node];
        add(places, JointPlace.Part.CABLE, node, run[feeder], near, run[node], far);
        add(places, JointPlace.Part.TAIL, node, tails[node], 0, tails[node], far);
      }
    }
    double before = scale * supplyIfBad / supplyIfSound;
    add(places, JointPlace.Part.SUPPLY, 0, supply, 0, supply, before);
    return places;
  }

  private void add(
      List<PlacePrior> places,
      JointPlace.Part part,
      int node,
      double[] near,
      double nearScale,
      double[] far,
      double farScale) {
    double[] nears = {near[0] * nearScale, near[1] * nearScale};
    double[] fars = {far[0] * farScale, far[1] * farScale};
    if (tellsConductors) {
      addIfAny(places, new JointPlace(part, node, JointPlace.Conductor.HOT), nears[0], fars[0]);
      addIfAny(places, new JointPlace(part, node, JointPlace.Conductor.NEUTRAL), nears[1], fars[1]);
    } else {
      addIfAny(
          places,
          new JointPlace(part, node, JointPlace.Conductor.EITHER),
          nears[0] + nears[1],
          fars[0] + fars[1]);
    }
  }

  private static void addIfAny(List<PlacePrior> places, JointPlace place, double near, double far) {
    if (near + far > 0) {
      places.add(new PlacePrior(place, near, far));
    }
  }
}
