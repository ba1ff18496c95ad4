package ohmtrail.locate.search;

import java.util.Arrays;
import java.util.BitSet;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.DoubleFunction;
import java.util.function.DoubleUnaryOperator;
import ohmtrail.circuit.Joint;
import ohmtrail.locate.fit.GaussNewton;
import ohmtrail.locate.fit.HypothesisFit;
import ohmtrail.locate.fit.InferenceProblem;
import ohmtrail.locate.fit.LinearModel;
import ohmtrail.locate.fit.Relinearisation;
import ohmtrail.locate.fit.Sweeps;
import ohmtrail.locate.fit.Workspace;
import ohmtrail.locate.hypothesis.Hypothesis.OneJoint;
import ohmtrail.locate.hypothesis.OhmsPeak;
import ohmtrail.locate.hypothesis.OhmsProfile;
import ohmtrail.locate.hypothesis.ProfileGrid;
import ohmtrail.predict.SurveyModel;

/**
 * A circuit whose every joint was screened, and scanned where it comes near the readings. Belongs
 * to one thread.
 *
 * @param problem the problem
 * @param workspace shared buffers
 * @param fit fits
 * @param scans of the joints that got one
 */
record ScannedCircuit(
    InferenceProblem problem, Workspace workspace, HypothesisFit fit, List<JointScan> scans) {
  /** Copies the list. */
  ScannedCircuit {
    scans = List.copyOf(scans);
  }

  /** Scans a circuit as stated, and again where the best of its joints wants it. */
  static ScannedCircuit of(InferenceProblem problem) {
    double[] stated = problem.parameters().nominalPoint();
    SurveyModel model = problem.model(stated, problem.joints(), List.of());
    Scanner scanner = new Scanner(problem, model, Collections.nCopies(stated.length, 0.0));
    List<ScreenedJoint> near = scanner.near(problem.joints(), Map.of());
    Sweeps sweeps = Sweeps.within(problem.settings().screening().sweepBytes());
    List<Integer> active =
        Sensitivity.feltParameters(
            problem.observations(), model, near, sweeps, problem.settings().ascent().insensitive());
    Workspace workspace = Workspace.of(problem, active, model, sweeps);
    ScannedCircuit first =
        new ScannedCircuit(
            problem, workspace, HypothesisFit.of(problem, active), scanner.scan(near, workspace));
    return active.isEmpty() ? first : first.settled();
  }

  /**
   * Scanned again with the model linearised at the fit of the best joint, until the best stays the
   * best: what explains the readings is far nearer to how things are than what was stated.
   */
  private ScannedCircuit settled() {
    ScannedCircuit seen = this;
    for (int turn = 0; turn < problem.settings().ascent().mostLinearisations(); turn++) {
      JointScan best = seen.best();
      HypothesisFit.Result fitted = fit(best, best.outliers());
      if (best.model().isAt(fitted.point())) {
        return seen;
      }
      ScannedCircuit next = seen.again(fitted);
      JointScan nextBest = next.best();
      if (hasFailed(nextBest.roughLogMarginalLikelihood(), best.roughLogMarginalLikelihood())) {
        return seen;
      }
      seen = next;
      if (nextBest.isAlike(best)) {
        return seen;
      }
    }
    return seen;
  }

  /** A scan elsewhere, which starts from what the last one found as well. */
  private ScannedCircuit again(HypothesisFit.Result fitted) {
    SurveyModel model = workspace.models().at(fitted.point());
    Map<Joint, List<Double>> found = new LinkedHashMap<>();
    for (JointScan scan : scans) {
      List<Double> ohms = scan.peaks().stream().map(GaussNewton.Place::ohms).toList();
      scan.twins().forEach(twin -> found.put(twin, ohms));
    }
    Scanner scanner = new Scanner(problem, model, fitted.parameters());
    return new ScannedCircuit(
        problem, workspace, fit, scanner.scan(scanner.near(problem.joints(), found), workspace));
  }

  private JointScan best() {
    return scans.stream()
        .min(JointScan.highestFirst(JointScan::roughLogMarginalLikelihood))
        .orElseThrow();
  }

  /** Log marginal likelihood below which nothing is left of a hypothesis. */
  double floor() {
    return best().roughLogMarginalLikelihood() - problem.settings().shortlist().outOfReach();
  }

  /**
   * Whether a fit ended so much farther from the readings than the linear model that it is no use.
   */
  boolean hasFailed(double logFitted, double logLinear) {
    return logFitted < logLinear - problem.settings().fit().mostLoss();
  }

  /** Fits a joint from its highest peak, some readings left out. */
  HypothesisFit.Result fit(JointScan scan, BitSet leftOut) {
    return fit(scan, scan.peaks().get(0), leftOut);
  }

  /** Fits a joint from one of its peaks, some readings left out. */
  HypothesisFit.Result fit(JointScan scan, GaussNewton.Place peak, BitSet leftOut) {
    return scan.settled(peak, leftOut)
        .or(() -> relinearised(scan, peak, leftOut))
        .orElseGet(
            () ->
                fit.fit(
                    InferenceProblem.degraded(Optional.of(scan.joint()), peak.ohms()),
                    scan.startFor(peak, leftOut),
                    leftOut));
  }

  private Optional<HypothesisFit.Result> relinearised(
      JointScan scan, GaussNewton.Place peak, BitSet leftOut) {
    Optional<Joint> joint = Optional.of(scan.joint());
    double[] start = scan.model().leavingOut(leftOut).meanAt(peak.ohms());
    return new Relinearisation(workspace, joint, leftOut)
        .climbing(peak.ohms(), start)
        .map(
            settled ->
                HypothesisFit.Result.at(
                    InferenceProblem.degraded(joint, settled.ohms()), settled.model().point()));
  }

  /** Fits the parameters with the ohms of a joint held, some readings left out. */
  HypothesisFit.Result fitParameters(Joint joint, double ohms, BitSet leftOut) {
    return fit.fitParameters(InferenceProblem.degraded(Optional.of(joint), ohms), leftOut);
  }

  /** The scan that a joint got, if any. */
  Optional<JointScan> scanOf(Joint joint) {
    return scans.stream().filter(scan -> scan.twins().contains(joint)).findFirst();
  }

  /** One joint linearised at a point, where that is not where it was scanned. */
  LinearModel linearise(Joint joint, double[] point) {
    return LinearModel.of(workspace, workspace.models().at(point), Optional.of(joint), point);
  }

  /** A joint followed over its ohms with the model linearised where it was scanned. */
  OneJoint follow(JointScan scan, double logBest) {
    LinearModel model = scan.model();
    List<OhmsPeak> peaks =
        scan.peaks().stream().map(peak -> model.climb(peak.ohms())).distinct().toList();
    return follow(scan, ohms -> model.at(ohms).log(), peaks, ohms -> model, logBest);
  }

  /**
   * A joint followed over its ohms.
   *
   * @param scan of the joint
   * @param logLikelihood natural logarithm of the likelihood at a value of the ohms
   * @param peaks the peaks known
   * @param modelAt the model that predicts the readings at a value of the ohms
   * @param logBest the highest log posterior that it is compared with
   */
  OneJoint follow(
      JointScan scan,
      DoubleUnaryOperator logLikelihood,
      List<OhmsPeak> peaks,
      DoubleFunction<LinearModel> modelAt,
      double logBest) {
    OhmsProfile profile =
        ProfileGrid.follow(
            scan.sparing(logLikelihood),
            peaks,
            logBest - scan.logPosterior(),
            problem.ohmsPrior(),
            problem.settings().profile());
    double ohms = profile.peakOhms();
    List<Double> volts = Arrays.stream(modelAt.apply(ohms).volts(ohms)).boxed().toList();
    return new OneJoint(
        scan.joint(),
        problem.priors().logOf(scan.joint()),
        profile.logMarginalLikelihood(),
        Optional.of(profile),
        volts);
  }
}
