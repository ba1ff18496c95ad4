package ohmtrail.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import ohmtrail.circuit.Circuit;
import ohmtrail.circuit.ResidualCurrentDevice;
import ohmtrail.predict.SolvedSurvey;
import ohmtrail.survey.Reading;
import ohmtrail.survey.Test;
import ohmtrail.survey.Trip;

/**
 * What a GFCI or RCD sees at a moment of a test; nothing trips in the prediction.
 *
 * @param device the device
 * @param test the test's name
 * @param reading the reading that is being taken, its meter in place; empty where somebody watched
 *     the device
 * @param watched what somebody saw it do; empty for a reading
 * @param amperes what flows out through it and does not come back, root mean square
 */
public record DeviceCurrent(
    ResidualCurrentDevice device,
    String test,
    Optional<Reading> reading,
    Optional<Trip> watched,
    double amperes) {
  /** Probability that the device trips on it. */
  public double tripProbability() {
    return device.rating().tripProbability(amperes);
  }

  /** What the device does about it. */
  public ResidualCurrentDevice.Response response() {
    return device.rating().at(amperes);
  }

  /** Every device during every reading of a test. */
  static List<DeviceCurrent> duringReadings(SolvedSurvey solved, Circuit circuit, Test test) {
    List<DeviceCurrent> currents = new ArrayList<>();
    for (ResidualCurrentDevice device : circuit.residualCurrentDevices()) {
      for (Reading reading : test.readings()) {
        double amperes = solved.residualAmperes(test, device, reading);
        currents.add(
            new DeviceCurrent(
                device, test.name(), Optional.of(reading), Optional.empty(), amperes));
      }
    }
    return currents;
  }

  /** Every device that somebody watched in a test. */
  static List<DeviceCurrent> watched(SolvedSurvey solved, Circuit circuit, Test test) {
    return test.trips().stream()
        .map(
            trip ->
                new DeviceCurrent(
                    device(circuit, trip),
                    test.name(),
                    Optional.empty(),
                    Optional.of(trip),
                    solved.residualAmperes(test, trip)))
        .toList();
  }

  private static ResidualCurrentDevice device(Circuit circuit, Trip trip) {
    return circuit.residualCurrentDevices().stream()
        .filter(device -> device.box().equals(trip.device()))
        .findFirst()
        .orElseThrow();
  }
}
