package ohmtrail.circuit;

import java.util.Objects;
import ohmtrail.reference.UsualValue;

/**
 * A device that trips on the difference between what flows out and what comes back: a GFCI or an
 * RCD.
 *
 * @param box where it is: the panel, where it guards the whole run, or a receptacle, where it
 *     guards its own contacts and what follows
 * @param rating when it trips
 */
public record ResidualCurrentDevice(String box, Rating rating) {
  /**
   * When a device trips.
   *
   * @param holdsAmperes it does not trip below this residual current
   * @param tripsAmperes it trips at this and above
   */
  public record Rating(double holdsAmperes, double tripsAmperes) {
    /**
     * Class A: does not trip below 4 mA, trips at 6 mA and above (UL 943; National Electrical Code,
     * Article 100, informational note).
     */
    public static final Rating CLASS_A = new Rating(0.004, 0.006);

    /** Rated residual current of the usual RCD for additional protection, amperes. */
    public static final double USUAL_RATED_AMPERES = UsualValue.RCD_AMPERES.value();

    /** UL 943's curve, from its one second to where it ends. */
    private static final double CURVE_AMPERES = 0.020;

    private static final double CURVE_EXPONENT = 1.43;
    private static final double CURVE_MOST_AMPERES = 0.264;

    /** Rejects a band that is none. */
    public Rating {
      if (!(holdsAmperes > 0 && tripsAmperes >= holdsAmperes && tripsAmperes <= 10)) {
        throw new CircuitException(
            "Residual currents ("
                + holdsAmperes
                + " A to "
                + tripsAmperes
                + " A) must be positive, rising and at most 10 A");
      }
    }

    /**
     * An RCD: does not trip below half of its rated residual current, trips at it (IEC 61008-1, as
     * quoted in a secondary text).
     */
    public static Rating rcd(double ratedAmperes) {
      return new Rating(ratedAmperes / 2, ratedAmperes);
    }

    /**
     * Probability that a device of this rating trips at a residual current: its own threshold may
     * lie anywhere in the band, so that it rises evenly from one end to the other.
     */
    public double tripProbability(double amperes) {
      double band = tripsAmperes - holdsAmperes;
      if (band == 0) {
        return amperes >= tripsAmperes ? 1 : 0;
      }
      return Math.max(0, Math.min(1, (amperes - holdsAmperes) / band));
    }

    /**
     * The longest that a device of this rating may take to trip, seconds.
     *
     * <p>Class A: (20 mA/I)^1.43 from 6 to 264 mA and no more beyond (UL 943, as quoted in a
     * secondary text). An RCD of the general type: 0.3 s at its rated residual current, 0.15 s at
     * twice (from memory), 0.04 s at five times that (IEC 61008-1, as quoted in a secondary text).
     * A delayed one, type S, takes longer.
     *
     * @param amperes residual current, at least what it trips at
     * @throws IllegalArgumentException below: it may hold for ever
     */
    public double longestSeconds(double amperes) {
      if (!(amperes >= tripsAmperes)) {
        throw new IllegalArgumentException(
            "Residual current ("
                + amperes
                + " A) must be at least "
                + tripsAmperes
                + " A: below, the device may hold");
      }
      if (equals(CLASS_A)) {
        return Math.pow(CURVE_AMPERES / Math.min(amperes, CURVE_MOST_AMPERES), CURVE_EXPONENT);
      }
      double times = amperes / tripsAmperes;
      if (times >= 5) {
        return 0.04;
      }
      return times >= 2 ? 0.15 : 0.3;
    }

    /** What it does at a residual current. */
    public Response at(double amperes) {
      if (amperes < holdsAmperes) {
        return Response.HOLDS;
      }
      return amperes < tripsAmperes ? Response.MAY_TRIP : Response.TRIPS;
    }
  }

  /** What a device does. */
  public enum Response {
    /** It stays on. */
    HOLDS,
    /** It may trip: the current lies in its band. */
    MAY_TRIP,
    /** It trips. */
    TRIPS
  }

  /** Rejects missing parts. */
  public ResidualCurrentDevice {
    Objects.requireNonNull(box, "box");
    Objects.requireNonNull(rating, "rating");
  }
}
