package ohmtrail.predict.operating;

import java.util.Arrays;
import java.util.List;
import ohmtrail.network.Complex;
import ohmtrail.network.SmallComplex;

/**
 * Where loads that follow their voltage settle, the voltages as high as they can stay. A load that
 * cannot settle with the others on is off, and draws nothing. Immutable.
 *
 * <p>Each load in turn takes the highest voltage that the others leave it, until nothing moves;
 * Newton's method does the rest. The order of the loads has no effect.
 */
public final class OperatingPoint {
  /** Changes of ln V from which Newton's method takes over, and at which it has arrived. */
  private static final double NEAR = 1e-2;

  private static final double ARRIVED = 1e-13;

  /**
   * Steps that no longer shrink are rounding when they are below this: behind ohms that are far
   * more than their own, loads stand at a small difference of large numbers.
   */
  private static final double ROUNDING = 1e-6;

  private static final int MOST_ROUNDS = 500;
  private static final int MOST_NEWTON_STEPS = 12;

  private final List<DependentLoad> loads;
  private final boolean[] on;
  private final double[] volts;

  private OperatingPoint(List<DependentLoad> loads, boolean[] on, double[] volts) {
    this.loads = loads;
    this.on = on;
    this.volts = volts;
  }

  /** Finds it. */
  static OperatingPoint of(Feed feed, List<DependentLoad> loads) {
    boolean[] on = new boolean[loads.size()];
    Arrays.fill(on, true);
    Search search = new Search(feed, loads, on);
    while (!search.settle()) {
      search.drop();
    }
    return new OperatingPoint(List.copyOf(loads), on, search.volts);
  }

  /** The loads. */
  public List<DependentLoad> loads() {
    return loads;
  }

  /** Whether a load draws anything: false where it has no operating point. */
  public boolean isOn(int load) {
    return on[load];
  }

  /** What a load is to the network, siemens; zero where it is off. */
  public Complex admittance(int load) {
    return on[load] ? loads.get(load).admittance(volts[load]) : Complex.ZERO;
  }

  /** How steeply the admittance follows the voltage; zero where it is off. */
  double steepness(int load) {
    return on[load] ? loads.get(load).steepness(volts[load]) : 0;
  }

  private static final class Search {
    private final Feed feed;
    private final List<DependentLoad> loads;
    private final boolean[] on;
    private final double[] volts;

    /** By how much each load missed when it last failed to settle. */
    private final double[] shortfall;

    Search(Feed feed, List<DependentLoad> loads, boolean[] on) {
      this.feed = feed;
      this.loads = loads;
      this.on = on;
      this.volts = new double[loads.size()];
      this.shortfall = new double[loads.size()];
    }

    /** Whether all loads that are on settle. */
    boolean settle() {
      for (int l = 0; l < volts.length; l++) {
        volts[l] = on[l] ? feed.openVolts(l).abs() : 0;
      }
      for (int round = 0; round < MOST_ROUNDS; round++) {
        double change = takeHighest();
        if (Double.isInfinite(change)) {
          return false;
        }
        if (change < NEAR && (loads.size() == 1 || change == 0 || refine())) {
          return true;
        }
      }
      for (int l = 0; l < volts.length; l++) {
        shortfall[l] = on[l] ? -Math.log(volts[l] / loads.get(l).load().ratedVolts()) : 0;
      }
      return false;
    }

    /** Every load takes the highest voltage that the others leave it. */
    private double takeHighest() {
      double[] next = new double[volts.length];
      double change = 0;
      Arrays.fill(shortfall, Double.NEGATIVE_INFINITY);
      for (int l = 0; l < volts.length; l++) {
        if (on[l]) {
          Feed left = feed.with(admittances(l));
          HighestVoltage.Outcome outcome =
              HighestVoltage.of(loads.get(l), left.openVolts(l), left.ohms(l, l));
          if (outcome.settles()) {
            next[l] = outcome.volts();
            double moved = next[l] == volts[l] ? 0 : Math.abs(Math.log(next[l] / volts[l]));
            change = Math.max(change, loads.size() == 1 ? 0 : moved);
          } else {
            shortfall[l] = outcome.shortfall();
            change = Double.POSITIVE_INFINITY;
          }
        }
      }
      System.arraycopy(next, 0, volts, 0, volts.length);
      return change;
    }

    private Complex[] admittances(int without) {
      Complex[] admittances = new Complex[volts.length];
      for (int l = 0; l < volts.length; l++) {
        admittances[l] = on[l] && l != without ? loads.get(l).admittance(volts[l]) : Complex.ZERO;
      }
      return admittances;
    }

    /** Newton's method on ln V of all loads; false, and nothing moved, where it does not arrive. */
    private boolean refine() {
      double[] kept = volts.clone();
      double previous = Double.POSITIVE_INFINITY;
      for (int step = 0; step < MOST_NEWTON_STEPS; step++) {
        Complex[] admittances = admittances(-1);
        Feed loaded = feed.with(admittances);
        double largest = stepBy(loaded, admittances);
        if (!(largest < 1)) {
          break;
        }
        if (largest < ARRIVED || (largest < ROUNDING && largest >= previous)) {
          return isAllowed();
        }
        previous = largest;
      }
      System.arraycopy(kept, 0, volts, 0, volts.length);
      return false;
    }

    private boolean isAllowed() {
      for (int l = 0; l < volts.length; l++) {
        if (on[l] && volts[l] < loads.get(l).leastVolts()) {
          return false;
        }
      }
      return true;
    }

    private double stepBy(Feed loaded, Complex[] admittances) {
      int size = volts.length;
      double[] inverse = SmallComplex.invert(couplings(loaded, admittances), size);
      double[] excess = new double[size];
      for (int l = 0; l < size; l++) {
        double settled = loaded.openVolts(l).abs();
        excess[l] = on[l] && settled > 0 ? Math.log(settled / volts[l]) : 0;
      }
      double largest = 0;
      for (int l = 0; l < size; l++) {
        double step = 0;
        for (int m = 0; m < size; m++) {
          step += inverse[2 * (l * size + m)] * excess[m];
        }
        volts[l] *= Math.exp(step);
        largest = Math.max(largest, Math.abs(step));
      }
      return largest;
    }

    private double[] couplings(Feed loaded, Complex[] admittances) {
      double[] steepness = new double[volts.length];
      for (int l = 0; l < volts.length; l++) {
        steepness[l] = on[l] ? loads.get(l).steepness(volts[l]) : 0;
      }
      return Coupling.of(loaded, admittances, steepness);
    }

    /** Turns the load off that misses by most. */
    void drop() {
      int worst = -1;
      for (int l = 0; l < volts.length; l++) {
        if (on[l] && (worst < 0 || shortfall[l] > shortfall[worst])) {
          worst = l;
        }
      }
      on[worst] = false;
    }
  }
}
