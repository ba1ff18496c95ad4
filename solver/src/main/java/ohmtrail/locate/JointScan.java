package ohmtrail.locate;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.DoubleUnaryOperator;
import java.util.function.ToDoubleFunction;
import ohmtrail.circuit.Joint;
import ohmtrail.predict.Evaluation;
import ohmtrail.predict.JointSweep;
import ohmtrail.predict.SurveyModel;

/**
 * A first look at one joint: the ohms at which the readings fit it best, with the model linearised
 * where everything is as stated. Good enough to tell the joints that are worth a proper fit from
 * those that are not.
 */
final class JointScan {
  /** Predictions nearer than so many standard deviations of each reading are alike. */
  private static final double ALIKE = 0.3;

  /** Peaks nearer than this in ln R are one, and more than so many are not kept. */
  private static final double SAME_PEAK = 0.05;

  private static final int MOST_PEAKS = 4;

  /** A step of the coarse sweep, in ln R. */
  private static final double AROUND_A_PEAK = 1.2;

  /**
   * Parameters that the readings move by less than this, in standard deviations, may stay where the
   * model was linearised.
   */
  static final double SETTLED = 0.5;

  /** A weight that is e^-60 of the best is nothing. */
  private static final double NOTHING = 60;

  /** A joint e^-30 behind is not climbing back. */
  private static final double OUT_OF_REACH = 30;

  private final Joint joint;
  private final CoarseLook look;
  private final JointSweep sweep;
  private final Start start;
  private final Ascent ascent;

  /** One per start; the heaviest first. */
  private final List<Ascent.Place> peaks = new ArrayList<>();

  /** What all scans share: the readings, the prior and buffers. */
  static final class Start {
    private final SurveyModel model;
    private final OhmsCurve.Prior prior;
    private final double[] point;
    private final int[] active;
    private final Weigher weigher;
    private final Evaluation evaluation;

    /** The misfit of the nearest joint at a coarse look. */
    private final double nearest;

    Start(
        SurveyModel model,
        double[] point,
        Observations observations,
        OhmsCurve.Prior prior,
        int[] active,
        double nearest) {
      this.nearest = nearest;
      this.model = model;
      this.prior = prior;
      this.point = point.clone();
      this.active = active.clone();
      this.weigher = new Weigher(observations, active, new BitSet());
      this.evaluation = model.buffer();
    }
  }

  /** Starts at each of the ohms of a coarse look. */
  JointScan(CoarseLook look, JointSweep sweep, Start start) {
    this.joint = look.joint();
    this.look = look;
    this.sweep = sweep;
    this.start = start;
    this.ascent = new Ascent(this::weigh, start.prior);
    look.starts().forEach(ohms -> peaks.add(ascent.at(ohms)));
    order();
  }

  private Weigher.Weight weigh(double ohms) {
    sweep.evaluate(ohms, start.evaluation);
    return start.weigher.weigh(start.evaluation, start.point);
  }

  private void order() {
    peaks.sort(
        Comparator.comparingDouble((Ascent.Place peak) -> peak.weight().logWeight()).reversed());
  }

  /** Lets every joint that may yet come near the best of them climb. */
  static void climbTogether(List<JointScan> scans) {
    double best = scans.stream().mapToDouble(scan -> scan.weight().logWeight()).max().orElse(0);
    scans.forEach(scan -> scan.climb(best - OUT_OF_REACH));
  }

  private void climb(double floor) {
    List<Ascent.Place> climbed = new ArrayList<>();
    for (Ascent.Place peak : peaks) {
      if (peak.weight().logWeight() + 2 * peak.weight().expectedGain() <= floor) {
        climbed.add(peak);
        continue;
      }
      if (peak.weight().wrongReading() >= 0) {
        // A reading far off may be wrong, or the ohms are: both are worth a climb.
        climbed.add(ascent.climbAllRight(peak));
      }
      climbed.add(ascent.climb(peak));
    }
    peaks.clear();
    keep(climbed, Weigher.Weight::logAllRight, 1);
    keep(climbed, Weigher.Weight::logWeight, MOST_PEAKS);
    order();
  }

  /** Keeps the highest of those that are new, as long as there are no more than so many. */
  private void keep(List<Ascent.Place> climbed, ToDoubleFunction<Weigher.Weight> height, int most) {
    climbed.stream()
        .sorted(
            Comparator.comparingDouble((Ascent.Place peak) -> height.applyAsDouble(peak.weight()))
                .reversed())
        .filter(peak -> peaks.size() < most && isNew(peak))
        .forEach(peaks::add);
  }

  private boolean isNew(Ascent.Place peak) {
    return peaks.stream()
        .noneMatch(
            known ->
                known.ohms() == peak.ohms()
                    || Math.abs(Math.log(known.ohms() / peak.ohms())) < SAME_PEAK);
  }

  Joint joint() {
    return joint;
  }

  /**
   * The heavier first. Those whose weights differ by rounding alone come in the order of their
   * names: which of them is fitted must not hang on the order in which a case was written.
   *
   * @param logWeight what to go by
   */
  static Comparator<JointScan> heaviestFirst(ToDoubleFunction<JointScan> logWeight) {
    return Comparator.comparingDouble(
            (JointScan scan) -> Locator.rounded(logWeight.applyAsDouble(scan)))
        .reversed()
        .thenComparing(scan -> scan.joint().id());
  }

  /** The joints that no reading tells from it, itself among them. */
  List<Joint> twins() {
    return look.twins();
  }

  /** The best ohms; may be infinite. */
  double ohms() {
    return peaks.get(0).ohms();
  }

  /** Every peak that was found, the heaviest first. */
  List<Ascent.Place> peaks() {
    return List.copyOf(peaks);
  }

  Weigher.Weight weight() {
    return peaks.get(0).weight();
  }

  /**
   * Where the parameters of a fit may start: their posterior mean, or where everything is as stated
   * when a wrong reading has pulled that mean astray.
   */
  double[] startFor(Ascent.Place peak, BitSet leftOut) {
    if (peak.weight().wrongReading() >= 0 || !leftOut.isEmpty()) {
      return new double[start.weigher.mean().length];
    }
    weigh(peak.ohms());
    return start.weigher.mean().clone();
  }

  /** Whether its model was linearised where the parameters are these. */
  boolean isAt(double[] point) {
    return Arrays.equals(start.point, point);
  }

  /** The model that it looked through, in which any joint can be swept. */
  SurveyModel model() {
    return start.model;
  }

  /**
   * The fit of a peak where it needs no search: the readings leave the parameters where the model
   * was linearised. Empty where they want them elsewhere.
   *
   * @param leftOut readings to leave out
   */
  Optional<HypothesisFit.Result> settled(
      Ascent.Place peak, BitSet leftOut, Observations observations) {
    Linearised seen = linearised(observations).without(leftOut);
    boolean stays = Linearised.distance(seen.meanAt(peak.ohms()), start.point) < SETTLED;
    return stays
        ? Optional.of(
            new HypothesisFit.Result(
                Weighing.degraded(Optional.of(joint), peak.ohms()), start.point.clone(), true))
        : Optional.empty();
  }

  /**
   * A weight over the ohms that is worked out only where the joint comes near the readings: around
   * its peaks, and where a coarse look did not put it far off. Elsewhere it is as good as nothing.
   */
  DoubleUnaryOperator sparing(DoubleUnaryOperator logWeight) {
    double nothing = weight().logWeight() - NOTHING;
    return ohms ->
        isNearAPeak(ohms) || !look.isFarOffAt(ohms, start.nearest)
            ? logWeight.applyAsDouble(ohms)
            : nothing;
  }

  private boolean isNearAPeak(double ohms) {
    return peaks.stream()
        .anyMatch(
            peak -> peak.ohms() == ohms || Math.abs(Math.log(peak.ohms() / ohms)) < AROUND_A_PEAK);
  }

  /** The prediction at the best ohms, one per reading. */
  double[] volts() {
    double[] volts = new double[start.evaluation.readings()];
    sweep.volts(ohms(), volts);
    return volts;
  }

  /** Whether another joint predicts the same readings, and calls the same one wrong. */
  boolean isAlike(JointScan other, Observations observations) {
    double[] own = volts();
    double[] others = other.volts();
    for (int r = 0; r < own.length; r++) {
      if (Math.abs(own[r] - others[r]) > ALIKE * Math.sqrt(observations.variance(r))) {
        return false;
      }
    }
    return wrongReading().equals(other.wrongReading());
  }

  /** The joint with the model linearised where it was looked at. */
  Linearised linearised(Observations observations) {
    return new Linearised(
        start.model, joint, sweep, start.point, observations, start.active, new BitSet());
  }

  /** The reading that is more likely wrong than not; at most one. */
  BitSet wrongReading() {
    BitSet wrong = new BitSet();
    if (weight().wrongReading() >= 0) {
      wrong.set(weight().wrongReading());
    }
    return wrong;
  }

  /** Laplace approximation of the evidence: the peak's weight times its width under the prior. */
  double roughLogEvidence() {
    return weight().logWeight() + start.prior.logWidth(ohms(), weight().curvature());
  }
}
