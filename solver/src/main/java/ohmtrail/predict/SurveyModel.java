package ohmtrail.predict;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import ohmtrail.circuit.Circuit;
import ohmtrail.circuit.Joint;
import ohmtrail.network.Complex;
import ohmtrail.reference.Assumptions;
import ohmtrail.survey.Survey;
import ohmtrail.survey.Test;

/**
 * The readings of a survey as functions of the ohms added in a joint and of the parameters, at one
 * point of the parameters.
 *
 * <p>The circuit is solved once. For each reading the loads of its test and its own meter are
 * attached (three rows at most on an ordinary survey); two columns are kept: how every port
 * responds to the supply, and how the reading responds to every port. Then a change of an impedance
 * dZ at a gap, or of an admittance dY at a pair, moves the reading by
 *
 * <pre>dv = - (transfer from there to the meter) (what flows or stands there) dZ    (or dY)</pre>
 *
 * the adjoint method for network sensitivities (Director and Rohrer, 1969, from memory). Immutable;
 * safe to share.
 *
 * <p>The voltage behind the supply impedance of each test has a drift of its own; that is left to
 * the caller, who finds how strongly each reading follows it in {@link Evaluation#perSupply()}.
 */
public final class SurveyModel {
  /**
   * Drift of a meter's own phase reference is nil: below this many volts per volt of supply a
   * reading has no direction.
   */
  private static final double SMALLEST_RATIO = 1e-12;

  private final Parameters parameters;
  private final List<ReadingState> states;

  /** The GFCIs and RCDs that somebody watched, each read like an ammeter. */
  private final Optional<SurveyModel> watched;

  /**
   * Per reading, how it moves per unit of each parameter with nothing added: complex interleaved,
   * sign reversed.
   */
  private final double[][] plainSlopes;

  private SurveyModel(
      Parameters parameters, List<ReadingState> states, Optional<SurveyModel> watched) {
    this.watched = watched;
    this.parameters = parameters;
    this.states = List.copyOf(states);
    this.plainSlopes = new double[states.size()][];
    for (int r = 0; r < states.size(); r++) {
      plainSlopes[r] = sumPlain(states.get(r));
    }
  }

  /**
   * Solves a circuit for a survey.
   *
   * @param circuit the circuit
   * @param survey loads, meters, tests and readings; must fit the circuit
   * @param assumptions healthy joints, temperature
   * @param parameters from the same circuit, survey and assumptions
   * @param point u of each parameter
   * @param joints the joints that ohms will be swept in; any other may be as well
   * @param degradations ohms that are there already
   */
  public static SurveyModel of(
      Circuit circuit,
      Survey survey,
      Assumptions assumptions,
      Parameters parameters,
      double[] point,
      List<Joint> joints,
      List<Degradation> degradations) {
    ReadingStates builder =
        ReadingStates.of(
            circuit,
            survey,
            assumptions,
            parameters,
            point,
            degradations,
            ReadingStates.Meters.STAY);
    List<ReadingState> states = new ArrayList<>();
    List<ReadingState> devices = new ArrayList<>();
    for (Test test : survey.tests()) {
      test.readings().forEach(reading -> states.add(builder.build(test, reading)));
      test.trips().forEach(trip -> devices.add(builder.build(test, trip)));
    }
    Optional<SurveyModel> watched =
        devices.isEmpty()
            ? Optional.empty()
            : Optional.of(new SurveyModel(parameters, devices, Optional.empty()));
    return new SurveyModel(parameters, states, watched);
  }

  /** Number of readings, in the order of the survey. */
  public int readings() {
    return states.size();
  }

  /** The parameters. */
  public Parameters parameters() {
    return parameters;
  }

  /** A buffer of the right size, with the slopes of every parameter. */
  public Evaluation buffer() {
    return buffer(allPlaces());
  }

  /**
   * A buffer with the slopes of some parameters only.
   *
   * @param places theirs, ascending
   */
  public Evaluation buffer(int[] places) {
    return new Evaluation(
        states.size(), places.clone(), watched.map(devices -> devices.buffer(places)));
  }

  int[] allPlaces() {
    return IntStream.range(0, parameters.size()).toArray();
  }

  /** The readings with nothing added, and their slopes. */
  public void evaluate(Evaluation into) {
    Arrays.fill(into.ohmsSlope(), 0);
    watched.ifPresent(devices -> devices.evaluate(into.watched().orElseThrow()));
    for (int r = 0; r < states.size(); r++) {
      ReadingState state = states.get(r);
      Complex volts = state.shown();
      double[] slopes = plainSlopes[r];
      finish(r, state, volts.re(), volts.im(), slopes, into);
    }
  }

  /**
   * How the readings change with the ohms of a degradation that the model was built with.
   *
   * @param degradation one of the model's, its ohms finite
   * @param into receives volts per unit of ln R, one per reading; zero where the ohms do not hold
   */
  public void ohmsSlope(Degradation degradation, double[] into) {
    for (int r = 0; r < into.length; r++) {
      ReadingState state = states.get(r);
      boolean there = degradation.when().covers(state.test());
      into[r] = there ? ohmsSlope(state, degradation.joint(), degradation.ohms()) : 0;
    }
  }

  /** Per unit of ln R of ohms that are in place in a joint. */
  double ohmsSlope(ReadingState state, String joint, double ohms) {
    int port = state.wiring().jointPort(joint);
    Complex toMeter = state.towardsMeterAt(port);
    Complex current = state.drivenAt(port);
    double sign = state.wiring().signTowardsMeter(port);
    Complex slope = toMeter.times(current).times(-sign * ohms);
    Complex shown = state.shown();
    return project(state, shown.re(), shown.im(), slope.re(), slope.im());
  }

  /**
   * The readings as ohms are added in one joint. The joint must be among those the model was built
   * for.
   */
  public JointSweep sweep(Joint joint) {
    return respond(joint).sweep();
  }

  /** The same without slopes, at a fraction of the cost. */
  public JointResponse respond(Joint joint) {
    return new JointResponse(this, joint.id());
  }

  List<ReadingState> states() {
    return states;
  }

  /**
   * The GFCIs and RCDs that somebody watched as a survey of its own, each read like an ammeter that
   * shows its imbalance; empty where nobody watched one.
   */
  public Optional<SurveyModel> watched() {
    return watched;
  }

  /** What a meter shows per unit of what {@link ReadingState#shown} tells. */
  double scale(ReadingState state) {
    return state.followsSupply() ? state.gain() * state.sourceVolts() : state.gain();
  }

  /**
   * How the complex reading moves per unit of each parameter with nothing added; for reading only.
   */
  double[] plainSlopes(int reading) {
    return plainSlopes[reading];
  }

  double[] sumPlain(ReadingState state) {
    double[] slopes = new double[2 * parameters.size()];
    double[] c = state.towardsMeter();
    double[] w = state.driven();
    state.wiring().elements().addPlain(c, w, slopes);
    state.ownElements().addPlain(c, w, slopes);
    Complex atPort = state.atPort();
    state.addFactorSlopes(atPort.re(), atPort.im(), slopes);
    return slopes;
  }

  /**
   * From the complex ratio at the meter to the volts shown, and from complex slopes to those of the
   * magnitude.
   *
   * @param slopes of every parameter, complex interleaved, sign reversed
   */
  void finish(
      int reading, ReadingState state, double re, double im, double[] slopes, Evaluation into) {
    double[] jacobian = into.jacobian();
    int[] places = into.places();
    int row = reading * places.length;
    double unitRe = unit(state, re, im, re);
    double unitIm = unit(state, re, im, im);
    for (int c = 0; c < places.length; c++) {
      int at = 2 * places[c];
      jacobian[row + c] = -(unitRe * slopes[at] + unitIm * slopes[at + 1]);
    }
    finishReal(reading, state, re, im, into);
  }

  /**
   * What the volts shown move by per unit of the real (imaginary) part of the complex ratio: 0
   * where the reading has no direction.
   *
   * @param part the real (imaginary) part
   */
  double unit(ReadingState state, double re, double im, double part) {
    double ratio = Math.sqrt(re * re + im * im);
    return ratio > SMALLEST_RATIO ? scale(state) * part / ratio : 0;
  }

  /** The volts shown, and the slopes of what multiplies them: supply and gain. */
  void finishReal(int reading, ReadingState state, double re, double im, Evaluation into) {
    double scale = scale(state);
    double volts = scale * Math.sqrt(re * re + im * im);
    double perSupply = state.isLinear() ? volts : scale * state.perSupply();
    if (state.followsSupply()) {
      addSlope(reading, parameters.place(Parameters.Single.SUPPLY_VOLTAGE), perSupply, into);
      state.steps().forEach(step -> addSlope(reading, step, perSupply, into));
    }
    state.gainPlace().ifPresent(place -> addSlope(reading, place, volts, into));
    into.perSupply()[reading] = perSupply;
    into.volts()[reading] = volts;
  }

  private void addSlope(int reading, int place, double perLog, Evaluation into) {
    int column = into.columnOf(place);
    if (column >= 0) {
      into.jacobian()[reading * into.parameters() + column] += perLog * parameters.sigma(place);
    }
  }

  /** d(volts)/d(complex ratio) along a complex direction. */
  double project(ReadingState state, double re, double im, double dRe, double dIm) {
    double ratio = Math.sqrt(re * re + im * im);
    return ratio > SMALLEST_RATIO ? scale(state) * (re * dRe + im * dIm) / ratio : 0;
  }
}
