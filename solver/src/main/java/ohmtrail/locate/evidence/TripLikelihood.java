package ohmtrail.locate.evidence;

import java.util.ArrayList;
import java.util.List;
import ohmtrail.circuit.ResidualCurrentDevice;
import ohmtrail.circuit.ResidualCurrentDevice.Rating;
import ohmtrail.problem.Problem;
import ohmtrail.reference.Assumption;
import ohmtrail.survey.Test;
import org.apache.commons.math3.special.Erf;

/**
 * The likelihood of what GFCIs and RCDs did: that they tripped or held. A device trips below its
 * band, or holds above it, only for another reason; within the band its threshold may lie anywhere,
 * so that the probability of a trip rises linearly from one end to the other.
 *
 * <p>Where the imbalance itself is known only roughly, a normal number of mean m and standard
 * deviation s, that probability is averaged over it: with (x)+ for what is positive of x and k at
 * either end of the band, the mean of (x - k)+ is (m - k) F(z) + s f(z), z = (m - k)/s, F and f the
 * normal distribution and its density (any text on the truncated normal distribution). Immutable.
 */
public final class TripLikelihood {
  /** Least probability that a logarithm is taken of: where nothing trips for another reason. */
  private static final double LEAST = 1e-300;

  private static final double ROOT_TWO = Math.sqrt(2);
  private static final double ROOT_TWO_PI = Math.sqrt(2 * Math.PI);

  private final List<Rating> ratings;
  private final List<Boolean> tripped;
  private final double otherReason;
  private final double drift;

  /**
   * The likelihood of what one device did.
   *
   * @param logProbability natural logarithm of the probability of what was seen
   * @param slope how that moves per ampere of imbalance; 0 where it does not
   */
  public record Trip(double logProbability, double slope) {}

  private TripLikelihood(
      List<Rating> ratings, List<Boolean> tripped, double otherReason, double drift) {
    this.ratings = List.copyOf(ratings);
    this.tripped = List.copyOf(tripped);
    this.otherReason = otherReason;
    this.drift = drift;
  }

  static TripLikelihood of(Problem problem) {
    List<Rating> ratings = new ArrayList<>();
    List<Boolean> tripped = new ArrayList<>();
    for (Test test : problem.survey().tests()) {
      for (ohmtrail.survey.Trip trip : test.trips()) {
        ratings.add(
            problem.circuit().residualCurrentDevices().stream()
                .filter(device -> device.box().equals(trip.device()))
                .map(ResidualCurrentDevice::rating)
                .findFirst()
                .orElseThrow());
        tripped.add(trip.tripped());
      }
    }
    return new TripLikelihood(
        ratings,
        tripped,
        problem.assumptions().value(Assumption.WRONG_TRIP),
        problem.assumptions().value(Assumption.SUPPLY_DRIFT));
  }

  /** How many devices were watched, each time counted. */
  public int count() {
    return ratings.size();
  }

  /** Amperes over which what a device does changes: a current known better need not be. */
  public double scale(int trip) {
    Rating rating = ratings.get(trip);
    double band = rating.tripsAmperes() - rating.holdsAmperes();
    return band > 0 ? band : rating.tripsAmperes();
  }

  /**
   * Relative standard deviation that a test's supply voltage, around that of the survey, gives an
   * imbalance.
   */
  double drift() {
    return drift;
  }

  /** Natural logarithm of the probability of what was seen, given what each device saw. */
  public double logProbability(double[] amperes) {
    double sum = 0;
    for (int t = 0; t < count(); t++) {
      sum += at(t, amperes[t], 0).logProbability();
    }
    return sum;
  }

  /**
   * The likelihood of what one device did, its imbalance a normal number.
   *
   * @param trip number of the time that a device was watched, in the order of the survey
   * @param amperes mean of the imbalance; negative where a linear model passed through nothing
   * @param sigma its standard deviation, not negative
   */
  public Trip at(int trip, double amperes, double sigma) {
    Rating rating = ratings.get(trip);
    double share = share(rating, amperes, sigma);
    double steepness = steepness(rating, amperes, sigma);
    double sign = tripped.get(trip) ? 1 : -1;
    double certain = 1 - 2 * otherReason;
    double probability = otherReason + certain * (tripped.get(trip) ? share : 1 - share);
    double known = Math.max(LEAST, probability);
    return new Trip(Math.log(known), sign * certain * steepness / known);
  }

  /** Probability that the imbalance lies above the device's threshold. */
  private static double share(Rating rating, double amperes, double sigma) {
    if (sigma <= 0) {
      return rating.tripProbability(amperes);
    }
    double band = rating.tripsAmperes() - rating.holdsAmperes();
    if (band <= 0) {
      return below((amperes - rating.tripsAmperes()) / sigma);
    }
    double above =
        excess(amperes - rating.holdsAmperes(), sigma)
            - excess(amperes - rating.tripsAmperes(), sigma);
    return Math.max(0, Math.min(1, above / band));
  }

  /** How that moves per ampere. */
  private static double steepness(Rating rating, double amperes, double sigma) {
    double holds = amperes - rating.holdsAmperes();
    double trips = amperes - rating.tripsAmperes();
    double band = holds - trips;
    if (sigma <= 0) {
      return holds > 0 && trips < 0 ? 1 / band : 0;
    }
    return band > 0
        ? (below(holds / sigma) - below(trips / sigma)) / band
        : density(trips / sigma) / sigma;
  }

  /** Mean of what is positive of a normal number. */
  private static double excess(double mean, double sigma) {
    double z = mean / sigma;
    return mean * below(z) + sigma * density(z);
  }

  private static double below(double z) {
    return 0.5 * Erf.erfc(-z / ROOT_TWO);
  }

  private static double density(double z) {
    return Math.exp(-z * z / 2) / ROOT_TWO_PI;
  }
}
