package ohmtrail.locate;

import java.util.ArrayList;
import java.util.List;
import ohmtrail.circuit.Circuit;
import ohmtrail.circuit.ResidualCurrentDevice;
import ohmtrail.circuit.ResidualCurrentDevice.Rating;
import ohmtrail.reference.Assumption;
import ohmtrail.reference.Assumptions;
import ohmtrail.survey.Survey;
import ohmtrail.survey.Test;
import ohmtrail.survey.Trip;

/**
 * What it says that GFCIs or RCDs tripped or held. A device trips below its band, or holds above
 * it, only for another reason; within the band its threshold may lie anywhere, so that the
 * probability of a trip rises evenly from one end to the other. Immutable.
 */
final class TripEvidence {
  private final List<Rating> ratings = new ArrayList<>();
  private final List<Boolean> tripped = new ArrayList<>();
  private final double otherReason;

  TripEvidence(Circuit circuit, Survey survey, Assumptions assumptions) {
    this.otherReason = assumptions.value(Assumption.WRONG_TRIP);
    for (Test test : survey.tests()) {
      for (Trip trip : test.trips()) {
        ratings.add(
            circuit.residualCurrentDevices().stream()
                .filter(device -> device.box().equals(trip.device()))
                .map(ResidualCurrentDevice::rating)
                .findFirst()
                .orElseThrow());
        tripped.add(trip.tripped());
      }
    }
  }

  /** Natural logarithm of the probability of what was seen, given what each device saw. */
  double logProbability(double[] amperes) {
    double sum = 0;
    for (int t = 0; t < ratings.size(); t++) {
      double trips = probability(ratings.get(t), amperes[t]);
      sum += Math.log(tripped.get(t) ? trips : 1 - trips);
    }
    return sum;
  }

  private double probability(Rating rating, double amperes) {
    return otherReason + (1 - 2 * otherReason) * rating.tripProbability(amperes);
  }
}
