package ohmtrail.predict;

import java.util.Arrays;
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
 * 48 bytes per reading and felt parameter. Immutable; safe to share.
 */
public final class JointSweep {
  /** Coefficients per reading and felt parameter: of 1, k and k squared, each two numbers. */
  private static final int KINDS = 6;

  private final SurveyModel model;
  private final JointResponse response;
  private final String joint;

  /** Places of the parameters whose slopes are told. */
  private final int[] felt;

  private final Optional<JointSweep> watched;

  /**
   * Per reading, so many figures per felt parameter: the coefficients of 1, k and k squared, real
   * parts and imaginary parts one after the other. Empty where a load follows its voltage.
   */
  private final double[][] coefficients;

  /** The wirings of readings whose loads follow their voltage, ready for ohms in the joint. */
  private final Map<Wiring, Wiring> ready;

  JointSweep(SurveyModel model, String joint, JointResponse response, int[] felt) {
    this.model = model;
    this.response = response;
    this.joint = joint;
    this.felt = felt.clone();
    this.ready = new HashMap<>();
    this.watched = response.watched().map(devices -> devices.sweep(felt));
    int readings = model.readings();
    coefficients = new double[readings][0];
    Map<Wiring, Wiring> driven = new HashMap<>();
    Map<Elements, Elements> some = new HashMap<>();
    double[] first = new double[2 * model.parameters().size()];
    double[] second = new double[2 * model.parameters().size()];
    for (int r = 0; r < readings; r++) {
      ReadingState state = model.states().get(r);
      int gap = state.wiring().jointPort(joint);
      Wiring own = driven.computeIfAbsent(state.wiring(), wiring -> wiring.driving(gap));
      if (state.isLinear()) {
        Arrays.fill(first, 0);
        Arrays.fill(second, 0);
        Elements elements =
            some.computeIfAbsent(state.wiring().elements(), every -> every.only(felt));
        coefficients[r] = prepare(r, state, gap, own, elements, first, second);
      } else {
        ready.put(state.wiring(), own);
      }
    }
  }

  private JointSweep(JointSweep whole, int[] felt) {
    this.model = whole.model;
    this.response = whole.response;
    this.joint = whole.joint;
    this.felt = felt.clone();
    this.ready = whole.ready;
    this.watched = whole.watched.map(devices -> new JointSweep(devices, felt));
    int[] columns =
        Arrays.stream(felt).map(place -> Arrays.binarySearch(whole.felt, place)).toArray();
    this.coefficients = new double[whole.coefficients.length][0];
    for (int r = 0; r < coefficients.length; r++) {
      double[] all = whole.coefficients[r];
      if (all.length > 0) {
        coefficients[r] = new double[KINDS * felt.length];
        for (int kind = 0; kind < KINDS; kind++) {
          for (int f = 0; f < felt.length; f++) {
            coefficients[r][kind * felt.length + f] = all[kind * whole.felt.length + columns[f]];
          }
        }
      }
    }
  }

  /**
   * The same with the slopes of fewer parameters.
   *
   * @param places theirs, ascending; of those that this one tells
   */
  public JointSweep only(int[] places) {
    return Arrays.equals(places, felt) ? this : new JointSweep(this, places);
  }

  private double[] prepare(
      int r,
      ReadingState state,
      int gap,
      Wiring own,
      Elements elements,
      double[] first,
      double[] second) {
    double[] w = state.driven();
    double[] c = state.towardsMeter();
    double[] y = state.attachments().through(own.response()).responses(gap);
    elements.addProducts(c, w, y, gap, first, second);
    state.ownElements().addProducts(c, w, y, gap, first, second);
    if (state.hasFactorSlopes()) {
      Complex step = state.stepAtPort(gap);
      state.addFactorSlopes(step.re(), step.im(), first);
    }
    double iRe = w[2 * gap];
    double iIm = w[2 * gap + 1];
    double cRe = c[2 * gap];
    double cIm = c[2 * gap + 1];
    scale(second, cRe * iRe - cIm * iIm, cRe * iIm + cIm * iRe);
    double[] plain = model.plainSlopes(r);
    int count = felt.length;
    double[] some = new double[KINDS * count];
    for (int f = 0; f < count; f++) {
      int at = 2 * felt[f];
      some[f] = plain[at];
      some[count + f] = plain[at + 1];
      some[2 * count + f] = first[at];
      some[3 * count + f] = first[at + 1];
      some[4 * count + f] = second[at];
      some[5 * count + f] = second[at + 1];
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
   * @param into tells the slopes of the parameters that are felt here
   */
  public void evaluate(double ohms, Evaluation into) {
    if (!Arrays.equals(into.places(), felt)) {
      throw new IllegalArgumentException(
          "Slopes ("
              + into.parameters()
              + ") must be those of the parameters that the sweep tells ("
              + felt.length
              + ")\nMaybe ask the model for a buffer of the same parameters.");
    }
    watched.ifPresent(devices -> devices.evaluate(ohms, into.watched().orElseThrow()));
    List<ReadingState> states = model.states();
    SeriesOhms added = SeriesOhms.of(ohms);
    for (int r = 0; r < states.size(); r++) {
      ReadingState state = states.get(r);
      if (state.isLinear()) {
        evaluate(r, state, added, into);
      } else {
        settle(r, state, ohms, into);
      }
    }
  }

  private void evaluate(int r, ReadingState state, SeriesOhms added, Evaluation into) {
    double yRe = response.admittance()[2 * r];
    double yIm = response.admittance()[2 * r + 1];
    double kRe = added.kRe(yRe, yIm);
    double kIm = added.kIm(yRe, yIm);
    double stepRe = response.step()[2 * r];
    double stepIm = response.step()[2 * r + 1];
    double re = response.healthyVolts()[2 * r] - (stepRe * kRe - stepIm * kIm);
    double im = response.healthyVolts()[2 * r + 1] - (stepRe * kIm + stepIm * kRe);
    double unitRe = model.unit(state, re, im, re);
    double unitIm = model.unit(state, re, im, im);
    project(r, kRe, kIm, unitRe, unitIm, into.jacobian());
    model.finishReal(r, state, re, im, into);
    // dk/d(ln R) = k^2/R = k/(1 + y R)
    double hRe = added.shareRe(yRe, yIm);
    double hIm = added.shareIm(yRe, yIm);
    double gRe = kRe * hRe - kIm * hIm;
    double gIm = kRe * hIm + kIm * hRe;
    into.ohmsSlope()[r] =
        unitRe * (stepIm * gIm - stepRe * gRe) - unitIm * (stepRe * gIm + stepIm * gRe);
  }

  /** The slopes of one reading: those of 1, k and k squared along its direction, k given. */
  private void project(
      int r, double kRe, double kIm, double unitRe, double unitIm, double[] jacobian) {
    double squareRe = kRe * kRe - kIm * kIm;
    double squareIm = 2 * kRe * kIm;
    double ofLinearRe = unitRe * kRe + unitIm * kIm;
    double ofLinearIm = unitIm * kRe - unitRe * kIm;
    double ofSquareRe = unitRe * squareRe + unitIm * squareIm;
    double ofSquareIm = unitIm * squareRe - unitRe * squareIm;
    double[] of = coefficients[r];
    int count = felt.length;
    int row = r * count;
    for (int f = 0; f < count; f++) {
      jacobian[row + f] =
          ofLinearRe * of[2 * count + f]
              + ofLinearIm * of[3 * count + f]
              - ofSquareRe * of[4 * count + f]
              - ofSquareIm * of[5 * count + f]
              - unitRe * of[f]
              - unitIm * of[count + f];
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
