package ohmtrail.locate;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.Collection;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.DoubleFunction;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.IntStream;
import ohmtrail.circuit.Circuit;
import ohmtrail.circuit.Joint;
import ohmtrail.predict.Degradation;
import ohmtrail.predict.Evaluation;
import ohmtrail.predict.JointSweep;
import ohmtrail.predict.Parameters;
import ohmtrail.predict.SurveyModel;
import ohmtrail.reference.Assumption;
import ohmtrail.reference.Assumptions;
import ohmtrail.survey.Survey;

/**
 * The work of one location: scans, fits and curves of one circuit and survey. Used once, by one
 * thread.
 */
final class Weighing {
  /**
   * A parameter that moves no reading by this much of its standard deviation, under any joint, is
   * left alone.
   */
  private static final double UNFELT = 0.02;

  /**
   * A fit may cost this much of the first look's weight: linearised where it stands, that look
   * flatters.
   */
  private static final double ASTRAY = 10;

  /** Hypotheses e^-40 behind the best: nothing is left of them. */
  static final double OUT_OF_REACH = 40;

  /** Times that the fit of the best joint and a new look at all of them take turns. */
  private static final int MOST_LOOKS = 3;

  private final Circuit circuit;
  private final Survey survey;
  private final Assumptions assumptions;
  private final Priors priors;
  private final Parameters parameters;
  private final Observations observations;
  private final OhmsCurve.Prior prior;
  private final SurveyModel nominal;
  private final int[] active;
  private final HypothesisFit fit;
  private final List<JointScan> scans;
  private final Linearised healthy;
  private final double logHealthyEvidence;

  private Weighing(Circuit circuit, Survey survey, Assumptions assumptions, Priors priors) {
    this.circuit = circuit;
    this.survey = survey;
    this.assumptions = assumptions;
    this.priors = priors;
    this.parameters = Parameters.of(circuit, survey, assumptions);
    this.observations = Observations.of(circuit, survey, assumptions);
    this.prior = OhmsCurve.Prior.of(assumptions);
    this.nominal = model(parameters.nominalPoint(), circuit.joints());
    List<CoarseLook> looks = look(nominal, parameters.nominalPoint(), circuit.joints());
    Map<CoarseLook, JointSweep> sweeps = near(looks);
    this.active = feltParameters(sweeps);
    this.fit =
        new HypothesisFit(circuit, survey, assumptions, parameters, observations, active, prior);
    this.scans = lookAgain(scan(nominal, parameters.nominalPoint(), active, sweeps));
    this.healthy = fitHealthy();
    this.logHealthyEvidence = healthyEvidence();
  }

  static Weighing of(Circuit circuit, Survey survey, Assumptions assumptions, Priors priors) {
    return new Weighing(circuit, survey, assumptions, priors);
  }

  /** The survey's model at a point, with joints to add ohms to. */
  SurveyModel model(double[] point, List<Joint> joints) {
    return model(point, joints, List.of());
  }

  /** The same, which may be the one that a joint was looked at through. */
  SurveyModel model(JointScan scan, double[] point, List<Joint> joints) {
    return scan.isAt(point) ? scan.model() : model(point, joints);
  }

  /** The survey's model at a point, with ohms in place and joints to add more to. */
  SurveyModel model(double[] point, List<Joint> joints, List<Degradation> degradations) {
    return model(parameters, point, joints, degradations);
  }

  private SurveyModel model(
      Parameters known, double[] point, List<Joint> joints, List<Degradation> degradations) {
    return SurveyModel.of(circuit, survey, assumptions, known, point, joints, degradations);
  }

  /**
   * A quick look at every joint, measured with the covariance that the model has with nothing more
   * added.
   *
   * @param model the circuit, degraded or not
   * @param point where it is linearised
   * @param joints the joints to look at
   */
  private List<CoarseLook> look(SurveyModel model, double[] point, List<Joint> joints) {
    int[] all = IntStream.range(0, point.length).toArray();
    GaussianEvidence plain = GaussianEvidence.of(observations, all, new BitSet());
    Evaluation evaluation = model.buffer();
    model.evaluate(evaluation);
    plain.compute(evaluation, point);
    double[] shift = new double[observations.count()];
    for (int r = 0; r < shift.length; r++) {
      for (int p = 0; p < point.length; p++) {
        shift[r] += evaluation.jacobian()[r * point.length + p] * point[p];
      }
    }
    CoarseLook.Looker looker =
        new CoarseLook.Looker(observations, new FrozenCovariance(plain), prior, shift);
    return joints.stream().map(joint -> looker.look(joint, model.respond(joint))).toList();
  }

  /** The looks that are worth a closer one, with what that needs. */
  private Map<CoarseLook, JointSweep> near(List<CoarseLook> looks) {
    double nearest = nearest(looks);
    Map<CoarseLook, JointSweep> sweeps = new LinkedHashMap<>();
    List<CoarseLook> near =
        looks.stream()
            .filter(look -> !look.isFarOff(nearest))
            .sorted(
                Comparator.comparingDouble((CoarseLook look) -> priorOf(look))
                    .reversed()
                    .thenComparing(look -> look.joint().id()))
            .toList();
    CoarseLook.joined(near, nearest).forEach(look -> sweeps.put(look, look.response().sweep()));
    return sweeps;
  }

  private static double nearest(Collection<CoarseLook> looks) {
    return looks.stream().mapToDouble(CoarseLook::misfit).min().orElse(0);
  }

  private double priorOf(CoarseLook look) {
    return priors.of(look.joint());
  }

  /**
   * A closer look at the joints that come near the readings, with ohms in place.
   *
   * @param known the parameters, those of the ohms in place among them
   * @param point where the model is linearised, one u for each of them
   * @param felt places of those that any reading feels
   * @param joints the joints to look at
   * @param placed the ohms in place
   */
  List<JointScan> scan(
      Parameters known, double[] point, int[] felt, List<Joint> joints, List<Degradation> placed) {
    SurveyModel model = model(known, point, joints, placed);
    return scan(model, point, felt, near(look(model, point, joints)));
  }

  private int[] feltParameters(Map<CoarseLook, JointSweep> sweeps) {
    double[] largest = new double[parameters.size()];
    Evaluation evaluation = nominal.buffer();
    nominal.evaluate(evaluation);
    note(evaluation, largest);
    sweeps.forEach(
        (look, sweep) -> {
          sweep.evaluate(look.starts().get(0), evaluation);
          note(evaluation, largest);
          sweep.evaluate(Double.POSITIVE_INFINITY, evaluation);
          note(evaluation, largest);
        });
    return IntStream.range(0, largest.length).filter(p -> largest[p] > UNFELT).toArray();
  }

  private void note(Evaluation evaluation, double[] largest) {
    for (int r = 0; r < observations.count(); r++) {
      double sigma = Math.sqrt(observations.variance(r));
      for (int p = 0; p < largest.length; p++) {
        double effect = Math.abs(evaluation.jacobian()[r * largest.length + p]) / sigma;
        largest[p] = Math.max(largest[p], effect);
      }
    }
    evaluation.watched().ifPresent(devices -> noteTrips(devices, largest));
  }

  private void noteTrips(Evaluation devices, double[] largest) {
    for (int t = 0; t < devices.readings(); t++) {
      double scale = observations.trips().scale(t);
      for (int p = 0; p < largest.length; p++) {
        double effect = Math.abs(devices.jacobian()[t * largest.length + p]) / scale;
        largest[p] = Math.max(largest[p], effect);
      }
    }
  }

  private List<JointScan> scan(
      SurveyModel model, double[] point, int[] felt, Map<CoarseLook, JointSweep> sweeps) {
    double nearest = nearest(sweeps.keySet());
    JointScan.Start start = new JointScan.Start(model, point, observations, prior, felt, nearest);
    List<JointScan> found = new ArrayList<>();
    sweeps.forEach((look, sweep) -> found.add(new JointScan(look, sweep, start)));
    JointScan.climbTogether(found);
    return List.copyOf(found);
  }

  /**
   * Looks at the joints again with the model linearised at the fit of the best of them, until the
   * best stays the best: what explains the readings is far nearer to how things are than what was
   * stated.
   */
  private List<JointScan> lookAgain(List<JointScan> first) {
    List<JointScan> seen = first;
    for (int look = 0; look < MOST_LOOKS && active.length > 0; look++) {
      JointScan best = best(seen);
      double[] fitted = fit(best, best.wrongReading()).point();
      if (best.isAt(fitted)) {
        return seen;
      }
      List<JointScan> next = again(seen, fitted);
      if (isAstray(best(next).roughLogEvidence(), best.roughLogEvidence())) {
        return seen;
      }
      seen = next;
      if (best(next).isAlike(best, observations)) {
        return seen;
      }
    }
    return seen;
  }

  /** A new look elsewhere, which starts from what the last one found as well. */
  private List<JointScan> again(List<JointScan> last, double[] point) {
    SurveyModel model = model(point, circuit.joints());
    List<CoarseLook> looks = look(model, point, circuit.joints());
    Map<Joint, List<Double>> found = new LinkedHashMap<>();
    last.forEach(
        scan -> {
          List<Double> ohms = scan.peaks().stream().map(Ascent.Place::ohms).toList();
          scan.twins().forEach(twin -> found.put(twin, ohms));
        });
    List<CoarseLook> informed =
        looks.stream()
            .map(look -> look.withStarts(found.getOrDefault(look.joint(), List.of())))
            .toList();
    return scan(model, point, active, near(informed));
  }

  private static JointScan best(List<JointScan> scans) {
    return scans.stream().min(JointScan.heaviestFirst(JointScan::roughLogEvidence)).orElseThrow();
  }

  /** Fits a joint from where a look saw it, some readings left out. */
  HypothesisFit.Result fit(JointScan scan, BitSet leftOut) {
    return fit(scan, scan.peaks().get(0), leftOut);
  }

  /** Fits a joint from one of the peaks that a look saw, some readings left out. */
  HypothesisFit.Result fit(JointScan scan, Ascent.Place peak, BitSet leftOut) {
    return scan.settled(peak, leftOut, observations)
        .orElseGet(
            () ->
                fit.fit(
                    degraded(Optional.of(scan.joint()), peak.ohms()),
                    scan.startFor(peak, leftOut),
                    leftOut));
  }

  /** Fits the parameters with the ohms of a joint held, some readings left out. */
  HypothesisFit.Result fitParameters(Joint joint, double ohms, BitSet leftOut) {
    return fit.fitParameters(degraded(Optional.of(joint), ohms), leftOut);
  }

  private Linearised fitHealthy() {
    Linearised first = linearise(Optional.empty(), parameters.nominalPoint(), new BitSet());
    Weigher.Weight weight = first.weight(0);
    if (active.length == 0 || isOutOfReach(weight)) {
      return first;
    }
    return fitHealthy(first, wrong(weight));
  }

  /**
   * Fitted from where a look puts the parameters, or from where they are stated if the readings are
   * nearer to that: so the fit ends no farther off than either, and where the look weighs more it
   * is the look that flatters.
   */
  private Linearised fitHealthy(Linearised look, BitSet leftOut) {
    double[] mean = look.meanAt(0);
    double[] start = IntStream.of(active).mapToDouble(place -> mean[place]).toArray();
    double[] point = fit.fit(List.of(), start, leftOut).point();
    return linearise(Optional.empty(), point, new BitSet());
  }

  /**
   * The evidence of the healthy circuit. Where it calls a reading wrong, the case that all are
   * right has a fit of its own.
   */
  private double healthyEvidence() {
    Weigher.Weight weight = healthy.weight(0);
    if (weight.wrongReading() < 0 || isOutOfReach(weight)) {
      return weight.logWeight();
    }
    Weigher.Weight allRight = fitHealthy(healthy, new BitSet()).weight(0);
    return Weigher.logSum(weight.logOneWrong(), allRight.logAllRight());
  }

  private boolean isOutOfReach(Weigher.Weight weight) {
    return weight.logWeight() < bestRough() - OUT_OF_REACH;
  }

  private double bestRough() {
    return best(scans).roughLogEvidence();
  }

  private static BitSet wrong(Weigher.Weight weight) {
    BitSet wrong = new BitSet();
    if (weight.wrongReading() >= 0) {
      wrong.set(weight.wrongReading());
    }
    return wrong;
  }

  /** One hypothesis, linearised at a point, with some readings left out. */
  Linearised linearise(Optional<Joint> joint, double[] point, BitSet leftOut) {
    SurveyModel model = model(point, joint.map(List::of).orElse(List.of()));
    return new Linearised(model, joint, point, observations, active, leftOut);
  }

  Observations observations() {
    return observations;
  }

  Parameters parameters() {
    return parameters;
  }

  /** The joints that got a closer look. */
  List<JointScan> scans() {
    return scans;
  }

  double logHealthyEvidence() {
    return logHealthyEvidence;
  }

  /** Logarithm of prior times evidence, as far as a look tells. */
  double logPosterior(JointScan scan) {
    return Math.log(priors.of(scan.joint())) + scan.roughLogEvidence();
  }

  /** A joint that no look came near: a bound on its evidence that is as good as nothing. */
  Candidate farOff(Joint joint, double priorProbability) {
    return new Candidate(
        joint, priorProbability, bestRough() - OUT_OF_REACH, Optional.empty(), new double[0]);
  }

  /** A joint's weight, followed over its ohms with the model linearised at one place. */
  Candidate follow(Linearised linearised, JointScan scan, double logBest) {
    List<OhmsCurve.Peak> peaks =
        scan.peaks().stream().map(peak -> linearised.climb(peak.ohms(), prior)).distinct().toList();
    return follow(scan, at -> linearised.weight(at).logWeight(), peaks, at -> linearised, logBest);
  }

  /**
   * A joint's weight, followed over its ohms.
   *
   * @param scan the look at the joint
   * @param logWeight logarithm of the weight at a value of the ohms
   * @param peaks the peaks known
   * @param modelAt the model that predicts the readings at a value of the ohms
   * @param logBest the heaviest posterior that it is weighed against
   */
  Candidate follow(
      JointScan scan,
      DoubleUnaryOperator logWeight,
      List<OhmsCurve.Peak> peaks,
      DoubleFunction<Linearised> modelAt,
      double logBest) {
    double logBehind = logBest - logPosterior(scan);
    OhmsCurve curve = OhmsCurve.follow(scan.sparing(logWeight), peaks, prior, logBehind);
    double ohms = curve.peakOhms();
    return new Candidate(
        scan.joint(),
        priors.of(scan.joint()),
        curve.logEvidence(),
        Optional.of(curve),
        modelAt.apply(ohms).volts(ohms));
  }

  /** Whether a fit ended so much farther from the readings than the look was that it is no use. */
  static boolean isAstray(double logFitted, double logSeen) {
    return logFitted < logSeen - ASTRAY;
  }

  Explanation explainHealthy() {
    return healthy.explain(0);
  }

  /** One joint, or none, with so many ohms. */
  static List<Degradation> degraded(Optional<Joint> joint, double ohms) {
    return joint.map(found -> List.of(new Degradation(found.id(), ohms))).orElse(List.of());
  }

  /** The closer look that a joint got, if any. */
  Optional<JointScan> scanOf(Joint joint) {
    return scans.stream().filter(scan -> scan.twins().contains(joint)).findFirst();
  }

  /** The healthy circuit at its fit. */
  Linearised healthy() {
    return healthy;
  }

  /** The parameters that any reading feels. */
  int[] active() {
    return active.clone();
  }

  /** Standard deviation of the logarithm of an unstable joint's ratio of ohms. */
  double instability() {
    return assumptions.value(Assumption.UNSTABLE_SPREAD);
  }

  /** The prior of the ohms. */
  OhmsCurve.Prior prior() {
    return prior;
  }

  /** Fits hypotheses. */
  HypothesisFit fit() {
    return fit;
  }
}
