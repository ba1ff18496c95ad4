package ohmtrail.locate;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.Comparator;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import ohmtrail.circuit.Circuit;
import ohmtrail.circuit.Joint;
import ohmtrail.predict.SurveyModel;

/**
 * The single joints, each weighed as closely as it deserves. Joints that predict the same readings
 * share a fit; those well behind the best keep the weight that the look gave them.
 */
final class Shortlist {
  /** Joints e^-8 behind the best get no fit of their own. */
  private static final double WORTH_A_FIT = 8;

  /** Joints e^-14 behind the best are not followed over their ohms. */
  private static final double WORTH_FOLLOWING = 14;

  /** A fit may cost so much of the weight that the look saw: where it stands, a look flatters. */
  private static final double ASTRAY = 10;

  private final Circuit circuit;
  private final Weighing weighing;
  private final Priors priors;
  private final double best;
  private final List<Candidate> candidates = new ArrayList<>();
  private final Map<String, Linearised> models = new LinkedHashMap<>();

  private Shortlist(Circuit circuit, Weighing weighing, Priors priors) {
    this.circuit = circuit;
    this.weighing = weighing;
    this.priors = priors;
    double logHealthy = Math.log(priors.healthy()) + weighing.logHealthyEvidence();
    this.best =
        weighing.scans().stream().mapToDouble(this::logPosterior).reduce(logHealthy, Math::max);
  }

  /** Weighs every joint of the circuit. */
  static Shortlist of(Circuit circuit, Weighing weighing, Priors priors) {
    Shortlist shortlist = new Shortlist(circuit, weighing, priors);
    shortlist.run();
    return shortlist;
  }

  /** Every joint of the circuit. */
  List<Candidate> candidates() {
    return List.copyOf(candidates);
  }

  /** A candidate's model where it was weighed; empty where a look was enough. */
  Optional<Linearised> modelOf(Candidate candidate) {
    return Optional.ofNullable(models.get(candidate.joint().id()));
  }

  /** A candidate in full. */
  Explanation explain(Candidate candidate) {
    double ohms = candidate.curve().map(OhmsCurve::peakOhms).orElse(0.0);
    return modelOf(candidate).map(model -> model.explain(ohms)).orElseGet(weighing::explainHealthy);
  }

  /**
   * Whether the readings lie farther from a candidate's fit, and from a healthy circuit, than their
   * tolerances make ordinary.
   */
  boolean leavesUnexplained(Candidate candidate) {
    double ohms = candidate.curve().orElseThrow().peakOhms();
    return modelOf(candidate).orElseThrow().isSuspiciousAt(ohms)
        && weighing.healthy().isSuspiciousAt(0);
  }

  private double logPosterior(JointScan scan) {
    return Math.log(priors.of(scan.joint())) + scan.roughLogEvidence();
  }

  private void run() {
    Set<String> seen = new HashSet<>();
    List<JointScan> worthAFit = new ArrayList<>();
    for (JointScan scan : weighing.scans()) {
      seen.add(scan.joint().id());
      if (logPosterior(scan) > best - WORTH_A_FIT) {
        worthAFit.add(scan);
      } else if (logPosterior(scan) > best - WORTH_FOLLOWING) {
        follow(scan, scan.linearised(weighing.observations(), weighing.active()), List.of());
      } else {
        candidates.add(rough(scan));
      }
    }
    groups(worthAFit).forEach(this::fit);
    circuit.joints().stream()
        .filter(joint -> !seen.contains(joint.id()))
        .forEach(joint -> candidates.add(weighing.farOff(joint, priors.of(joint))));
  }

  private Candidate rough(JointScan scan) {
    return new Candidate(
        scan.joint(),
        priors.of(scan.joint()),
        scan.roughLogEvidence(),
        Optional.empty(),
        new double[0]);
  }

  /** Joints that predict the same, the heaviest of each group first. */
  private List<List<JointScan>> groups(List<JointScan> scans) {
    List<List<JointScan>> groups = new ArrayList<>();
    scans.stream()
        .sorted(Comparator.comparingDouble(this::logPosterior).reversed())
        .forEach(
            scan ->
                groups.stream()
                    .filter(group -> group.get(0).isAlike(scan, weighing.observations()))
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

  private void fit(List<JointScan> group) {
    JointScan first = group.get(0);
    List<Joint> joints = group.stream().map(JointScan::joint).toList();
    BitSet wrong = first.wrongReading();
    HypothesisFit.Result fitted = weighing.fit(first, wrong);
    SurveyModel model = weighing.model(fitted.point(), joints);
    if (wrong.isEmpty() || !allRightMatters(first)) {
      group.forEach(scan -> follow(scan, keep(scan, model, fitted), List.of(fitted.ohms())));
      return;
    }
    HypothesisFit.Result allRight = weighing.fit(first, new BitSet());
    SurveyModel other = weighing.model(allRight.point(), joints);
    for (JointScan scan : group) {
      followBoth(
          scan, keep(scan, model, fitted), linearise(scan, other, allRight), fitted, allRight);
    }
  }

  private boolean allRightMatters(JointScan scan) {
    double behind = scan.weight().logWeight() - scan.weight().logAllRight();
    return logPosterior(scan) - behind > best - WORTH_A_FIT;
  }

  private Linearised linearise(JointScan scan, SurveyModel model, HypothesisFit.Result fitted) {
    return new Linearised(
        model,
        Optional.of(scan.joint()),
        fitted.point(),
        weighing.observations(),
        weighing.active(),
        new BitSet());
  }

  /**
   * The model at the fit. A fit that ends farther from the readings than the look was has gone
   * astray, and the look stands.
   */
  private Linearised keep(JointScan scan, SurveyModel model, HypothesisFit.Result fitted) {
    Linearised linearised = linearise(scan, model, fitted);
    double weight =
        Math.max(
            linearised.weight(scan.ohms()).logWeight(),
            linearised.weight(fitted.ohms()).logWeight());
    return weight < scan.weight().logWeight() - ASTRAY
        ? scan.linearised(weighing.observations(), weighing.active())
        : linearised;
  }

  private void follow(JointScan scan, Linearised linearised, List<Double> further) {
    List<Double> starts = new ArrayList<>(further);
    scan.peaks().forEach(peak -> starts.add(peak.ohms()));
    models.put(scan.joint().id(), linearised);
    candidates.add(weighing.follow(linearised, scan.joint(), starts, priors.of(scan.joint())));
  }

  /**
   * With a reading called wrong: that case, and the one that all are right, each linearised at a
   * fit of its own.
   */
  private void followBoth(
      JointScan scan,
      Linearised oneWrong,
      Linearised allRight,
      HypothesisFit.Result wrongFit,
      HypothesisFit.Result rightFit) {
    OhmsCurve.Prior prior = weighing.prior();
    List<OhmsCurve.Peak> peaks = new ArrayList<>();
    scan.peaks().forEach(peak -> peaks.add(oneWrong.climb(peak.ohms(), prior)));
    peaks.add(oneWrong.climb(wrongFit.ohms(), prior));
    peaks.add(allRight.climb(rightFit.ohms(), prior));
    OhmsCurve curve =
        OhmsCurve.follow(
            ohms ->
                Weigher.logSum(
                    oneWrong.weight(ohms).logOneWrong(), allRight.weight(ohms).logAllRight()),
            peaks,
            prior);
    models.put(scan.joint().id(), oneWrong);
    candidates.add(
        new Candidate(
            scan.joint(),
            priors.of(scan.joint()),
            curve.logEvidence(),
            Optional.of(curve),
            oneWrong.volts(curve.peakOhms())));
  }
}
