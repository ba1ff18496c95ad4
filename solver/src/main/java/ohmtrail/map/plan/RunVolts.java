package ohmtrail.map.plan;

import ohmtrail.map.evidence.MapEvidence;
import ohmtrail.map.evidence.MapExplanation;
import ohmtrail.map.known.MapProblem;
import ohmtrail.map.tree.RunNodes;
import ohmtrail.map.tree.RunTree;
import ohmtrail.reference.Assumption;

/** What a voltmeter would show at every box of one map with a load on, its cables as they fit. */
final class RunVolts {
  private static final int CONDUCTORS = 2;

  private final RunNodes nodes;
  private final RunTree tree;
  private final long[] ways;
  private final double[] loopOhms;
  private final double[] loopSigmas;
  private final double sourceOhms;
  private final double volts;

  private RunVolts(RunNodes nodes, RunTree tree, MapProblem problem) {
    this.nodes = nodes;
    this.tree = tree;
    this.ways = tree.ways();
    this.loopOhms = new double[nodes.count()];
    this.loopSigmas = new double[nodes.count()];
    this.sourceOhms = problem.assumptions().value(Assumption.SOURCE_OHMS);
    this.volts = problem.run().supply().volts();
  }

  static RunVolts of(RunNodes nodes, RunTree tree, MapEvidence evidence, MapProblem problem) {
    RunVolts volts = new RunVolts(nodes, tree, problem);
    for (MapExplanation.FittedCable cable : evidence.explanation(tree).cables()) {
      double ohms = CONDUCTORS * cable.medianOhms() * Math.exp(cable.logSigma() * cable.shift());
      volts.loopOhms[cable.node()] = ohms;
      volts.loopSigmas[cable.node()] = ohms * cable.logSigma() * cable.sigma();
    }
    return volts;
  }

  /** Volts by node, and their variance by what is not known of the cables. */
  double[][] with(double siemens, String at) {
    int load = nodes.number(at);
    double whole = sourceOhms + 1 / siemens;
    for (int node = 1; node < loopOhms.length; node++) {
      whole += isOn(load, node) ? loopOhms[node] : 0;
    }
    double amperes = volts / whole;
    double[][] shown = new double[2][loopOhms.length];
    for (int box = 0; box < loopOhms.length; box++) {
      double drop = sourceOhms * amperes;
      double variance = 0;
      for (int node = 1; node < loopOhms.length; node++) {
        if (isOn(load, node) && isOn(box, node)) {
          drop += amperes * loopOhms[node];
          variance += amperes * amperes * loopSigmas[node] * loopSigmas[node];
        }
      }
      shown[0][box] = volts - drop;
      shown[1][box] = variance;
    }
    return shown;
  }

  private boolean isOn(int box, int cable) {
    return (ways[box] & (1L << cable)) != 0;
  }

  /** Whether there is a cable from one to the other, and it is on the way to a box. */
  boolean leadsThrough(String box, String feeder, String next) {
    int cable = nodes.number(next);
    return tree.parent(cable) == nodes.number(feeder) && isOn(nodes.number(box), cable);
  }
}
