package ohmtrail.map.evidence;

import ohmtrail.circuit.Cable;
import ohmtrail.circuit.Circuit;
import ohmtrail.circuit.ConductorRole;
import ohmtrail.circuit.Joint;
import ohmtrail.map.known.MapProblem;
import ohmtrail.map.tree.RunNodes;
import ohmtrail.reference.Assumption;
import ohmtrail.reference.Assumptions;

/**
 * What is believed of the sound resistance of every cable that there may be, one conductor with the
 * joints at its ends: lognormal, with mean and variance of the sum of its parts. Immutable.
 */
final class CableBelief {
  private static final int JOINTS_OF_A_CONDUCTOR = 2;

  /** Hot and neutral of a cable are of one length; the joints of either are their own. */
  private static final int CONDUCTORS = 2;

  private final double[][] ohms;
  private final double[][] sigmas;
  private final double[][] ohmsPerMetre;
  private final double[] tailOhms;
  private final double[] tailVariance;
  private final double jointOhms;

  private CableBelief(int nodes, double jointOhms) {
    this.ohms = new double[nodes][nodes];
    this.sigmas = new double[nodes][nodes];
    this.ohmsPerMetre = new double[nodes][nodes];
    this.tailOhms = new double[nodes];
    this.tailVariance = new double[nodes];
    this.jointOhms = jointOhms;
  }

  /**
   * Works it out for every two nodes.
   *
   * @param circuit any circuit with the boxes of the run
   */
  static CableBelief of(MapProblem problem, Circuit circuit, RunNodes nodes) {
    Assumptions assumptions = problem.assumptions();
    double spread = assumptions.value(Assumption.HEALTHY_JOINT_SPREAD);
    double joint =
        assumptions.value(Assumption.HEALTHY_JOINT_OHMS) * Math.exp(0.5 * spread * spread);
    double jointVariance = joint * joint * Math.expm1(spread * spread);
    CableBelief belief = new CableBelief(nodes.count(), joint);
    for (int box = 1; box < nodes.count(); box++) {
      for (int feeder = 0; feeder < nodes.count(); feeder++) {
        if (feeder != box && !nodes.isAnotherCircuit(box)) {
          int from = nodes.isAnotherCircuit(feeder) ? 0 : feeder;
          Cable cable = problem.run().cable(nodes.name(from), nodes.name(box), assumptions);
          belief.add(feeder, box, cable, assumptions, jointVariance);
        }
      }
      belief.addTail(circuit, nodes, box, jointVariance);
    }
    return belief;
  }

  private void add(
      int feeder, int box, Cable cable, Assumptions assumptions, double jointVariance) {
    double metres = cable.lengthMetres().orElse(assumptions.value(Assumption.UNKNOWN_LENGTH));
    double sigma =
        cable
            .lengthTolerance()
            .orElse(
                assumptions.value(
                    cable.lengthMetres().isPresent()
                        ? Assumption.LENGTH_TOLERANCE
                        : Assumption.UNKNOWN_LENGTH_SPREAD));
    double perMetre = cable.ohmsPerMetre(ConductorRole.HOT, assumptions);
    double copper = perMetre * metres;
    double conductor = copper + JOINTS_OF_A_CONDUCTOR * jointOhms;
    double copperSigma = CONDUCTORS * copper * sigma;
    double joints = CONDUCTORS * JOINTS_OF_A_CONDUCTOR * jointVariance;
    ohms[feeder][box] = conductor;
    ohmsPerMetre[feeder][box] = perMetre;
    sigmas[feeder][box] = Math.sqrt(copperSigma * copperSigma + joints) / (CONDUCTORS * conductor);
  }

  private void addTail(Circuit circuit, RunNodes nodes, int box, double jointVariance) {
    long joints =
        circuit.deviceJoints(nodes.name(box)).stream()
            .map(Joint::conductor)
            .filter(conductor -> conductor == ConductorRole.NEUTRAL)
            .count();
    tailOhms[box] = joints * jointOhms;
    tailVariance[box] = CONDUCTORS * joints * jointVariance;
  }

  /** The median resistance of a conductor of the cable between two nodes, ohms. */
  double ohms(int feeder, int box) {
    return ohms[feeder][box];
  }

  /** Standard deviation of its logarithm. */
  double sigma(int feeder, int box) {
    return sigmas[feeder][box];
  }

  /** How much of the ohms of a conductor are the joints at its ends. */
  double jointOhms() {
    return JOINTS_OF_A_CONDUCTOR * jointOhms;
  }

  /** Resistance of a conductor of the cable between two nodes, ohm/m. */
  double ohmsPerMetre(int feeder, int box) {
    return ohmsPerMetre[feeder][box];
  }

  /** The tail and contact of a device, one conductor, ohms. */
  double tailOhms(int node) {
    return tailOhms[node];
  }

  /** Variance of both conductors of that together, ohms squared. */
  double tailVariance(int node) {
    return tailVariance[node];
  }
}
