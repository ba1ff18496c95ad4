package ohmtrail.advise;

import java.util.List;
import java.util.stream.DoubleStream;

/**
 * How long it takes until the joint is found, with as many further readings as pay for themselves:
 * an estimate where it is not worked out visit by visit.
 *
 * <p>A reading under a load parts what is left in two, so that a visit takes away one bit of the
 * entropy of the places at most ({@link #VISITS_PER_BIT}); what readings leave are the two ends of
 * a cable, one bit, of which {@link #OPENED_IN_THE_END} boxes are opened. So with H the entropy of
 * the places in bits, v the minutes of a visit, f those of fetching the load and c_i those of
 * opening a box
 *
 * <pre>min(opening at once, 1.1 v (H - 1) + f min(1, H - 1) + 1.45 sum of p_i c_i)</pre>
 *
 * Readings at k boxes tell k + 1 parts of the run apart: of more bits than that nothing is
 * estimated. Belongs to one thread.
 */
final class MinutesToGo implements Remaining {
  /** Visits for each bit: halves are not always even, and readings not always clear. */
  private static final double VISITS_PER_BIT = 1.1;

  /** The two ends of a cable, which no reading at a receptacle tells apart. */
  private static final double BITS_LEFT = 1;

  /** Of a joint that is there two visits find the place up to so many bits, by and large. */
  private static final double BITS_OF_TWO_VISITS = 1.2;

  /** Boxes opened at two ends that are nearly as likely as each other. */
  private static final double OPENED_IN_THE_END = 1.45;

  /** What is less probable tells no more than that. */
  private static final double LEAST = 1e-6;

  private final OpeningMinutes opening;
  private final double[] minutes;
  private final double bitMinutes;
  private final double mostBits;

  /**
   * Prepares.
   *
   * @param opening what it takes without a further reading
   * @param minutes to look into each place
   * @param further the visits that could follow
   */
  private MinutesToGo(OpeningMinutes opening, double[] minutes, List<BandedVisit> further) {
    this.opening = opening;
    this.minutes = minutes.clone();
    List<BandedVisit> loaded = further.stream().filter(BandedVisit::needsLoad).toList();
    this.bitMinutes =
        VISITS_PER_BIT * loaded.stream().mapToDouble(visit -> visit.minutes(0)).min().orElse(0);
    this.mostBits = log2(1.0 + loaded.size());
  }

  /**
   * What is left after two visits that are worked out: estimated where they leave more to be told,
   * else boxes are opened.
   *
   * @param opening what it takes without a further reading
   * @param minutes to look into each place
   * @param further the visits that could follow
   * @param now probability of each place
   */
  static Remaining beyond(
      OpeningMinutes opening, double[] minutes, List<BandedVisit> further, double[] now) {
    double bad = DoubleStream.of(now).sum();
    double[] ifBad = DoubleStream.of(now).map(mass -> mass / Math.max(LEAST, bad)).toArray();
    return bits(ifBad) > BITS_OF_TWO_VISITS ? new MinutesToGo(opening, minutes, further) : opening;
  }

  @Override
  public double expected(double[] masses, double fetching) {
    double opened = opening.expected(masses);
    double looks = looks(masses);
    if (looks >= opened) {
      return opened;
    }
    double bits = bits(masses);
    return bits > mostBits ? opened : Math.min(opened, visits(bits, fetching) + looks);
  }

  private double looks(double[] masses) {
    double looks = 0;
    for (int place = 0; place < masses.length; place++) {
      looks += masses[place] * minutes[place];
    }
    return OPENED_IN_THE_END * looks;
  }

  private double visits(double bits, double fetching) {
    return bitMinutes * bits + fetching * Math.min(1, bits);
  }

  /** What readings can take away of the entropy of the places and a sound circuit. */
  private static double bits(double[] masses) {
    double rest = 1;
    double sum = 0;
    for (double mass : masses) {
      rest -= mass;
      sum += surprise(mass);
    }
    return Math.max(0, sum + surprise(rest) - BITS_LEFT);
  }

  private static double surprise(double probability) {
    return probability > 0 ? -probability * log2(probability) : 0;
  }

  private static double log2(double value) {
    return Math.log(value) / Math.log(2);
  }

  @Override
  public Tangent tangent(double[] masses, double fetching) {
    double opened = opening.expected(masses);
    double bits = bits(masses);
    double read = visits(bits, fetching) + looks(masses);
    if (bits > mostBits || read >= opened) {
      return opening.tangent(masses, fetching);
    }
    double perBit = bits > 0 ? bitMinutes + (bits < 1 ? fetching : 0) : 0;
    double constant = read - perBit * (bits + BITS_LEFT) - looks(masses);
    double rest = 1;
    double[] slopes = new double[masses.length];
    for (int place = 0; place < masses.length; place++) {
      rest -= masses[place];
      slopes[place] =
          constant + perBit * bitsOf(masses[place]) + OPENED_IN_THE_END * minutes[place];
    }
    return new Tangent(slopes, constant + perBit * bitsOf(rest));
  }

  /** How much it tells that something of that probability is so; bounded for what cannot be. */
  private static double bitsOf(double probability) {
    return -log2(Math.max(LEAST, probability));
  }
}
