package ohmtrail.locate.fit;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.List;
import java.util.Optional;
import ohmtrail.circuit.Joint;
import ohmtrail.locate.evidence.Likelihood;
import ohmtrail.locate.evidence.LinearGaussian;
import ohmtrail.locate.evidence.MarginalLikelihood;
import ohmtrail.locate.evidence.Observations;
import ohmtrail.locate.hypothesis.Explanation;
import ohmtrail.locate.hypothesis.OhmsPeak;
import ohmtrail.predict.Degradation;
import ohmtrail.predict.Evaluation;
import ohmtrail.predict.SurveyModel;

/**
 * One hypothesis with the model linearised in the parameters at one point: its likelihood at any
 * value of the ohms of its joint, which are followed exactly. Immutable but for buffers that it
 * shares; belongs to one thread.
 */
public final class LinearModel {
  private final Workspace shared;
  private final SurveyModel model;
  private final Optional<Joint> joint;
  private final List<Degradation> fixed;
  private final double[] point;
  private final BitSet leftOut;

  private LinearModel(
      Workspace shared,
      SurveyModel model,
      Optional<Joint> joint,
      List<Degradation> fixed,
      double[] point,
      BitSet leftOut) {
    this.shared = shared;
    this.model = model;
    this.joint = joint;
    this.fixed = List.copyOf(fixed);
    this.point = point.clone();
    this.leftOut = (BitSet) leftOut.clone();
  }

  /**
   * One joint, or the sound circuit, linearised at a point.
   *
   * @param shared buffers
   * @param model the survey's model there
   * @param joint the joint
   * @param point u of every parameter
   */
  public static LinearModel of(
      Workspace shared, SurveyModel model, Optional<Joint> joint, double[] point) {
    return new LinearModel(shared, model, joint, List.of(), point, new BitSet());
  }

  /**
   * A hypothesis whose ohms are fixed in the model.
   *
   * @param shared buffers
   * @param model the survey's model with them
   * @param fixed its joints with their ohms
   * @param point u of every parameter
   */
  static LinearModel ofFixed(
      Workspace shared, SurveyModel model, List<Degradation> fixed, double[] point) {
    return new LinearModel(shared, model, Optional.empty(), fixed, point, new BitSet());
  }

  /** This hypothesis with other readings left out. */
  public LinearModel leavingOut(BitSet others) {
    return new LinearModel(shared, model, joint, fixed, point, others);
  }

  /** u of every parameter at the linearisation point. */
  public double[] point() {
    return point.clone();
  }

  /** Whether the model was linearised at this point. */
  public boolean isAt(double[] other) {
    return Arrays.equals(point, other);
  }

  /** The survey's model that it linearises. */
  public SurveyModel model() {
    return model;
  }

  private Evaluation evaluate(double ohms) {
    Evaluation evaluation = shared.evaluation();
    if (joint.isPresent()) {
      shared.sweeps().of(model, joint.get(), shared.active()).evaluate(ohms, evaluation);
    } else {
      model.evaluate(evaluation);
    }
    return evaluation;
  }

  /** The likelihood at so many ohms, which may be infinite; without a joint they have no effect. */
  public Likelihood at(double ohms) {
    return shared.likelihood().at(evaluate(ohms), point, leftOut);
  }

  /** The nearest peak of the likelihood uphill from so many ohms. */
  public OhmsPeak climb(double startOhms) {
    GaussNewton ascent = ascent();
    GaussNewton.Place peak =
        ascent.climb(ascent.at(shared.problem().ohmsPrior().bounded(startOhms)));
    return new OhmsPeak(peak.ohms(), peak.likelihood().curvature());
  }

  /**
   * The ohms of the nearest peak uphill if no further reading is an outlier.
   *
   * @param startOhms where to start; infinite ohms stay so
   */
  double climbWithoutOutlier(double startOhms) {
    GaussNewton ascent = ascent();
    return ascent
        .climbWithoutOutlier(ascent.at(shared.problem().ohmsPrior().bounded(startOhms)))
        .ohms();
  }

  /** The way uphill in its ohms. */
  public GaussNewton ascent() {
    return new GaussNewton(
        this::at, shared.problem().ohmsPrior(), shared.problem().settings().ascent());
  }

  /**
   * The reading that costs the least as an outlier at so many ohms, and what that gains; negative
   * where none is left.
   */
  public MarginalLikelihood.Outlier cheapestOutlierAt(double ohms) {
    at(ohms);
    return shared.likelihood().cheapestOutlier();
  }

  /**
   * Whether the readings lie farther from the prediction at so many ohms than their tolerances make
   * ordinary.
   */
  public boolean isSuspiciousAt(double ohms) {
    at(ohms);
    return shared.likelihood().isSuspicious();
  }

  /** Posterior mean of the active parameters at so many ohms, outliers and all. */
  public double[] activeMeanAt(double ohms) {
    at(ohms);
    return shared.likelihood().mean();
  }

  /**
   * Posterior mean of u of every parameter at so many ohms, but for a reading that is more likely
   * an outlier than not.
   */
  public double[] meanAt(double ohms) {
    Likelihood likelihood = at(ohms);
    if (likelihood.hasOutlier() && !leftOut.get(likelihood.outlier())) {
      BitSet others = (BitSet) leftOut.clone();
      others.set(likelihood.outlier());
      return leavingOut(others).meanAt(ohms);
    }
    double[] mean = shared.likelihood().mean();
    double[] everywhere = point.clone();
    for (int c = 0; c < mean.length; c++) {
      everywhere[shared.active().get(c)] = mean[c];
    }
    return everywhere;
  }

  /** {@link #meanAt} at the active parameters alone. */
  public double[] startAt(double ohms) {
    return shared.activeOf(meanAt(ohms));
  }

  /** How far apart two points of the parameters are, in standard deviations. */
  public static double distance(double[] a, double[] b) {
    double square = 0;
    for (int i = 0; i < a.length; i++) {
      square += (a[i] - b[i]) * (a[i] - b[i]);
    }
    return Math.sqrt(square);
  }

  /** The prediction at so many ohms, without drift: one per reading. */
  public double[] volts(double ohms) {
    return evaluate(ohms).volts().clone();
  }

  /**
   * Fisher information of the ohms, per unit of their logarithms: slopes' S^-1 slopes.
   *
   * @param slopes per value of the ohms, one per reading
   */
  double[][] information(double[][] slopes) {
    at(0);
    double[][] information = new double[slopes.length][slopes.length];
    for (int a = 0; a < slopes.length; a++) {
      double[] scaled = shared.likelihood().scaled(slopes[a]);
      for (int b = 0; b < slopes.length; b++) {
        information[a][b] = LinearGaussian.dot(scaled, slopes[b]);
      }
    }
    return information;
  }

  /** The hypothesis in full at so many ohms. */
  public Explanation explain(double ohms) {
    Likelihood likelihood = at(ohms);
    List<Double> outliers = new ArrayList<>();
    for (int r = 0; r < shared.problem().observations().count(); r++) {
      outliers.add(r == likelihood.outlier() ? likelihood.outlierShare() : 0.0);
    }
    double[] mean = meanAt(ohms);
    return new Explanation(
        joint.isPresent() ? InferenceProblem.degraded(joint, ohms) : fixed,
        Arrays.stream(mean).boxed().toList(),
        withDrift(voltsAt(mean, ohms), likelihood.outlier()),
        outliers);
  }

  /** The prediction at other parameters than those of the linearisation point. */
  private double[] voltsAt(double[] where, double ohms) {
    double[] volts = volts(ohms);
    double[] jacobian = shared.evaluation().jacobian();
    List<Integer> active = shared.active();
    for (int r = 0; r < volts.length; r++) {
      for (int c = 0; c < active.size(); c++) {
        int place = active.get(c);
        volts[r] += jacobian[r * active.size() + c] * (where[place] - point[place]);
      }
    }
    return volts;
  }

  /** Adds to each test the drift that its readings ask for. */
  private List<Double> withDrift(double[] volts, int outlier) {
    Observations observations = shared.problem().observations();
    double[] perSupply = shared.evaluation().perSupply();
    List<Double> result = new ArrayList<>();
    int from = 0;
    while (from < observations.count()) {
      int to = from;
      double square = 1;
      double along = 0;
      while (to < observations.count() && observations.testOf(to) == observations.testOf(from)) {
        if (to != outlier && !leftOut.get(to)) {
          double drift = observations.driftSigma(to) * perSupply[to];
          square += drift * drift / observations.variance(to);
          along += drift * (observations.value(to) - volts[to]) / observations.variance(to);
        }
        to++;
      }
      for (int r = from; r < to; r++) {
        result.add(volts[r] + observations.driftSigma(r) * along / square * perSupply[r]);
      }
      from = to;
    }
    return List.copyOf(result);
  }
}
