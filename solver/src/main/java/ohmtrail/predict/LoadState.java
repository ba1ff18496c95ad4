package ohmtrail.predict;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.IntFunction;
import ohmtrail.network.Attachment;
import ohmtrail.network.Attachments;
import ohmtrail.network.Complex;
import ohmtrail.predict.operating.SettledNetwork;
import ohmtrail.predict.operating.Shunts;

/**
 * A circuit with the loads of one test on, and the meter that draws meanwhile where one does, ready
 * for ohms in any of its joints.
 *
 * <p>With w what a port shows while the joint is sound, i0 the current through the joint, y the
 * admittance seen in its gap and t the transfer from there, a port shows w - t i0 k, where k = R/(1
 * + y R): one joint costs no new solution. Several joints, and loads that follow their voltage, are
 * settled anew. Immutable but for what it has worked out once.
 */
public final class LoadState {
  /** Ohms above which a joint is as good as open: k is 1/y to the last digit. */
  private static final double OPEN_OHMS = 1e15;

  private final Wiring wiring;
  private final TestLoads loads;
  private final Shunts shunts;
  private final Places places;
  private final double sourceVolts;
  private final Attachments attachments;
  private final double[] perVolt;
  private final Map<Integer, double[]> columns = new ConcurrentHashMap<>();

  /**
   * What is looked at, as ports.
   *
   * @param receptacles live to neutral, wherever something can be plugged in
   * @param grounds from the ground of each box to the panel's
   * @param neutrals from the neutral of each box to the panel's ground
   * @param sources the legs of the supply
   */
  record Places(
      List<Integer> receptacles,
      List<Integer> grounds,
      List<Integer> neutrals,
      List<Integer> sources) {}

  /**
   * Settles the sound circuit.
   *
   * @param loads the loads that are on
   * @param shunts those that stay what they are, and the meter
   */
  LoadState(Wiring wiring, TestLoads loads, Shunts shunts, Places places, double sourceVolts) {
    this.wiring = wiring;
    this.loads = loads;
    this.shunts = shunts;
    this.places = places;
    this.sourceVolts = sourceVolts;
    SettledNetwork sound = settled(wiring, List.of());
    this.attachments = sound.attachments();
    this.perVolt = sound.drivenBySupply();
  }

  private SettledNetwork settled(Wiring ready, List<Attachment> series) {
    return SettledNetwork.of(
        ready.response(), shunts, series, loads.dependent(), sourceVolts, wiring::drivenBySupply);
  }

  /**
   * The same with ohms added in joints.
   *
   * @param degradations at most one per joint; 0 ohm and none at all are the sound circuit
   */
  public FaultedState with(List<Degradation> degradations) {
    List<Degradation> added = degradations.stream().filter(each -> each.ohms() > 0).toList();
    if (added.isEmpty()) {
      return faulted(this::at, port -> transfer(port, port));
    }
    if (added.size() == 1 && loads.dependent().isEmpty()) {
      return withOne(added.get(0));
    }
    Wiring ready = wiring;
    List<Attachment> series = new ArrayList<>();
    for (Degradation each : added) {
      int gap = wiring.jointPort(each.joint());
      ready = ready.driving(gap);
      series.add(Attachment.series(gap, each.ohms()));
    }
    SettledNetwork settled = settled(ready, series);
    Wiring driven = ready;
    return faulted(
        port -> at(settled.drivenBySupply(), port),
        port -> at(column(settled.attachments(), driven, port), port));
  }

  private FaultedState withOne(Degradation added) {
    int gap = wiring.jointPort(added.joint());
    double ohms = Math.min(added.ohms(), OPEN_OHMS);
    Complex loop = Complex.ONE.plus(transfer(gap, gap).times(ohms));
    Complex current = at(gap).dividedBy(loop);
    Complex drop = current.times(ohms);
    Complex k = Complex.real(ohms).dividedBy(loop);
    return faulted(
        port -> port == gap ? current : at(port).minus(transfer(port, gap).times(drop)),
        port ->
            transfer(port, port).minus(transfer(port, gap).times(transfer(gap, port)).times(k)));
  }

  private FaultedState faulted(IntFunction<Complex> shown, IntFunction<Complex> seen) {
    return new FaultedState(wiring, places, sourceVolts, shown, seen);
  }

  /** What one port shows per unit at another; each column is worked out once. */
  private Complex transfer(int observed, int excited) {
    return at(
        columns.computeIfAbsent(excited, port -> column(attachments, wiring, port)), observed);
  }

  /** What every port shows per unit at one that nothing needs to be at. */
  private static double[] column(Attachments attached, Wiring ready, int port) {
    return attached.through(ready.driving(port).response()).responses(port);
  }

  private Complex at(int port) {
    return at(perVolt, port);
  }

  private static Complex at(double[] values, int port) {
    return new Complex(values[2 * port], values[2 * port + 1]);
  }
}
