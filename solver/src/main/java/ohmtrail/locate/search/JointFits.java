package ohmtrail.locate.search;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.List;
import java.util.Optional;
import ohmtrail.locate.evidence.LogSpace;
import ohmtrail.locate.fit.GaussNewton;
import ohmtrail.locate.fit.HypothesisFit;
import ohmtrail.locate.fit.LinearModel;
import ohmtrail.locate.fit.PiecewiseLinearModel;
import ohmtrail.locate.fit.Relinearisation;
import ohmtrail.locate.hypothesis.Hypothesis.OneJoint;
import ohmtrail.locate.hypothesis.OhmsPeak;
import ohmtrail.locate.hypothesis.OhmsProfile;
import ohmtrail.locate.settings.Settings;
import ohmtrail.predict.SurveyModel;

/**
 * Fits joints that predict the same readings, and follows each over its ohms with the model
 * linearised at the fits. Belongs to one thread.
 *
 * @param circuit the circuit, scanned
 * @param best the highest log posterior of any hypothesis so far
 */
record JointFits(ScannedCircuit circuit, double best) {
  /**
   * A joint, worked out.
   *
   * @param scan of it
   * @param hypothesis what came of it
   * @param point where its model was linearised; empty where the scan was enough
   */
  record Found(JointScan scan, OneJoint hypothesis, Optional<List<Double>> point) {
    /** A joint whose likelihood is known only roughly. */
    Found(JointScan scan, OneJoint hypothesis) {
      this(scan, hypothesis, Optional.empty());
    }

    /** A joint worked out with a linear model. */
    Found(JointScan scan, OneJoint hypothesis, LinearModel model) {
      this(scan, hypothesis, Optional.of(Arrays.stream(model.point()).boxed().toList()));
    }
  }

  private Settings.Shortlist settings() {
    return circuit.problem().settings().shortlist();
  }

  /** Fits a group, the most probable joint first. */
  List<Found> fit(List<JointScan> group) {
    JointScan first = group.get(0);
    BitSet outliers = first.outliers();
    HypothesisFit.Result fitted = circuit.fit(first, outliers);
    if (outliers.isEmpty() || !matterWithoutOutlier(first)) {
      return follow(group, fitted, outliers);
    }
    HypothesisFit.Result without = circuit.fit(first, new BitSet());
    SurveyModel model = model(first, fitted.point());
    SurveyModel other = model(first, without.point());
    List<Found> found = new ArrayList<>();
    for (JointScan scan : group) {
      found.add(
          followBoth(
              scan,
              keep(scan, model, fitted),
              linearise(scan, other, without.point()),
              fitted,
              without));
    }
    return found;
  }

  private boolean matterWithoutOutlier(JointScan scan) {
    double behind = scan.likelihood().log() - scan.likelihood().logNoOutlier();
    return scan.logPosterior() - behind > best - settings().worthAFit();
  }

  /** The survey's model at a point, which may be the one that a joint was scanned with. */
  private SurveyModel model(JointScan scan, double[] point) {
    return scan.model().isAt(point) ? scan.model().model() : circuit.workspace().models().at(point);
  }

  private LinearModel linearise(JointScan scan, SurveyModel model, double[] point) {
    return scan.model().isAt(point)
        ? scan.model()
        : LinearModel.of(circuit.workspace(), model, Optional.of(scan.joint()), point);
  }

  /** The model at the fit, or as scanned where the fit has failed. */
  private LinearModel keep(JointScan scan, SurveyModel model, HypothesisFit.Result fitted) {
    LinearModel linear = linearise(scan, model, fitted.point());
    double log = Math.max(linear.at(scan.ohms()).log(), linear.at(fitted.ohms()).log());
    return circuit.hasFailed(log, scan.likelihood().log()) ? scan.model() : linear;
  }

  /** The model linearised at the parameters that go with so many ohms. It keeps its own array. */
  private static final class Linearisation {
    private final double ohms;
    private final SurveyModel model;
    private final double[] point;

    Linearisation(double ohms, SurveyModel model, double[] point) {
      this.ohms = ohms;
      this.model = model;
      this.point = point;
    }
  }

  /**
   * Follows the joints of a group with the model linearised in every valley that matters, and once
   * more at either end where the ohms are left wide open: there the parameters differ.
   */
  private List<Found> follow(List<JointScan> group, HypothesisFit.Result fitted, BitSet outliers) {
    JointScan first = group.get(0);
    List<Linearisation> linearisations = new ArrayList<>();
    linearisations.add(
        new Linearisation(fitted.ohms(), model(first, fitted.point()), fitted.point()));
    for (GaussNewton.Place peak : first.peaks()) {
      double behind = first.likelihood().log() - peak.likelihood().log();
      if (behind < settings().worthAFit() && isFar(linearisations, peak.ohms())) {
        HypothesisFit.Result other = circuit.fit(first, peak, outliers);
        settled(first, other.ohms(), other.point())
            .filter(each -> isFar(linearisations, each.ohms))
            .ifPresent(linearisations::add);
      }
    }
    int before = linearisations.size();
    PiecewiseLinearModel model = join(first, linearisations, fitted);
    OneJoint leader = follow(first, model, fitted.ohms());
    if (leader.logPosterior() > best - settings().worthLinearisingAgain()) {
      OhmsProfile profile = leader.profile().orElseThrow();
      for (double share : List.of(settings().tail(), 1 - settings().tail())) {
        double end = profile.quantile(share);
        if (model.distance(end) > settings().farApart()) {
          double[] start = model.nearest(end).meanAt(end);
          linearisations.add(linearisation(first, end, start, outliers));
        }
      }
    }
    boolean isDone = linearisations.size() == before;
    List<Found> found = new ArrayList<>();
    for (JointScan scan : group) {
      boolean isKept = scan == first && isDone;
      PiecewiseLinearModel own = isKept ? model : join(scan, linearisations, fitted);
      OneJoint hypothesis = isKept ? leader : follow(scan, own, fitted.ohms());
      found.add(new Found(scan, hypothesis, own.nearest(hypothesis.peakOhms())));
    }
    return found;
  }

  /**
   * The model where the readings put the parameters at so many ohms. Where steps do not settle, the
   * linear model speaks of places that it does not know, such as ohms beyond a limit, and the
   * parameters are fitted.
   */
  private Linearisation linearisation(
      JointScan first, double ohms, double[] start, BitSet outliers) {
    return settled(first, ohms, start)
        .orElseGet(
            () -> {
              double[] point = circuit.fitParameters(first.joint(), ohms, outliers).point();
              return new Linearisation(ohms, model(first, point), point);
            });
  }

  /** The same by steps alone; empty where they do not settle. */
  private Optional<Linearisation> settled(JointScan first, double ohms, double[] start) {
    return new Relinearisation(circuit.workspace(), Optional.of(first.joint()), new BitSet())
        .holding(ohms, start)
        .map(end -> new Linearisation(ohms, end.model().model(), end.model().point()));
  }

  private boolean isFar(List<Linearisation> known, double ohms) {
    return known.stream()
        .allMatch(
            each ->
                Double.isInfinite(each.ohms) != Double.isInfinite(ohms)
                    || Math.abs(Math.log(each.ohms / ohms)) > settings().farApart());
  }

  private PiecewiseLinearModel join(
      JointScan scan, List<Linearisation> linearisations, HypothesisFit.Result fitted) {
    List<PiecewiseLinearModel.Knot> knots = new ArrayList<>();
    knots.add(
        new PiecewiseLinearModel.Knot(
            fitted.ohms(), keep(scan, linearisations.get(0).model, fitted)));
    linearisations.stream()
        .skip(1)
        .forEach(
            each ->
                knots.add(
                    new PiecewiseLinearModel.Knot(
                        each.ohms, linearise(scan, each.model, each.point))));
    return PiecewiseLinearModel.of(knots, circuit.problem().settings().profile().ohmsOfOpen());
  }

  private OneJoint follow(JointScan scan, PiecewiseLinearModel model, double fittedOhms) {
    List<OhmsPeak> peaks = new ArrayList<>();
    peaks.add(model.nearest(fittedOhms).climb(fittedOhms));
    scan.peaks().forEach(peak -> peaks.add(model.nearest(peak.ohms()).climb(peak.ohms())));
    return circuit.follow(scan, model::logLikelihood, peaks, model::nearest, best);
  }

  /**
   * With an outlier: that case, and the one that there is none, each linearised at a fit of its
   * own.
   */
  private Found followBoth(
      JointScan scan,
      LinearModel oneOutlier,
      LinearModel noOutlier,
      HypothesisFit.Result fitted,
      HypothesisFit.Result without) {
    List<OhmsPeak> peaks = new ArrayList<>();
    scan.peaks().forEach(peak -> peaks.add(oneOutlier.climb(peak.ohms())));
    peaks.add(oneOutlier.climb(fitted.ohms()));
    peaks.add(noOutlier.climb(without.ohms()));
    OneJoint hypothesis =
        circuit.follow(
            scan,
            ohms ->
                LogSpace.sum(
                    oneOutlier.at(ohms).logOneOutlier(), noOutlier.at(ohms).logNoOutlier()),
            peaks,
            ohms -> oneOutlier,
            best);
    return new Found(scan, hypothesis, oneOutlier);
  }
}
