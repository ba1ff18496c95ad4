package ohmtrail.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import ohmtrail.circuit.Box;
import ohmtrail.circuit.Circuit;
import ohmtrail.predict.VoltageProfile;
import ohmtrail.survey.ProbePoints;

/**
 * A receptacle above 110 % of nominal in a test.
 *
 * @param test the test's name
 * @param box the receptacle's box
 * @param between a live conductor and neutral, or the two legs
 * @param volts between them
 * @param ofNominal the same as a fraction of the nominal voltage
 */
public record Overvoltage(
    String test, String box, ProbePoints between, double volts, double ofNominal) {
  /** Equipment is made for nominal voltage and some way above it (common practice, no source). */
  private static final double MOST_OF_NOMINAL = 1.1;

  /** One per receptacle and live conductor above the bound. */
  static List<Overvoltage> of(Circuit circuit, String test, VoltageProfile profile) {
    List<Overvoltage> found = new ArrayList<>();
    for (VoltageProfile.Point place : profile.points()) {
      if (circuit.box(place.box()).map(Box::hasReceptacle).orElse(false)) {
        for (Map.Entry<ProbePoints, Double> pair : place.between().entrySet()) {
          double share = pair.getValue() / NominalVolts.between(circuit, pair.getKey());
          if (pair.getKey().first().isLive() && share > MOST_OF_NOMINAL) {
            found.add(new Overvoltage(test, place.box(), pair.getKey(), pair.getValue(), share));
          }
        }
      }
    }
    return found;
  }
}
