package ohmtrail.locate.search;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.Comparator;
import java.util.List;
import java.util.NavigableSet;
import java.util.Optional;
import java.util.TreeSet;
import java.util.function.DoubleUnaryOperator;
import java.util.function.ToDoubleFunction;
import ohmtrail.circuit.Joint;
import ohmtrail.locate.evidence.Likelihood;
import ohmtrail.locate.evidence.LogSpace;
import ohmtrail.locate.evidence.Observations;
import ohmtrail.locate.fit.GaussNewton;
import ohmtrail.locate.fit.HypothesisFit;
import ohmtrail.locate.fit.InferenceProblem;
import ohmtrail.locate.fit.LinearModel;

/**
 * A scan of one joint: the peaks of its likelihood over the ohms, the model linearised where every
 * joint of the scan is. Good enough to tell the joints that are worth a fit from those that are
 * not. Immutable but for buffers that it shares; belongs to one thread.
 */
final class JointScan {
  private final InferenceProblem problem;
  private final ScreenedJoint screened;
  private final LinearModel model;

  /** The squared distance of the nearest joint at the screening. */
  private final double nearest;

  /** At least one; the highest first. */
  private final List<GaussNewton.Place> peaks;

  private JointScan(
      InferenceProblem problem,
      ScreenedJoint screened,
      LinearModel model,
      double nearest,
      List<GaussNewton.Place> peaks) {
    this.problem = problem;
    this.screened = screened;
    this.model = model;
    this.nearest = nearest;
    this.peaks = peaks;
  }

  /**
   * Starts at each of the ohms that the screening found.
   *
   * @param problem the problem
   * @param screened the joint
   * @param model its model, linearised
   * @param nearest the squared distance of the nearest joint at the screening
   */
  static JointScan of(
      InferenceProblem problem, ScreenedJoint screened, LinearModel model, double nearest) {
    GaussNewton ascent = model.ascent();
    List<GaussNewton.Place> starts = screened.starts().stream().map(ascent::at).toList();
    return new JointScan(problem, screened, model, nearest, ordered(starts));
  }

  private static List<GaussNewton.Place> ordered(List<GaussNewton.Place> places) {
    return places.stream()
        .sorted(
            Comparator.comparingDouble((GaussNewton.Place peak) -> peak.likelihood().log())
                .reversed())
        .toList();
  }

  /** Lets every joint that may yet come near the best of them climb. */
  static List<JointScan> climbed(List<JointScan> scans) {
    double best = scans.stream().mapToDouble(scan -> scan.likelihood().log()).max().orElse(0);
    return scans.stream().map(scan -> scan.climbed(best)).toList();
  }

  private JointScan climbed(double best) {
    double floor = best - problem.settings().ascent().outOfReach();
    GaussNewton ascent = model.ascent();
    List<GaussNewton.Place> reached = new ArrayList<>();
    for (GaussNewton.Place peak : peaks) {
      if (peak.likelihood().log() + 2 * peak.likelihood().expectedGain() <= floor) {
        reached.add(peak);
        continue;
      }
      if (peak.likelihood().hasOutlier()) {
        // A reading far off may be an outlier, or the ohms are: both are worth a climb.
        reached.add(ascent.climbWithoutOutlier(peak));
      }
      reached.add(ascent.climb(peak));
    }
    List<GaussNewton.Place> kept = new ArrayList<>();
    keep(reached, Likelihood::logNoOutlier, 1, kept);
    keep(reached, Likelihood::log, problem.settings().ascent().mostPeaks(), kept);
    return new JointScan(problem, screened, model, nearest, ordered(kept));
  }

  /** Keeps the highest of those that are new, as long as there are no more than so many. */
  private void keep(
      List<GaussNewton.Place> reached,
      ToDoubleFunction<Likelihood> height,
      int most,
      List<GaussNewton.Place> kept) {
    reached.stream()
        .sorted(
            Comparator.comparingDouble(
                    (GaussNewton.Place peak) -> height.applyAsDouble(peak.likelihood()))
                .reversed())
        .filter(peak -> kept.size() < most && isNew(peak, kept))
        .forEach(kept::add);
  }

  private boolean isNew(GaussNewton.Place peak, List<GaussNewton.Place> kept) {
    double same = problem.settings().ascent().samePeak();
    return kept.stream()
        .noneMatch(
            known ->
                known.ohms() == peak.ohms()
                    || Math.abs(Math.log(known.ohms() / peak.ohms())) < same);
  }

  Joint joint() {
    return screened.joint();
  }

  /**
   * The more probable first. Those that differ by rounding alone come in the order of their names:
   * which of them is fitted must not hang on the order in which a case was written.
   *
   * @param log what to go by
   */
  static Comparator<JointScan> highestFirst(ToDoubleFunction<JointScan> log) {
    return Comparator.comparingDouble((JointScan scan) -> LogSpace.rounded(log.applyAsDouble(scan)))
        .reversed()
        .thenComparing(scan -> scan.joint().id());
  }

  /** The joints that no reading tells from it, itself among them. */
  List<Joint> twins() {
    return screened.twins();
  }

  /** The best ohms; may be infinite. */
  double ohms() {
    return peaks.get(0).ohms();
  }

  /** Every peak that was found, the highest first. */
  List<GaussNewton.Place> peaks() {
    return peaks;
  }

  /** The likelihood at the best ohms. */
  Likelihood likelihood() {
    return peaks.get(0).likelihood();
  }

  /** The joint with the model linearised where it was scanned. */
  LinearModel model() {
    return model;
  }

  /**
   * Where the active parameters of a fit may start: their posterior mean, or where everything is as
   * stated when an outlier has pulled that mean away.
   */
  double[] startFor(GaussNewton.Place peak, BitSet leftOut) {
    double[] mean = model.activeMeanAt(peak.ohms());
    return peak.likelihood().hasOutlier() || !leftOut.isEmpty() ? new double[mean.length] : mean;
  }

  /**
   * The fit of a peak where it needs no search: the readings leave the parameters where the model
   * was linearised. Empty where they want them elsewhere.
   *
   * @param leftOut readings to leave out
   */
  Optional<HypothesisFit.Result> settled(GaussNewton.Place peak, BitSet leftOut) {
    double[] mean = model.leavingOut(leftOut).meanAt(peak.ohms());
    boolean stays =
        LinearModel.distance(mean, model.point()) < problem.settings().ascent().settled();
    return stays
        ? Optional.of(
            HypothesisFit.Result.at(
                InferenceProblem.degraded(Optional.of(joint()), peak.ohms()), model.point()))
        : Optional.empty();
  }

  /**
   * A likelihood over the ohms that is worked out only where the joint comes near the readings:
   * around its peaks, and where the screening did not put it far off, nor farther off than ohms
   * nearer to the peaks at which nothing was left. Elsewhere it is as good as nothing.
   *
   * @param logLikelihood natural logarithm of it
   * @return it remembers what it was asked; ask it outward from the peaks
   */
  DoubleUnaryOperator sparing(DoubleUnaryOperator logLikelihood) {
    double nothing = likelihood().log() - problem.settings().profile().nothing();
    double lowest = peaks.stream().mapToDouble(GaussNewton.Place::ohms).min().orElseThrow();
    double highest = peaks.stream().mapToDouble(GaussNewton.Place::ohms).max().orElseThrow();
    NavigableSet<Double> spent = new TreeSet<>();
    return ohms -> {
      if (!isNearAPeak(ohms)) {
        boolean isBeyond = Double.isFinite(ohms) && (ohms < lowest || ohms > highest);
        Double nearer = ohms < lowest ? spent.higher(ohms) : spent.lower(ohms);
        boolean isSpent =
            isBeyond
                && nearer != null
                && (nearer < lowest || nearer > highest)
                && screened.nearestAt(ohms) >= screened.nearestAt(nearer);
        if (isSpent || screened.isFarOffAt(ohms, nearest)) {
          return nothing;
        }
      }
      double log = logLikelihood.applyAsDouble(ohms);
      if (log < nothing) {
        spent.add(ohms);
      }
      return log;
    };
  }

  private boolean isNearAPeak(double ohms) {
    double reach = problem.settings().profile().aroundPeak();
    return peaks.stream()
        .anyMatch(peak -> peak.ohms() == ohms || Math.abs(Math.log(peak.ohms() / ohms)) < reach);
  }

  /** Whether another joint predicts the same readings, and calls the same one an outlier. */
  boolean isAlike(JointScan other) {
    Observations observations = problem.observations();
    double[] own = model.volts(ohms());
    double[] others = other.model.volts(other.ohms());
    double alike = problem.settings().ascent().alike();
    for (int r = 0; r < own.length; r++) {
      if (Math.abs(own[r] - others[r]) > alike * Math.sqrt(observations.variance(r))) {
        return false;
      }
    }
    return outliers().equals(other.outliers());
  }

  /** The reading that is more likely an outlier than not; at most one. */
  BitSet outliers() {
    return outliersOf(likelihood());
  }

  /** The same of any likelihood. */
  static BitSet outliersOf(Likelihood likelihood) {
    BitSet outliers = new BitSet();
    if (likelihood.hasOutlier()) {
      outliers.set(likelihood.outlier());
    }
    return outliers;
  }

  /** Laplace's approximation of the log marginal likelihood, at the highest peak. */
  double roughLogMarginalLikelihood() {
    return likelihood().log() + problem.ohmsPrior().logMass(ohms(), likelihood().curvature());
  }

  /** ln (prior times marginal likelihood), as far as a scan tells. */
  double logPosterior() {
    return problem.priors().logOf(joint()) + roughLogMarginalLikelihood();
  }
}
