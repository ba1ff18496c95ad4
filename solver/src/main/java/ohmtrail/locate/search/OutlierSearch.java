package ohmtrail.locate.search;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import ohmtrail.circuit.Joint;
import ohmtrail.locate.evidence.Likelihood;
import ohmtrail.locate.evidence.MarginalLikelihood;
import ohmtrail.locate.fit.HypothesisFit;
import ohmtrail.locate.fit.InferenceProblem;
import ohmtrail.locate.fit.LinearModel;
import ohmtrail.locate.hypothesis.Hypothesis;
import ohmtrail.locate.hypothesis.Hypothesis.OneJoint;
import ohmtrail.locate.hypothesis.Hypothesis.Unexplained;
import ohmtrail.locate.settings.Settings;

/**
 * What is left to say when one outlier is not enough: a hypothesis that holds only if two or more
 * readings are. Gives up readings of one hypothesis, the cheapest first, as long as that gains;
 * then fits and looks again. Used once, by one thread.
 */
final class OutlierSearch {
  private final ScannedCircuit circuit;
  private final Optional<Joint> joint;
  private final double logPrior;
  private final double floor;
  private final BitSet outliers = new BitSet();

  private OutlierSearch(
      ScannedCircuit circuit, Optional<Joint> joint, double logPrior, double floor) {
    this.circuit = circuit;
    this.joint = joint;
    this.logPrior = logPrior;
    this.floor = floor;
  }

  /**
   * Tries the sound circuit and the most probable joints, each with as many outliers as it takes.
   *
   * @param circuit the circuit, scanned
   * @param sound the sound circuit
   * @param singles every joint
   * @param logRival log posterior of the best explanation with at most one outlier
   * @return empty when no two readings are worth giving up
   */
  static Optional<Unexplained> of(
      ScannedCircuit circuit, SoundCircuit sound, List<OneJoint> singles, double logRival) {
    InferenceProblem problem = circuit.problem();
    Settings.Outliers settings = problem.settings().outliers();
    double floor = logRival - settings.hopeless();
    List<Unexplained> found = new ArrayList<>();
    if (sound.model().at(0).hasOutlier()) {
      new OutlierSearch(circuit, Optional.empty(), problem.priors().logSound(), floor)
          .run(sound.model(), 0)
          .ifPresent(found::add);
    }
    List<JointScan> suspicious =
        singles.stream()
            .sorted(Comparator.comparingDouble(Hypothesis::logPosterior).reversed())
            .limit(settings.mostJoints())
            .flatMap(single -> circuit.scanOf(single.joint()).stream())
            .filter(scan -> scan.likelihood().hasOutlier())
            .toList();
    for (JointScan scan : suspicious) {
      Joint joint = scan.joint();
      LinearModel stated = circuit.linearise(joint, problem.parameters().nominalPoint());
      new OutlierSearch(circuit, Optional.of(joint), problem.priors().logOf(joint), floor)
          .run(stated, scan.ohms())
          .ifPresent(found::add);
    }
    return found.stream()
        .max(Comparator.comparingDouble(Hypothesis::logPosterior))
        .map(best -> new Unexplained(Hypothesis.logSum(found), best.explanation()));
  }

  private Optional<Unexplained> run(LinearModel start, double startOhms) {
    LinearModel model = giveUp(start, startOhms);
    double ohms = startOhms;
    for (int turn = 0; turn < circuit.problem().settings().outliers().mostTurns(); turn++) {
      if (outliers.isEmpty() || logPosterior(model, ohms) < floor) {
        return Optional.empty();
      }
      HypothesisFit.Result result =
          circuit.fit().fit(InferenceProblem.degraded(joint, ohms), outliers);
      ohms = result.ohms();
      int before = outliers.cardinality();
      model = giveUp(linearise(result.point()).leavingOut(outliers), ohms);
      if (outliers.cardinality() == before) {
        break;
      }
    }
    return Optional.of(
        new Unexplained(logPosterior(model, ohms), model.explain(ohms).withOutliers(outliers)));
  }

  private LinearModel linearise(double[] point) {
    List<Joint> joints = joint.map(List::of).orElse(List.of());
    return LinearModel.of(
        circuit.workspace(), circuit.problem().model(point, joints, List.of()), joint, point);
  }

  /** At most as many steps as readings. */
  private LinearModel giveUp(LinearModel start, double ohms) {
    LinearModel model = start;
    while (true) {
      MarginalLikelihood.Outlier cheapest = model.cheapestOutlierAt(ohms);
      if (cheapest.reading() < 0 || cheapest.logGain() <= 0) {
        return model;
      }
      outliers.set(cheapest.reading());
      model = model.leavingOut(outliers);
    }
  }

  /**
   * With one reading given up, what is left if yet another is an outlier, whichever; with more
   * given up, all that is left.
   */
  private double logPosterior(LinearModel model, double ohms) {
    Likelihood likelihood = model.at(ohms);
    double mass =
        joint.isPresent() ? circuit.problem().ohmsPrior().logMass(ohms, likelihood.curvature()) : 0;
    double given = outliers.stream().mapToDouble(circuit.problem().observations()::logWrong).sum();
    double others = outliers.cardinality() >= 2 ? likelihood.log() : likelihood.logOneOutlier();
    return logPrior + others + given + mass;
  }
}
