package ohmtrail.locate.search;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import ohmtrail.circuit.Joint;
import ohmtrail.locate.fit.LinearModel;
import ohmtrail.locate.hypothesis.Explanation;
import ohmtrail.locate.hypothesis.Hypothesis;
import ohmtrail.locate.hypothesis.Hypothesis.OneJoint;
import ohmtrail.locate.settings.Settings;

/**
 * Every single joint as a hypothesis, each worked out as closely as it deserves: those well behind
 * the best keep the likelihood that the scan gave them, others are followed over their ohms, and
 * the nearest are fitted first, those that predict the same readings together. Belongs to one
 * thread.
 */
final class SingleJoints {
  private final ScannedCircuit circuit;
  private final SoundCircuit sound;
  private final List<OneJoint> hypotheses;

  /** By joint, the linearisation point under which it was worked out. */
  private final Map<String, List<Double>> points;

  private SingleJoints(
      ScannedCircuit circuit,
      SoundCircuit sound,
      List<OneJoint> hypotheses,
      Map<String, List<Double>> points) {
    this.circuit = circuit;
    this.sound = sound;
    this.hypotheses = List.copyOf(hypotheses);
    this.points = points;
  }

  /** Works every joint of the circuit out. */
  static SingleJoints of(ScannedCircuit circuit, SoundCircuit sound) {
    Settings.Shortlist settings = circuit.problem().settings().shortlist();
    double best =
        circuit.scans().stream()
            .mapToDouble(JointScan::logPosterior)
            .reduce(sound.hypothesis().logPosterior(), Math::max);
    JointFits fits = new JointFits(circuit, best);
    List<JointFits.Found> found = new ArrayList<>();
    List<JointScan> worthAFit = new ArrayList<>();
    for (JointScan scan : circuit.scans()) {
      double logPosterior = scan.logPosterior();
      if (logPosterior > best - settings.worthAFit() && !circuit.workspace().active().isEmpty()) {
        worthAFit.add(scan);
      } else if (logPosterior > best - settings.worthAProfile()) {
        found.add(new JointFits.Found(scan, circuit.follow(scan, best), scan.model()));
      } else {
        found.add(new JointFits.Found(scan, rough(circuit, scan)));
      }
    }
    groups(worthAFit).forEach(group -> found.addAll(fits.fit(group)));
    return of(circuit, sound, found);
  }

  /** What was found of a joint holds for its twins; nothing is left of those that got no scan. */
  private static SingleJoints of(
      ScannedCircuit circuit, SoundCircuit sound, List<JointFits.Found> found) {
    Map<String, OneJoint> byName = new LinkedHashMap<>();
    Map<String, List<Double>> points = new LinkedHashMap<>();
    for (JointFits.Found each : found) {
      for (Joint twin : each.scan().twins()) {
        double logPrior = circuit.problem().priors().logOf(twin);
        byName.put(twin.id(), each.hypothesis().standingFor(twin, logPrior));
        each.point().ifPresent(point -> points.put(twin.id(), point));
      }
    }
    double floor = circuit.floor();
    List<OneJoint> all = new ArrayList<>();
    for (Joint joint : circuit.problem().joints()) {
      OneJoint known = byName.get(joint.id());
      double logPrior = circuit.problem().priors().logOf(joint);
      all.add(known != null ? known : OneJoint.roughly(joint, logPrior, floor));
    }
    return new SingleJoints(circuit, sound, all, points);
  }

  private static OneJoint rough(ScannedCircuit circuit, JointScan scan) {
    return OneJoint.roughly(
        scan.joint(),
        circuit.problem().priors().logOf(scan.joint()),
        scan.roughLogMarginalLikelihood());
  }

  /** Joints that predict the same, the most probable of each group first. */
  private static List<List<JointScan>> groups(List<JointScan> scans) {
    List<List<JointScan>> groups = new ArrayList<>();
    scans.stream()
        .sorted(JointScan.highestFirst(JointScan::logPosterior))
        .forEach(
            scan ->
                groups.stream()
                    .filter(group -> group.get(0).isAlike(scan))
                    .findFirst()
                    .orElseGet(() -> open(groups))
                    .add(scan));
    return groups;
  }

  private static List<JointScan> open(List<List<JointScan>> groups) {
    List<JointScan> group = new ArrayList<>();
    groups.add(group);
    return group;
  }

  /** Every joint of the circuit, in its order: where two are as probable that is kept. */
  List<OneJoint> hypotheses() {
    return hypotheses;
  }

  /** Those that were followed over their ohms, the most probable first. */
  List<OneJoint> followed() {
    return hypotheses.stream()
        .filter(each -> points.containsKey(each.joint().id()))
        .sorted(Comparator.comparingDouble(Hypothesis::logPosterior).reversed())
        .toList();
  }

  /** The model under which a joint was worked out; empty where a scan was enough. */
  Optional<LinearModel> modelOf(OneJoint hypothesis) {
    return Optional.ofNullable(points.get(hypothesis.joint().id()))
        .map(point -> point.stream().mapToDouble(Double::doubleValue).toArray())
        .map(point -> circuit.linearise(hypothesis.joint(), point));
  }

  /** A joint in full. */
  Explanation explain(OneJoint hypothesis) {
    return modelOf(hypothesis)
        .map(model -> model.explain(hypothesis.peakOhms()))
        .orElseGet(() -> sound.model().explain(0));
  }

  /**
   * Whether the readings lie farther from a joint's fit, and from a sound circuit, than their
   * tolerances make ordinary.
   */
  boolean leavesUnexplained(OneJoint hypothesis) {
    return modelOf(hypothesis).orElseThrow().isSuspiciousAt(hypothesis.peakOhms())
        && sound.model().isSuspiciousAt(0);
  }
}
