package ohmtrail.predict;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import ohmtrail.network.Attachment;
import ohmtrail.network.Complex;

/**
 * The readings of a survey as functions of the ohms R in one joint.
 *
 * <p>With everything else in place each complex reading is v = v0 - t i0 k, where i0 is the current
 * through the healthy joint, t the transfer from its gap to the meter, y the admittance seen in the
 * gap, and k = R/(1 + y R): from nothing to 1/y when the joint is open. Slopes follow in the same
 * way as quadratic forms in k. So a sweep over R costs a few operations per reading and parameter.
 * A reading whose loads follow their voltage is solved anew at every R, with them settled. It keeps
 * 32 bytes per reading and felt parameter. Immutable; safe to share.
 */
public final class JointSweep {
  private final SurveyModel model;
  private final JointResponse response;
  private final String joint;

  /** Places of the parameters whose slopes are told. */
  private final int[] felt;

  private final Optional<JointSweep> watched;

  /**
   * Per reading, one per felt parameter, complex interleaved: coefficients of k and of k squared;
   * that of 1 is the model's own. Empty where a load follows its voltage.
   */
  private final double[][] linear;

  private final double[][] quadratic;

  /** The wirings of readings whose loads follow their voltage, ready for ohms in the joint. */
  private final Map<Wiring, Wiring> ready = new HashMap<>();

  JointSweep(SurveyModel model, String joint, JointResponse response, int[] felt) {
    this.model = model;
    this.response = response;
    this.joint = joint;
    this.felt = felt.clone();
    this.watched = response.watched().map(devices -> devices.sweep(felt));
    int readings = model.readings();
    linear = new double[readings][0];
    quadratic = new double[readings][0];
    Map<Wiring, Wiring> driven = new HashMap<>();
    for (int r = 0; r < readings; r++) {
      ReadingState state = model.states().get(r);
      int gap = state.wiring().jointPort(joint);
      Wiring own = driven.computeIfAbsent(state.wiring(), wiring -> wiring.driving(gap));
      if (state.isLinear()) {
        prepare(r, state, gap, own);
      } else {
        ready.put(state.wiring(), own);
      }
    }
  }

  private void prepare(int r, ReadingState state, int gap, Wiring own) {
    double[] w = state.driven();
    double[] c = state.towardsMeter();
    double[] y = state.attachments().through(own.response()).responses(gap);
    double[] first = new double[2 * model.parameters().size()];
    double[] second = new double[2 * model.parameters().size()];
    state.wiring().elements().addProducts(c, w, y, gap, first, second);
    state.ownElements().addProducts(c, w, y, gap, first, second);
    if (state.hasFactorSlopes()) {
      Complex step = state.stepAtPort(gap);
      state.addFactorSlopes(step.re(), step.im(), first);
    }
    linear[r] = felt(first);
    quadratic[r] = felt(second);
    double iRe = w[2 * gap];
    double iIm = w[2 * gap + 1];
    double cRe = c[2 * gap];
    double cIm = c[2 * gap + 1];
    scale(quadratic[r], cRe * iRe - cIm * iIm, cRe * iIm + cIm * iRe);
  }

  private double[] felt(double[] slopes) {
    double[] some = new double[2 * felt.length];
    for (int f = 0; f < felt.length; f++) {
      some[2 * f] = slopes[2 * felt[f]];
      some[2 * f + 1] = slopes[2 * felt[f] + 1];
    }
    return some;
  }

  private static void scale(double[] values, double re, double im) {
    for (int i = 0; i < values.length; i += 2) {
      double a = values[i];
      double b = values[i + 1];
      values[i] = a * re - b * im;
      values[i + 1] = a * im + b * re;
    }
  }

  /**
   * Readings only.
   *
   * @param ohms added, not negative, infinity for open
   * @param into receives volts, one per reading
   */
  public void volts(double ohms, double[] into) {
    response.volts(ohms, into);
  }

  /**
   * Readings, their slopes per parameter and per ln R.
   *
   * @param ohms added, not negative, infinity for open
   */
  public void evaluate(double ohms, Evaluation into) {
    watched.ifPresent(devices -> devices.evaluate(ohms, into.watched().orElseThrow()));
    List<ReadingState> states = model.states();
    Attachment added = JointResponse.added(ohms);
    double observed = added.observed().re();
    double driven = added.driven().re();
    double[] volts = response.healthyVolts();
    double[] step = response.step();
    double[] admittance = response.admittance();
    double[] slopes = new double[2 * model.parameters().size()];
    for (int r = 0; r < states.size(); r++) {
      ReadingState state = states.get(r);
      if (!state.isLinear()) {
        settle(r, state, ohms, into);
        continue;
      }
      double dRe = observed + admittance[2 * r] * driven;
      double dIm = admittance[2 * r + 1] * driven;
      double square = dRe * dRe + dIm * dIm;
      double share = driven / square;
      double kRe = dRe * share;
      double kIm = -dIm * share;
      double squareRe = kRe * kRe - kIm * kIm;
      double squareIm = 2 * kRe * kIm;
      double[] constant = model.plainSlopes(r);
      double[] b = linear[r];
      double[] q = quadratic[r];
      for (int f = 0; f < felt.length; f++) {
        int at = 2 * felt[f];
        double bRe = b[2 * f];
        double bIm = b[2 * f + 1];
        double qRe = q[2 * f];
        double qIm = q[2 * f + 1];
        slopes[at] = constant[at] - (bRe * kRe - bIm * kIm) + (qRe * squareRe - qIm * squareIm);
        slopes[at + 1] =
            constant[at + 1] - (bRe * kIm + bIm * kRe) + (qRe * squareIm + qIm * squareRe);
      }
      double re = volts[2 * r] - (step[2 * r] * kRe - step[2 * r + 1] * kIm);
      double im = volts[2 * r + 1] - (step[2 * r] * kIm + step[2 * r + 1] * kRe);
      model.finish(r, state, re, im, slopes, into);
      // dk/d(ln R) = k^2/R = k/(1 + y R)
      double hRe = observed * dRe / square;
      double hIm = -observed * dIm / square;
      double gRe = kRe * hRe - kIm * hIm;
      double gIm = kRe * hIm + kIm * hRe;
      into.ohmsSlope()[r] =
          model.project(
              state,
              re,
              im,
              step[2 * r + 1] * gIm - step[2 * r] * gRe,
              -step[2 * r] * gIm - step[2 * r + 1] * gRe);
    }
  }

  /** A reading whose loads settle anew with the ohms in place. */
  private void settle(int r, ReadingState state, double ohms, Evaluation into) {
    Wiring own = Wiring.require(ready, state.wiring(), "Wiring");
    Attachment added = Attachment.series(own.jointPort(joint), ohms);
    ReadingState settled = state.with(own, added);
    Complex shown = settled.shown();
    model.finish(r, settled, shown.re(), shown.im(), model.sumPlain(settled), into);
    boolean open = Double.isInfinite(ohms);
    into.ohmsSlope()[r] = open ? 0 : model.ohmsSlope(settled, joint, ohms);
  }
}
