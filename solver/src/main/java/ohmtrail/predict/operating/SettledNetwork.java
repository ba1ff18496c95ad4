package ohmtrail.predict.operating;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalInt;
import java.util.function.Function;
import ohmtrail.network.Attachment;
import ohmtrail.network.Attachments;
import ohmtrail.network.Complex;
import ohmtrail.network.PortResponse;
import ohmtrail.network.SmallComplex;

/**
 * A network with everything attached, the loads that follow their voltage where they settle.
 * Immutable.
 *
 * <p>Slopes by the adjoint method: a change dD of an element moves a reading by - c w dD, with w
 * what flows or stands at the element and c its way to the meter. Loads that follow their voltage
 * answer that change; their answer is put into c ({@link #answered}), so that one product gives the
 * whole slope of the reading's magnitude.
 */
public final class SettledNetwork {
  private final Attachments bare;
  private final double[] bareDriven;
  private final Attachments attachments;
  private final double[] drivenBySupply;
  private final OperatingPoint point;

  private SettledNetwork(
      Attachments bare,
      double[] bareDriven,
      Attachments attachments,
      double[] drivenBySupply,
      OperatingPoint point) {
    this.bare = bare;
    this.bareDriven = bareDriven;
    this.attachments = attachments;
    this.drivenBySupply = drivenBySupply;
    this.point = point;
  }

  /**
   * Lets the loads settle.
   *
   * @param response the bare network
   * @param shunts everything across a pair of nodes but the loads that follow their voltage
   * @param series ohms in joints, at most one per joint
   * @param loads the loads that follow their voltage
   * @param sourceVolts voltage of the supply
   * @param driven how every port responds to the supply per volt, with things attached
   */
  public static SettledNetwork of(
      PortResponse response,
      Shunts shunts,
      List<Attachment> series,
      List<DependentLoad> loads,
      double sourceVolts,
      Function<Attachments, double[]> driven) {
    Attachments bare = Attachments.to(response, joined(shunts, series));
    double[] bareDriven = driven.apply(bare);
    int[] ports = loads.stream().mapToInt(DependentLoad::port).toArray();
    OperatingPoint point = OperatingPoint.of(Feed.of(bare, bareDriven, ports, sourceVolts), loads);
    if (loads.isEmpty()) {
      return new SettledNetwork(bare, bareDriven, bare, bareDriven, point);
    }
    Shunts all = new Shunts(shunts);
    for (int l = 0; l < ports.length; l++) {
      if (point.isOn(l)) {
        all.add(ports[l], point.admittance(l));
      }
    }
    Attachments attachments = Attachments.to(response, joined(all, series));
    return new SettledNetwork(bare, bareDriven, attachments, driven.apply(attachments), point);
  }

  private static List<Attachment> joined(Shunts shunts, List<Attachment> series) {
    List<Attachment> all = new ArrayList<>(shunts.attachments());
    all.addAll(series);
    return all;
  }

  /**
   * The same network, answering to the ports that another response drives.
   *
   * @param more a response of the same network and ports
   */
  public SettledNetwork through(PortResponse more) {
    return new SettledNetwork(
        bare.through(more), bareDriven, attachments.through(more), drivenBySupply, point);
  }

  /** The same without what every port shows, where nothing is asked of it but what is attached. */
  public SettledNetwork withoutColumns() {
    return new SettledNetwork(bare, new double[0], attachments, new double[0], point);
  }

  /** Everything in place, the loads as the admittances that they settled at. */
  public Attachments attachments() {
    return attachments;
  }

  /**
   * How every port responds to the supply, per volt of it: complex interleaved; for reading only.
   */
  public double[] drivenBySupply() {
    return drivenBySupply;
  }

  /** The network before the loads that follow their voltage are put in. */
  Attachments bare() {
    return bare;
  }

  double[] bareDriven() {
    return bareDriven;
  }

  /** Where the loads that follow their voltage settled. */
  public OperatingPoint point() {
    return point;
  }

  /**
   * How the magnitude of a reading answers to every port, and to the supply, once the loads that
   * follow their voltage answer as well.
   *
   * @param direct the way from every port to the reading while they hold still, as for a meter that
   *     touches two points; complex interleaved
   * @param shown the reading per volt of supply
   * @param around the place of the load whose current is read, if it is one of these
   */
  public Sensitivity answered(double[] direct, Complex shown, OptionalInt around) {
    double size = shown.abs();
    if (size == 0) {
      return new Sensitivity(direct, size);
    }
    Complex direction = shown.times(1 / size);
    double[] share = shares(direct, direction, shown, around);
    double[] answered = direct.clone();
    double supply = size;
    for (int l = 0; l < share.length; l++) {
      supply -= share[l];
      if (share[l] != 0) {
        subtract(answered, direction.times(share[l]).dividedBy(volts(l)), port(l));
      }
    }
    return new Sensitivity(answered, supply);
  }

  /** By how much the reading falls per unit of ln V that each load would see were it alone. */
  private double[] shares(double[] direct, Complex direction, Complex shown, OptionalInt around) {
    int size = point.loads().size();
    int[] ports = point.loads().stream().mapToInt(DependentLoad::port).toArray();
    Feed loaded = Feed.of(attachments, drivenBySupply, ports, 1);
    Complex[] admittances = new Complex[size];
    double[] steepness = new double[size];
    double[] pull = new double[size];
    for (int l = 0; l < size; l++) {
      admittances[l] = point.admittance(l);
      steepness[l] = point.steepness(l);
      Complex toMeter = new Complex(direct[2 * ports[l]], direct[2 * ports[l] + 1]);
      Complex current = loaded.openVolts(l).times(admittances[l]);
      pull[l] = steepness[l] * toMeter.times(current).times(direction.conjugate()).re();
    }
    // The current through a load is its admittance times its voltage: both move.
    around.ifPresent(load -> pull[load] -= steepness[load] * shown.abs());
    double[] inverse = SmallComplex.invert(Coupling.of(loaded, admittances, steepness), size);
    double[] shares = new double[size];
    for (int l = 0; l < size; l++) {
      for (int m = 0; m < size; m++) {
        shares[l] += inverse[2 * (m * size + l)] * pull[m];
      }
    }
    return shares;
  }

  private void subtract(double[] direct, Complex factor, int port) {
    double[] column = attachments.responses(port);
    for (int i = 0; i < direct.length; i += 2) {
      direct[i] -= column[i] * factor.re() - column[i + 1] * factor.im();
      direct[i + 1] -= column[i] * factor.im() + column[i + 1] * factor.re();
    }
  }

  private Complex volts(int load) {
    return new Complex(drivenBySupply[2 * port(load)], drivenBySupply[2 * port(load) + 1]);
  }

  private int port(int load) {
    return point.loads().get(load).port();
  }

  /**
   * How a reading's magnitude answers. It hands out its own array, for reading only.
   *
   * <p>Immutable.
   */
  public static final class Sensitivity {
    private final double[] toMeter;
    private final double perSupply;

    private Sensitivity(double[] toMeter, double perSupply) {
      this.toMeter = toMeter;
      this.perSupply = perSupply;
    }

    /**
     * The way from every port to the meter, complex interleaved. Times what flows or stands there,
     * turned into the direction of the reading, its real part is the slope of the magnitude.
     */
    public double[] toMeter() {
      return toMeter;
    }

    /** Change of the magnitude, per volt of supply, per unit of ln of the supply voltage. */
    public double perSupply() {
      return perSupply;
    }
  }
}
