package ohmtrail.predict.operating;

import java.util.List;
import ohmtrail.network.Attachment;
import ohmtrail.network.Complex;

/**
 * One reading as ohms are added in one joint, the loads settling anew at every value.
 *
 * <p>With everything but the loads in place, the voltage at load l is E(l) - t(l) i0 k, k = R/(1 +
 * y R), and the ohms from load m to load l are Z(l, m) + t(l) t(m) k; the meter is one more such
 * place. So a step of the sweep costs one operating point. Immutable.
 */
public final class SweptReading {
  private final List<DependentLoad> loads;
  private final double sourceVolts;

  /** Of each load and, last, the meter: voltage per volt of supply, and transfer to the gap. */
  private final Complex[] volts;

  private final Complex[] toGap;

  /** Ohms between the loads, the meter last, row by row. */
  private final Complex[] ohms;

  private final Complex current;
  private final Complex admittance;

  /**
   * Prepares.
   *
   * @param settled the network with nothing added in the joint
   * @param gap the joint's port
   * @param meterPort the pair that the meter is held to
   * @param sourceVolts voltage of the supply
   */
  public SweptReading(SettledNetwork settled, int gap, int meterPort, double sourceVolts) {
    this.loads = settled.point().loads();
    this.sourceVolts = sourceVolts;
    int places = loads.size() + 1;
    int[] ports = new int[places];
    for (int l = 0; l < loads.size(); l++) {
      ports[l] = loads.get(l).port();
    }
    ports[places - 1] = meterPort;
    double[] driven = settled.bareDriven();
    volts = new Complex[places];
    toGap = new Complex[places];
    ohms = new Complex[places * places];
    for (int i = 0; i < places; i++) {
      volts[i] = new Complex(driven[2 * ports[i]], driven[2 * ports[i] + 1]);
      toGap[i] = settled.bare().transfer(ports[i], gap);
      for (int j = 0; j < places; j++) {
        ohms[i * places + j] = settled.bare().transfer(ports[i], ports[j]);
      }
    }
    current = new Complex(driven[2 * gap], driven[2 * gap + 1]);
    admittance = settled.bare().transfer(gap, gap);
  }

  /**
   * The reading.
   *
   * @param added ohms in the joint
   * @return volts per volt of supply, not negative
   */
  public double ratio(Attachment added) {
    Complex k = added.driven().dividedBy(added.observed().plus(admittance.times(added.driven())));
    int count = loads.size();
    Complex[] open = new Complex[count + 1];
    for (int i = 0; i <= count; i++) {
      open[i] = volts[i].minus(toGap[i].times(current).times(k));
    }
    Feed feed = feed(open, k);
    OperatingPoint point = OperatingPoint.of(feed, loads);
    Complex[] admittances = new Complex[count];
    for (int l = 0; l < count; l++) {
      admittances[l] = point.admittance(l);
    }
    Feed loaded = feed.with(admittances);
    Complex shown = open[count];
    for (int l = 0; l < count; l++) {
      Complex drawn = loaded.openVolts(l).times(admittances[l]).times(1 / sourceVolts);
      shown = shown.minus(ohms(count, l, k).times(drawn));
    }
    return shown.abs();
  }

  private Feed feed(Complex[] open, Complex k) {
    int count = loads.size();
    double[] offered = new double[2 * count];
    double[] between = new double[2 * count * count];
    for (int l = 0; l < count; l++) {
      offered[2 * l] = sourceVolts * open[l].re();
      offered[2 * l + 1] = sourceVolts * open[l].im();
      for (int m = 0; m < count; m++) {
        Complex value = ohms(l, m, k);
        between[2 * (l * count + m)] = value.re();
        between[2 * (l * count + m) + 1] = value.im();
      }
    }
    return new Feed(offered, between);
  }

  private Complex ohms(int place, int load, Complex k) {
    return ohms[place * (loads.size() + 1) + load].plus(toGap[place].times(toGap[load]).times(k));
  }
}
