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
  /** Joints e^-7 behind the best get no fit of their own. */
  private static final double WORTH_A_FIT = 7;

  /** Joints e^-10 behind the best are not followed over their ohms. */
  private static final double WORTH_FOLLOWING = 10;

  /** Joints e^-5 behind the best do not matter enough to linearise their model more than once. */
  private static final double WORTH_BENDING = 5;

  /** Ohms this far apart, in ln R, want parameters of their own. */
  private static final double FAR_APART = 0.7;

  private static final int MOST_SETTLING_STEPS = 4;

  /** Where the ohms count as ending: these shares of their probability lie below. */
  private static final List<Double> ENDS = List.of(0.1, 0.9);

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
        weighing.scans().stream().mapToDouble(weighing::logPosterior).reduce(logHealthy, Math::max);
  }

  /** Weighs every joint of the circuit. */
  static Shortlist of(Circuit circuit, Weighing weighing, Priors priors) {
    Shortlist shortlist = new Shortlist(circuit, weighing, priors);
    shortlist.run();
    return shortlist;
  }

  /** Every joint of the circuit, in its order: where two weigh the same that is kept. */
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

  private void run() {
    Set<String> seen = new HashSet<>();
    List<JointScan> worthAFit = new ArrayList<>();
    for (JointScan scan : weighing.scans()) {
      scan.twins().forEach(twin -> seen.add(twin.id()));
      if (weighing.logPosterior(scan) > best - WORTH_A_FIT && weighing.active().length > 0) {
        worthAFit.add(scan);
      } else if (weighing.logPosterior(scan) > best - WORTH_FOLLOWING) {
        follow(scan);
      } else {
        add(scan, rough(scan));
      }
    }
    groups(worthAFit).forEach(this::fit);
    circuit.joints().stream()
        .filter(joint -> !seen.contains(joint.id()))
        .forEach(joint -> candidates.add(weighing.farOff(joint, priors.of(joint))));
    Map<Joint, Integer> places = new LinkedHashMap<>();
    circuit.joints().forEach(joint -> places.put(joint, places.size()));
    candidates.sort(Comparator.comparing(each -> places.get(each.joint())));
  }

  /** What was found of a joint holds for its twins. */
  private void add(JointScan scan, Candidate leader) {
    scan.twins().forEach(twin -> candidates.add(leader.standingFor(twin, priors.of(twin))));
  }

  private void model(JointScan scan, Linearised linearised) {
    scan.twins().forEach(twin -> models.put(twin.id(), linearised));
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
        .sorted(JointScan.heaviestFirst(weighing::logPosterior))
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
    BitSet wrong = first.wrongReading();
    HypothesisFit.Result fitted = weighing.fit(first, wrong);
    if (wrong.isEmpty() || !allRightMatters(first)) {
      followKnots(group, fitted, wrong);
      return;
    }
    List<Joint> joints = group.stream().map(JointScan::joint).toList();
    SurveyModel model = weighing.model(first, fitted.point(), joints);
    HypothesisFit.Result allRight = weighing.fit(first, new BitSet());
    SurveyModel other = weighing.model(first, allRight.point(), joints);
    for (JointScan scan : group) {
      followBoth(
          scan,
          keep(scan, model, fitted),
          linearise(scan, other, allRight.point()),
          fitted,
          allRight);
    }
  }

  /**
   * Follows the joints of a group with the model linearised in every valley that matters, and once
   * more at either end where the ohms are left wide open: there the parameters differ.
   */
  private void followKnots(List<JointScan> group, HypothesisFit.Result fitted, BitSet wrong) {
    JointScan first = group.get(0);
    List<Joint> joints = group.stream().map(JointScan::joint).toList();
    List<Bend> bends = new ArrayList<>();
    bends.add(
        new Bend(fitted.ohms(), weighing.model(first, fitted.point(), joints), fitted.point()));
    for (Ascent.Place peak : first.peaks()) {
      boolean matters = peak.weight().logWeight() > first.weight().logWeight() - WORTH_A_FIT;
      if (matters && isFar(bends, peak.ohms())) {
        HypothesisFit.Result other = weighing.fit(first, peak, wrong);
        settled(first, joints, other.ohms(), other.point())
            .filter(bend -> isFar(bends, bend.ohms))
            .ifPresent(bends::add);
      }
    }
    int straight = bends.size();
    LinearisedCurve curve = curve(first, bends, fitted);
    Candidate leader = follow(first, curve, fitted.ohms());
    if (leader.logPosterior() > best - WORTH_BENDING) {
      OhmsCurve followed = leader.curve().orElseThrow();
      for (double share : ENDS) {
        double end = followed.quantile(share);
        if (curve.distance(end) > FAR_APART) {
          bends.add(bend(first, joints, end, curve.nearest(end).meanAt(end), wrong));
        }
      }
    }
    boolean isBent = bends.size() > straight;
    for (JointScan scan : group) {
      boolean isDone = scan == first && !isBent;
      LinearisedCurve bent = isDone ? curve : curve(scan, bends, fitted);
      Candidate candidate = isDone ? leader : follow(scan, bent, fitted.ohms());
      model(scan, bent.nearest(candidate.curve().orElseThrow().peakOhms()));
      add(scan, candidate);
    }
  }

  /** The model at the parameters that go with so many ohms. It keeps its own array. */
  private static final class Bend {
    private final double ohms;
    private final SurveyModel model;
    private final double[] point;

    Bend(double ohms, SurveyModel model, double[] point) {
      this.ohms = ohms;
      this.model = model;
      this.point = point;
    }
  }

  /**
   * The model where the readings put the parameters at so many ohms. Where steps do not settle, the
   * linearised model speaks of places that it does not know, such as ohms beyond a limit, and the
   * parameters are fitted.
   */
  private Bend bend(JointScan scan, List<Joint> joints, double ohms, double[] start, BitSet wrong) {
    return settled(scan, joints, ohms, start)
        .orElseGet(
            () -> {
              double[] point = weighing.fitParameters(scan.joint(), ohms, wrong).point();
              return new Bend(ohms, weighing.model(scan, point, joints), point);
            });
  }

  /** The same by steps alone; empty where they do not settle. */
  private Optional<Bend> settled(JointScan scan, List<Joint> joints, double ohms, double[] start) {
    double[] point = start;
    for (int step = 0; step < MOST_SETTLING_STEPS; step++) {
      SurveyModel model = weighing.model(scan, point, joints);
      double[] mean = linearise(scan, model, point).meanAt(ohms);
      if (Linearised.distance(mean, point) < JointScan.SETTLED) {
        return Optional.of(new Bend(ohms, model, point));
      }
      point = mean;
    }
    return Optional.empty();
  }

  private static boolean isFar(List<Bend> bends, double ohms) {
    return bends.stream()
        .allMatch(
            bend ->
                Double.isInfinite(bend.ohms) != Double.isInfinite(ohms)
                    || Math.abs(Math.log(bend.ohms / ohms)) > FAR_APART);
  }

  private LinearisedCurve curve(JointScan scan, List<Bend> bends, HypothesisFit.Result fitted) {
    List<LinearisedCurve.Knot> knots = new ArrayList<>();
    knots.add(new LinearisedCurve.Knot(fitted.ohms(), keep(scan, bends.get(0).model, fitted)));
    bends.stream()
        .skip(1)
        .forEach(
            bend ->
                knots.add(
                    new LinearisedCurve.Knot(bend.ohms, linearise(scan, bend.model, bend.point))));
    return new LinearisedCurve(knots);
  }

  private Candidate follow(JointScan scan, LinearisedCurve curve, double fittedOhms) {
    List<OhmsCurve.Peak> peaks = new ArrayList<>();
    peaks.add(curve.nearest(fittedOhms).climb(fittedOhms, weighing.prior()));
    scan.peaks()
        .forEach(
            peak -> peaks.add(curve.nearest(peak.ohms()).climb(peak.ohms(), weighing.prior())));
    return weighing.follow(scan, curve::logWeight, peaks, curve::nearest, best);
  }

  private boolean allRightMatters(JointScan scan) {
    double behind = scan.weight().logWeight() - scan.weight().logAllRight();
    return weighing.logPosterior(scan) - behind > best - WORTH_A_FIT;
  }

  private Linearised linearise(JointScan scan, SurveyModel model, double[] point) {
    if (scan.isAt(point)) {
      return scan.linearised(weighing.observations());
    }
    return new Linearised(
        model,
        Optional.of(scan.joint()),
        point,
        weighing.observations(),
        weighing.active(),
        new BitSet());
  }

  /**
   * The model at the fit. A fit that ends farther from the readings than the look was has gone
   * astray, and the look stands.
   */
  private Linearised keep(JointScan scan, SurveyModel model, HypothesisFit.Result fitted) {
    Linearised linearised = linearise(scan, model, fitted.point());
    double weight =
        Math.max(
            linearised.weight(scan.ohms()).logWeight(),
            linearised.weight(fitted.ohms()).logWeight());
    return Weighing.isAstray(weight, scan.weight().logWeight())
        ? scan.linearised(weighing.observations())
        : linearised;
  }

  private void follow(JointScan scan) {
    Linearised linearised = scan.linearised(weighing.observations());
    model(scan, linearised);
    add(scan, weighing.follow(linearised, scan, best));
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
    model(scan, oneWrong);
    add(
        scan,
        weighing.follow(
            scan,
            ohms ->
                Weigher.logSum(
                    oneWrong.weight(ohms).logOneWrong(), allRight.weight(ohms).logAllRight()),
            peaks,
            ohms -> oneWrong,
            best));
  }
}
