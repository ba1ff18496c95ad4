package ohmtrail.predict.operating;

import ohmtrail.network.Complex;

/**
 * The highest voltage at which one load settles behind a source of known voltage E and impedance Z.
 *
 * <p>The root x = ln |V| of F(x) = x - ln |E| + ln |1 + Z Y(x)|. From far above, Newton's steps
 * stay above the highest root, for F bends upward wherever the load's exponent is constant and Z
 * resistive; where a step does cross, the root is halved in. Where F comes to rest above zero the
 * load cannot settle: the source does not carry it.
 */
final class HighestVoltage {
  /** Steps in ln V that are nothing. */
  private static final double NOTHING = 1e-14;

  /** A slope of F below which there is no root farther down. */
  private static final double LEVEL = 1e-7;

  private static final int MOST_STEPS = 200;

  /** A source of this share of the rated voltage is dead. */
  private static final double DEAD_SHARE = 1e-9;

  /** No load is followed below this share of its rated voltage. */
  private static final double LEAST_SHARE = 1e-12;

  private final DependentLoad load;
  private final double logOpen;
  private final Complex ohms;
  private final double lowest;

  private HighestVoltage(DependentLoad load, double open, Complex ohms) {
    this.load = load;
    this.logOpen = Math.log(open);
    this.ohms = ohms;
    double least = Math.max(load.leastVolts(), LEAST_SHARE * load.load().ratedVolts());
    this.lowest = Math.log(least);
  }

  /**
   * Where a load settles.
   *
   * @param volts root mean square; 0 where it does not settle
   * @param shortfall by how much, in ln V, the source misses; 0 where the load settles
   */
  record Outcome(double volts, double shortfall) {
    static Outcome at(double logVolts) {
      return new Outcome(Math.exp(logVolts), 0);
    }

    static Outcome missing(double shortfall) {
      return new Outcome(0, shortfall);
    }

    boolean settles() {
      return shortfall == 0;
    }
  }

  /**
   * Finds it.
   *
   * @param load the load
   * @param openVolts E
   * @param ohms Z
   */
  static Outcome of(DependentLoad load, Complex openVolts, Complex ohms) {
    double open = openVolts.abs();
    if (open > DEAD_SHARE * load.load().ratedVolts()) {
      return new HighestVoltage(load, open, ohms).find();
    }
    if (load.leastVolts() > 0) {
      return Outcome.missing(Double.POSITIVE_INFINITY);
    }
    return new Outcome(open / Complex.ONE.plus(ohms.times(load.admittance(0))).abs(), 0);
  }

  private Outcome find() {
    double x = start();
    double f = excess(x);
    for (int step = 0; step < MOST_STEPS; step++) {
      double slope = slope(x);
      if (slope < LEVEL) {
        return Outcome.missing(f);
      }
      double next = Math.max(lowest, x - f / slope);
      double there = excess(next);
      if (there < 0) {
        return Outcome.at(halve(next, x));
      }
      if (x - next <= NOTHING) {
        // At rest on a root, or at the lowest voltage with none above.
        return next > lowest || there <= NOTHING ? Outcome.at(next) : Outcome.missing(there);
      }
      x = next;
      f = there;
    }
    return Outcome.missing(f);
  }

  /** A voltage at which the load would draw less than what lowers the source's to it. */
  private double start() {
    double x = Math.max(logOpen, lowest);
    while (excess(x) < 0) {
      x += 1;
    }
    return x;
  }

  private double halve(double below, double above) {
    double low = below;
    double high = above;
    double x = below;
    for (int step = 0; step < MOST_STEPS && high - low > NOTHING; step++) {
      double slope = slope(x);
      double newton = slope > LEVEL ? x - excess(x) / slope : Double.NaN;
      x = newton > low && newton < high ? newton : 0.5 * (low + high);
      double f = excess(x);
      if (Math.abs(f) <= NOTHING) {
        return x;
      }
      if (f < 0) {
        low = x;
      } else {
        high = x;
      }
    }
    return x;
  }

  private double excess(double x) {
    return x - logOpen + Math.log(loop(x).abs());
  }

  private double slope(double x) {
    double volts = Math.exp(x);
    Complex loop = loop(x);
    Complex drop = loop.minus(Complex.ONE);
    return 1 + load.steepness(volts) * drop.dividedBy(loop).re();
  }

  private Complex loop(double x) {
    return Complex.ONE.plus(ohms.times(load.admittance(Math.exp(x))));
  }
}
