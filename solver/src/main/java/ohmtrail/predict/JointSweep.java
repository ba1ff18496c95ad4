package ohmtrail.predict;

import java.util.List;
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
 * A reading whose loads follow their voltage is solved anew at every R, with them settled.
 * Immutable; safe to share.
 */
public final class JointSweep {
  private final SurveyModel model;
  private final JointResponse response;
  private final String joint;
  private final int parameters;
  private final Optional<JointSweep> watched;

  /** Per reading and parameter, complex interleaved: coefficients of 1, k and k squared. */
  private final double[] constant;

  private final double[] linear;
  private final double[] quadratic;

  JointSweep(SurveyModel model, String joint, JointResponse response) {
    this.model = model;
    this.response = response;
    this.joint = joint;
    this.parameters = model.parameters().size();
    this.watched = response.watched().map(JointResponse::sweep);
    int readings = model.readings();
    constant = new double[2 * readings * parameters];
    linear = new double[2 * readings * parameters];
    quadratic = new double[2 * readings * parameters];
    for (int r = 0; r < readings; r++) {
      prepare(r, model.states().get(r), joint);
    }
  }

  private void prepare(int r, ReadingState state, String joint) {
    if (!state.isLinear()) {
      return;
    }
    int gap = state.wiring().jointPort(joint);
    double[] w = state.driven();
    double[] c = state.towardsMeter();
    double[] y = state.attachments().responses(gap);
    double[] plain = model.plainSlopes(r);
    System.arraycopy(plain, 0, constant, 2 * r * parameters, plain.length);
    double[] first = new double[2 * parameters];
    double[] second = new double[2 * parameters];
    state.wiring().elements().addProducts(c, w, y, gap, first, second);
    state.ownElements().addProducts(c, w, y, gap, first, second);
    if (state.hasFactorSlopes()) {
      Complex step = state.stepAtPort(gap);
      state.addFactorSlopes(step.re(), step.im(), first);
    }
    System.arraycopy(first, 0, linear, 2 * r * parameters, first.length);
    double iRe = w[2 * gap];
    double iIm = w[2 * gap + 1];
    double cRe = c[2 * gap];
    double cIm = c[2 * gap + 1];
    scale(second, cRe * iRe - cIm * iIm, cRe * iIm + cIm * iRe);
    System.arraycopy(second, 0, quadratic, 2 * r * parameters, second.length);
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
    double[] slopes = new double[2 * parameters];
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
      int from = 2 * r * parameters;
      for (int i = 0; i < slopes.length; i += 2) {
        double bRe = linear[from + i];
        double bIm = linear[from + i + 1];
        double qRe = quadratic[from + i];
        double qIm = quadratic[from + i + 1];
        slopes[i] =
            constant[from + i] - (bRe * kRe - bIm * kIm) + (qRe * squareRe - qIm * squareIm);
        slopes[i + 1] =
            constant[from + i + 1] - (bRe * kIm + bIm * kRe) + (qRe * squareIm + qIm * squareRe);
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
    ReadingState settled = state.with(Attachment.series(state.wiring().jointPort(joint), ohms));
    Complex shown = settled.shown();
    model.finish(r, settled, shown.re(), shown.im(), model.sumPlain(settled), into);
    boolean open = Double.isInfinite(ohms);
    into.ohmsSlope()[r] = open ? 0 : model.ohmsSlope(settled, joint, ohms);
  }
}
