package ohmtrail.locate;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;
import ohmtrail.circuit.Circuit;
import ohmtrail.circuit.Joint;
import ohmtrail.predict.Evaluation;
import ohmtrail.predict.JointSweep;
import ohmtrail.predict.Parameters;
import ohmtrail.predict.SurveyModel;
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

  /** Ohms at which a joint shows what it can do to the readings' slopes. */
  private static final double[] PROBING_OHMS = {10, Double.POSITIVE_INFINITY};

  /**
   * First looks that agree this closely in u (their distance in standard deviations) share a fit.
   */
  private static final double SAME_FIT = 0.3;

  /**
   * Hypotheses e^-20 behind the best after a first look: even a better fit leaves nothing of them.
   */
  private static final double HOPELESS = 20;

  private final Circuit circuit;
  private final Survey survey;
  private final Assumptions assumptions;
  private final Parameters parameters;
  private final Observations observations;
  private final OhmsCurve.Prior prior;
  private final SurveyModel nominal;
  private final int[] active;
  private final HypothesisFit fit;
  private final List<JointScan> scans;
  private final Map<String, Linearised> fitted = new LinkedHashMap<>();
  private final List<SharedFit> shared = new ArrayList<>();
  private final Linearised healthy;
  private final double logHealthyEvidence;

  private Weighing(Circuit circuit, Survey survey, Assumptions assumptions) {
    this.circuit = circuit;
    this.survey = survey;
    this.assumptions = assumptions;
    this.parameters = Parameters.of(circuit, survey, assumptions);
    this.observations = Observations.of(circuit, survey, assumptions);
    this.prior = OhmsCurve.Prior.of(assumptions);
    this.nominal = model(parameters.nominalPoint(), circuit.joints());
    Map<Joint, JointSweep> sweeps = new LinkedHashMap<>();
    circuit.joints().forEach(joint -> sweeps.put(joint, nominal.sweep(joint)));
    this.active = feltParameters(sweeps);
    this.fit =
        new HypothesisFit(circuit, survey, assumptions, parameters, observations, active, prior);
    this.scans = scan(sweeps);
    this.healthy = fitHealthy();
    this.logHealthyEvidence = healthy.weight(0).logWeight();
  }

  static Weighing of(Circuit circuit, Survey survey, Assumptions assumptions) {
    return new Weighing(circuit, survey, assumptions);
  }

  private SurveyModel model(double[] point, List<Joint> joints) {
    return SurveyModel.of(circuit, survey, assumptions, parameters, point, joints, List.of());
  }

  private int[] feltParameters(Map<Joint, JointSweep> sweeps) {
    double[] largest = new double[parameters.size()];
    Evaluation evaluation = nominal.buffer();
    nominal.evaluate(evaluation);
    note(evaluation, largest);
    for (JointSweep sweep : sweeps.values()) {
      for (double ohms : PROBING_OHMS) {
        sweep.evaluate(ohms, evaluation);
        note(evaluation, largest);
      }
    }
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
  }

  private List<JointScan> scan(Map<Joint, JointSweep> sweeps) {
    GaussianEvidence plain = new GaussianEvidence(observations, active, new BitSet());
    Evaluation evaluation = nominal.buffer();
    nominal.evaluate(evaluation);
    plain.compute(evaluation, parameters.nominalPoint());
    JointScan.Start start = new JointScan.Start(nominal, observations, plain, prior, active);
    List<JointScan> found = new ArrayList<>();
    sweeps.forEach((joint, sweep) -> found.add(new JointScan(joint, sweep, start)));
    JointScan.climbTogether(found);
    return List.copyOf(found);
  }

  private Linearised fitHealthy() {
    Linearised first = linearise(Optional.empty(), parameters.nominalPoint(), new BitSet());
    Weigher.Weight weight = first.weight(0);
    if (active.length == 0 || weight.logWeight() < bestRough() - HOPELESS) {
      return first;
    }
    double[] point = fit.healthy(wrong(weight)).point();
    return linearise(Optional.empty(), point, new BitSet());
  }

  private double bestRough() {
    return scans.stream()
        .mapToDouble(JointScan::roughLogEvidence)
        .max()
        .orElse(Double.NEGATIVE_INFINITY);
  }

  /**
   * Whether a first look puts a joint so far behind the best that a proper fit is not worth its
   * time.
   */
  boolean isHopeless(JointScan scan) {
    return scan.roughLogEvidence() < Math.max(bestRough(), logHealthyEvidence) - HOPELESS;
  }

  private static BitSet wrong(Weigher.Weight weight) {
    BitSet wrong = new BitSet();
    if (weight.wrongReading() >= 0) {
      wrong.set(weight.wrongReading());
    }
    return wrong;
  }

  private Linearised linearise(Optional<Joint> joint, double[] point, BitSet leftOut) {
    SurveyModel model = model(point, joint.map(List::of).orElse(List.of()));
    return new Linearised(model, joint, point, observations, active, leftOut);
  }

  Observations observations() {
    return observations;
  }

  Parameters parameters() {
    return parameters;
  }

  List<JointScan> scans() {
    return scans;
  }

  double logHealthyEvidence() {
    return logHealthyEvidence;
  }

  /** A joint that a first look rules out. */
  Candidate rough(JointScan scan, double priorProbability) {
    return new Candidate(
        scan.joint(), priorProbability, scan.roughLogEvidence(), Optional.empty(), new double[0]);
  }

  /** A joint that may be it: fitted, and its weight followed over the ohms. */
  Candidate fitted(JointScan scan, double priorProbability) {
    SharedFit start = fitFor(scan);
    Linearised linearised = linearise(Optional.of(scan.joint()), start.point, new BitSet());
    fitted.put(scan.joint().id(), linearised);
    Weigher.Weight atFit = linearised.weight(start.ohms);
    OhmsCurve curve =
        OhmsCurve.follow(
            ohms -> linearised.weight(ohms).logWeight(), start.ohms, atFit.curvature(), prior);
    double[] volts = linearised.volts(curve.peakOhms());
    return new Candidate(
        scan.joint(), priorProbability, curve.logEvidence(), Optional.of(curve), volts);
  }

  private SharedFit fitFor(JointScan scan) {
    for (SharedFit earlier : shared) {
      if (earlier.near(scan)) {
        return new SharedFit(scan.mean(), earlier.point, scan.ohms());
      }
    }
    if (active.length == 0) {
      return new SharedFit(scan.mean(), parameters.nominalPoint(), scan.ohms());
    }
    HypothesisFit.Result result =
        fit.joint(scan.joint(), scan.ohms(), scan.mean(), wrong(scan.weight()));
    SharedFit found = new SharedFit(scan.mean(), result.point(), result.ohms());
    shared.add(found);
    return found;
  }

  /** A fit and the first look that led to it. */
  private static final class SharedFit {
    private final double[] mean;
    private final double[] point;
    private final double ohms;

    SharedFit(double[] mean, double[] point, double ohms) {
      this.mean = mean;
      this.point = point;
      this.ohms = ohms;
    }

    boolean near(JointScan scan) {
      double[] other = scan.mean();
      double square = 0;
      for (int i = 0; i < mean.length; i++) {
        square += (mean[i] - other[i]) * (mean[i] - other[i]);
      }
      return square < SAME_FIT * SAME_FIT;
    }
  }

  Explanation explainHealthy() {
    return healthy.explain(0);
  }

  Explanation explain(Candidate candidate) {
    Linearised linearised = fitted.get(candidate.joint().id());
    double ohms = candidate.curve().map(OhmsCurve::peakOhms).orElse(0.0);
    return linearised == null ? explainHealthy() : linearised.explain(ohms);
  }

  /**
   * What is left to say when one wrong reading is not enough: the healthy circuit and the most
   * probable joints, each with as many readings given up as it takes.
   *
   * @param most so many joints are tried
   * @return their weights added up, with the explanation of the heaviest; empty when no two
   *     readings are worth giving up
   */
  Optional<Discord> discord(Priors priors, List<Candidate> candidates, int most) {
    if (observations.count() < 2 || active.length == 0) {
      return Optional.empty();
    }
    List<Discord> found = new ArrayList<>();
    if (healthy.weight(0).wrongReading() >= 0) {
      found.add(giveUpReadings(Optional.empty(), 0, Math.log(priors.healthy())));
    }
    candidates.stream()
        .sorted(Comparator.comparingDouble(Candidate::logPosterior).reversed())
        .limit(most)
        .filter(candidate -> scanOf(candidate.joint()).weight().wrongReading() >= 0)
        .forEach(
            candidate ->
                found.add(
                    giveUpReadings(
                        Optional.of(candidate.joint()),
                        scanOf(candidate.joint()).ohms(),
                        Math.log(priors.of(candidate.joint())))));
    found.removeIf(discord -> discord.logWeight() == Double.NEGATIVE_INFINITY);
    double sum = Double.NEGATIVE_INFINITY;
    for (Discord discord : found) {
      sum = Weigher.logSum(sum, discord.logWeight());
    }
    double total = sum;
    return found.stream()
        .max(Comparator.comparingDouble(Discord::logWeight))
        .map(heaviest -> new Discord(total, heaviest.explanation()));
  }

  private JointScan scanOf(Joint joint) {
    return scans.stream().filter(scan -> scan.joint().equals(joint)).findFirst().orElseThrow();
  }

  /**
   * Gives up readings one by one, the cheapest first, as long as that gains: at most as many steps
   * as readings.
   */
  private Discord giveUpReadings(Optional<Joint> joint, double startOhms, double logPrior) {
    BitSet wrong = new BitSet();
    double logWeight = Double.NEGATIVE_INFINITY;
    double ohms = startOhms;
    while (true) {
      HypothesisFit.Result result =
          joint.isPresent()
              ? fit.joint(joint.get(), ohms, new double[active.length], wrong)
              : fit.healthy(wrong);
      Linearised linearised = linearise(joint, result.point(), wrong);
      ohms = result.ohms();
      Weigher.Weight weight = linearised.weight(ohms);
      if (wrong.cardinality() >= 2) {
        double given = weight.logAllRight() + wrong.cardinality() * observations.logWrong();
        double width = joint.isPresent() ? prior.logWidth(ohms, weight.curvature()) : 0;
        logWeight = Weigher.logSum(logWeight, logPrior + given + width);
      }
      Linearised.Loss loss = linearised.cheapestLoss();
      if (loss.reading() < 0 || loss.logGain() <= 0) {
        return new Discord(logWeight, linearised.explain(ohms).withWrong(wrong));
      }
      wrong.set(loss.reading());
    }
  }

  /**
   * A hypothesis that holds only if two or more readings are wrong.
   *
   * @param logWeight logarithm of prior times evidence; minus infinity when no two readings are
   *     worth giving up
   * @param explanation the hypothesis without the readings given up
   */
  record Discord(double logWeight, Explanation explanation) {}
}
