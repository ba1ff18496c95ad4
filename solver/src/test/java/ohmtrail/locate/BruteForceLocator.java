package ohmtrail.locate;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import ohmtrail.circuit.Circuit;
import ohmtrail.circuit.ConductorRole;
import ohmtrail.circuit.Joint;
import ohmtrail.circuit.JointRole;
import ohmtrail.reference.Assumption;
import ohmtrail.reference.Assumptions;
import ohmtrail.survey.Survey;

/**
 * The probability of every joint by brute force, to hold the locator against. It shares the records
 * of circuit, survey and assumptions with the library, and nothing that computes.
 *
 * <p>Each hypothesis is integrated over its ohms point by point, at each point the circuit is
 * solved anew for the most probable parameters, and each choice of wrong readings is a likelihood
 * of its own. Only what a rough look finds hopeless is left to the rough look.
 */
final class BruteForceLocator {
  /** What the rough look puts below exp(-9) of the total is not looked at carefully. */
  private static final double HOPELESS = 9;

  /** A piece of an integral may be wrong by exp(-11) of the total. */
  private static final double NEGLIGIBLE = 11;

  /** One hypothesis and the logarithms of its evidence by choice of wrong readings. */
  private final class Hypothesis {
    final String joint;
    final double logPrior;
    final double[] rough = new double[choices.size()];
    final double[] roughUpper = new double[choices.size()];
    final double[] careful = new double[choices.size()];
    final Careful integral;

    Hypothesis(String joint, double logPrior, Careful integral) {
      this.joint = joint;
      this.logPrior = logPrior;
      this.integral = integral;
      Arrays.fill(careful, Double.NaN);
    }

    double log(int choice) {
      return Double.isNaN(careful[choice]) ? rough[choice] : careful[choice];
    }
  }

  /** Logarithm of an evidence, given what is negligible. */
  private interface Careful {
    double log(int choice, double negligible);
  }

  private final Circuit circuit;
  private final Assumptions assumptions;
  private final BruteForceModel model;
  private final BruteForceEvidence evidence;
  private final List<WrongReadings> choices;
  private final BruteForceScreen screen;
  private final int fineness;
  private final List<Hypothesis> hypotheses = new ArrayList<>();

  BruteForceLocator(Circuit circuit, Survey survey, Assumptions assumptions) {
    this(circuit, survey, assumptions, BruteForceEvidence.Refinement.NONE, 1);
  }

  /**
   * @param refinement of Laplace's approximation
   * @param fineness how many times finer than usual the integrals over the ohms are
   */
  BruteForceLocator(
      Circuit circuit,
      Survey survey,
      Assumptions assumptions,
      BruteForceEvidence.Refinement refinement,
      int fineness) {
    this.fineness = fineness;
    this.circuit = circuit;
    this.assumptions = assumptions;
    this.model = new BruteForceModel(circuit, survey, assumptions);
    this.evidence = new BruteForceEvidence(model, refinement);
    this.choices =
        WrongReadings.all(
            model.readingCount(),
            assumptions.value(Assumption.WRONG_READING),
            circuit.supply().volts());
    this.screen = new BruteForceScreen(model, evidence, choices);
  }

  BruteForceAnswer weigh() {
    double healthyPrior = assumptions.value(Assumption.HEALTHY_PRIOR);
    addFixed("", BruteForceFault.HEALTHY, Math.log(healthyPrior));
    double weights = circuit.joints().stream().mapToDouble(this::weight).sum();
    for (Joint joint : circuit.joints()) {
      addJoint(joint.id(), (1 - healthyPrior) * weight(joint) / weights);
    }
    while (integrateWhatMatters()) {
      // What has been integrated may have lowered the total, so that more matters.
    }
    return answer();
  }

  private double weight(Joint joint) {
    double factor =
        joint.conductor() == ConductorRole.GROUND
            ? assumptions.value(Assumption.WEIGHT_GROUND_FACTOR)
            : 1;
    if (joint.role() == JointRole.SUPPLY) {
      factor *= assumptions.value(Assumption.WEIGHT_SUPPLY_FACTOR);
    }
    return assumptions.value(joint.kind().weight()) * factor;
  }

  private void addJoint(String joint, double prior) {
    double open = assumptions.value(Assumption.OPEN_SHARE);
    addFixed(joint, BruteForceFault.open(joint), Math.log(prior * open));
    BruteForceSweep sweep =
        new BruteForceSweep(
            model,
            evidence,
            choices,
            joint,
            assumptions.value(Assumption.DEGRADED_OHMS_LOW),
            assumptions.value(Assumption.DEGRADED_OHMS_HIGH),
            fineness);
    Hypothesis conducting = new Hypothesis(joint, Math.log(prior * (1 - open)), sweep::mass);
    for (int c = 0; c < choices.size(); c++) {
      conducting.rough[c] = sweep.roughMass(c);
      conducting.roughUpper[c] = sweep.roughUpperMass(c);
    }
    hypotheses.add(conducting);
  }

  private void addFixed(String joint, BruteForceFault fault, double logPrior) {
    int[] all = choices.get(0).keptArray();
    double[] zeros = new double[model.parameterCount()];
    BruteForceEvidence.Line line = evidence.at(fault, all, zeros);
    Careful careful =
        (choice, negligible) ->
            evidence
                    .integral(
                        fault,
                        choices.get(choice).keptArray(),
                        line.mode,
                        negligible - choices.get(choice).logFactor())
                    .logEvidence()
                + choices.get(choice).logFactor();
    Hypothesis fixed = new Hypothesis(joint, logPrior, careful);
    double[] first = screen.logDensities(line);
    double[] second = screen.logDensities(evidence.about(fault, all, zeros));
    for (int c = 0; c < choices.size(); c++) {
      fixed.rough[c] = first[c];
      fixed.roughUpper[c] = Math.max(first[c], second[c]);
    }
    hypotheses.add(fixed);
  }

  private boolean integrateWhatMatters() {
    double total = logTotal();
    boolean any = false;
    for (Hypothesis hypothesis : hypotheses) {
      for (int c = 0; c < choices.size(); c++) {
        boolean hopeless = hypothesis.logPrior + hypothesis.roughUpper[c] < total - HOPELESS;
        if (Double.isNaN(hypothesis.careful[c]) && !hopeless) {
          hypothesis.careful[c] =
              hypothesis.integral.log(c, total - NEGLIGIBLE - hypothesis.logPrior);
          any = true;
        }
      }
    }
    return any;
  }

  private double logTotal() {
    LogSum sum = new LogSum();
    for (Hypothesis hypothesis : hypotheses) {
      for (int c = 0; c < choices.size(); c++) {
        sum.add(hypothesis.logPrior + hypothesis.log(c));
      }
    }
    return sum.log();
  }

  private BruteForceAnswer answer() {
    double total = logTotal();
    double healthy = 0;
    double unexplained = 0;
    Map<String, Double> joints = new LinkedHashMap<>();
    for (Hypothesis hypothesis : hypotheses) {
      double explained = 0;
      for (int c = 0; c < choices.size(); c++) {
        double share = Math.exp(hypothesis.logPrior + hypothesis.log(c) - total);
        if (choices.get(c).dropped() == 2) {
          unexplained += share;
        } else {
          explained += share;
        }
      }
      if (hypothesis.joint.isEmpty()) {
        healthy = explained;
      } else {
        joints.merge(hypothesis.joint, explained, Double::sum);
      }
    }
    return new BruteForceAnswer(healthy, unexplained, joints);
  }
}
