package ohmtrail.predict;

import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import ohmtrail.network.Attachment;
import ohmtrail.network.Complex;

/**
 * The readings of a survey as functions of the ohms R in one joint, without their slopes.
 *
 * <p>With everything else in place each complex reading is v = v0 - t i0 k, where i0 is the current
 * through the healthy joint, t the transfer from its gap to the meter, y the admittance seen in the
 * gap, and k = R/(1 + y R): from nothing to 1/y when the joint is open. Where a load follows its
 * voltage it settles anew at every R. Immutable; safe to share.
 *
 * <p>It keeps three complex figures per reading and can be had of every joint of a long run; {@link
 * #sweep(int[])} keeps two more per reading and parameter, so have it of one joint after the other,
 * or of the few that come near the readings.
 */
public final class JointResponse {
  private final SurveyModel model;
  private final String joint;

  /** Per reading, complex interleaved: v0, t i0, y. */
  private final double[] volts;

  private final double[] step;
  private final double[] admittance;

  /** By reading, those whose loads follow their voltage. */
  private final Map<Integer, ToDoubleFunction<Attachment>> swept = new LinkedHashMap<>();

  private final Optional<JointResponse> watched;

  JointResponse(SurveyModel model, String joint) {
    this.model = model;
    this.joint = joint;
    this.watched = model.watched().map(devices -> new JointResponse(devices, joint));
    int readings = model.readings();
    volts = new double[2 * readings];
    step = new double[2 * readings];
    admittance = new double[2 * readings];
    Map<Wiring, Wiring> ready = new HashMap<>();
    for (int r = 0; r < readings; r++) {
      ReadingState state = model.states().get(r);
      int gap = state.wiring().jointPort(joint);
      prepare(r, state, gap, ready.computeIfAbsent(state.wiring(), own -> own.driving(gap)));
    }
  }

  private void prepare(int r, ReadingState state, int gap, Wiring ready) {
    if (!state.isLinear()) {
      swept.put(r, state.swept(ready, gap));
      return;
    }
    Complex shown = state.shown();
    volts[2 * r] = shown.re();
    volts[2 * r + 1] = shown.im();
    // The transfer from the gap to the meter is the reverse of that from the meter to the gap.
    Complex moved =
        state
            .towardsMeterAt(gap)
            .times(state.drivenAt(gap))
            .times(state.wiring().signTowardsMeter(gap));
    step[2 * r] = moved.re();
    step[2 * r + 1] = moved.im();
    state.attachments().through(ready.response()).transfer(gap, gap, admittance, r);
  }

  /**
   * Readings only.
   *
   * @param ohms added, not negative, infinity for open
   * @param into receives volts, one per reading
   */
  public void volts(double ohms, double[] into) {
    List<ReadingState> states = model.states();
    SeriesOhms added = SeriesOhms.of(ohms);
    for (int r = 0; r < into.length; r++) {
      if (!states.get(r).isLinear()) {
        into[r] = model.scale(states.get(r)) * settled(r, ohms);
        continue;
      }
      double yRe = admittance[2 * r];
      double yIm = admittance[2 * r + 1];
      double kRe = added.kRe(yRe, yIm);
      double kIm = added.kIm(yRe, yIm);
      double re = volts[2 * r] - (step[2 * r] * kRe - step[2 * r + 1] * kIm);
      double im = volts[2 * r + 1] - (step[2 * r] * kIm + step[2 * r + 1] * kRe);
      into[r] = model.scale(states.get(r)) * Math.sqrt(re * re + im * im);
    }
  }

  private double settled(int reading, double ohms) {
    int gap = model.states().get(reading).wiring().jointPort(joint);
    return Objects.requireNonNull(swept.get(reading)).applyAsDouble(Attachment.series(gap, ohms));
  }

  /** What the GFCIs and RCDs see that somebody watched; empty where nobody watched one. */
  public Optional<JointResponse> watched() {
    return watched;
  }

  /** The same with slopes: what a fit needs, at some cost. */
  public JointSweep sweep() {
    return sweep(model.allPlaces());
  }

  /**
   * The same with the slopes of some parameters only, in time and room that go with their number.
   *
   * @param felt places of the parameters that any reading feels, ascending; those of the others are
   *     not told
   */
  public JointSweep sweep(int[] felt) {
    return new JointSweep(model, joint, this, felt);
  }

  double[] healthyVolts() {
    return volts;
  }

  double[] step() {
    return step;
  }

  double[] admittance() {
    return admittance;
  }
}
