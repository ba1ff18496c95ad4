package ohmtrail.locate;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import ohmtrail.circuit.Cable;
import ohmtrail.circuit.Circuit;
import ohmtrail.circuit.ConductorRole;
import ohmtrail.circuit.Joint;
import ohmtrail.reference.Assumption;
import ohmtrail.reference.Assumptions;
import ohmtrail.survey.Meter;
import ohmtrail.survey.Survey;
import ohmtrail.survey.Test;
import ohmtrail.survey.load.Load;

/**
 * Everything known only roughly, the drift of each test included: a standard normal number each,
 * found by name.
 */
final class BruteForceParameters {
  private final List<Double> sigmas = new ArrayList<>();
  private final List<Double> rooms = new ArrayList<>();
  private final Map<String, Integer> places = new LinkedHashMap<>();

  BruteForceParameters(Circuit circuit, Survey survey, Assumptions assumptions) {
    add("supply", assumptions.value(Assumption.SUPPLY_VOLTAGE_TOLERANCE));
    add(
        "source",
        assumptions.value(Assumption.SOURCE_OHMS_SPREAD),
        assumptions.value(Assumption.SOURCE_OHMS_LIMIT)
            / assumptions.value(Assumption.SOURCE_OHMS));
    add("capacitance", assumptions.value(Assumption.CAPACITANCE_SPREAD));
    for (Load load : survey.loads()) {
      add(power(load.name()), assumptions.value(Assumption.LOAD_POWER_TOLERANCE));
    }
    for (Meter meter : survey.meters()) {
      add(gain(meter.name()), meter.accuracy().gainSigma());
      add(meterOhms(meter.name()), assumptions.value(Assumption.METER_OHMS_TOLERANCE));
    }
    double jointSpread = assumptions.value(Assumption.HEALTHY_JOINT_SPREAD);
    double room =
        assumptions.value(Assumption.DEGRADED_OHMS_LOW)
            / assumptions.value(Assumption.HEALTHY_JOINT_OHMS);
    for (Cable cable : circuit.cables()) {
      double usual =
          assumptions.value(
              cable.lengthMetres().isPresent()
                  ? Assumption.LENGTH_TOLERANCE
                  : Assumption.UNKNOWN_LENGTH_SPREAD);
      add(length(cable), cable.lengthTolerance().orElse(usual));
      for (ConductorRole conductor : cable.roles()) {
        add(cableJoints(cable, conductor), jointSpread, room);
      }
    }
    for (Joint joint : circuit.joints()) {
      switch (joint.role()) {
        case TAIL, CONTACT, SWITCH ->
            add(deviceJoints(joint.box(), joint.conductor()), jointSpread, room);
        case SUPPLY, INCOMING, OUTGOING -> {}
      }
    }
    for (Test test : survey.tests()) {
      add(drift(test.name()), assumptions.value(Assumption.SUPPLY_DRIFT));
    }
  }

  private void add(String name, double sigma) {
    add(name, sigma, Double.POSITIVE_INFINITY);
  }

  private void add(String name, double sigma, double room) {
    if (places.putIfAbsent(name, sigmas.size()) == null) {
      sigmas.add(sigma);
      rooms.add(room);
    }
  }

  int size() {
    return sigmas.size();
  }

  int place(String name) {
    return places.get(name);
  }

  double sigma(int place) {
    return sigmas.get(place);
  }

  /**
   * What the quantity stays below, as a multiple of its nominal value; infinite without a limit.
   */
  private double room(int place) {
    return rooms.get(place);
  }

  /**
   * What multiplies the nominal value: e^(sigma u), logistic where there is a limit to approach.
   */
  double factor(int place, double u) {
    double free = Math.exp(sigma(place) * u);
    return Double.isInfinite(room(place)) ? free : free / (1 + (free - 1) / room(place));
  }

  /** Slope of the factor's logarithm along u. */
  double slope(int place, double u) {
    return sigma(place) * (1 - factor(place, u) / room(place));
  }

  /** The factor's second slope over its first. */
  double bend(int place, double u) {
    return sigma(place) * (1 - 2 * factor(place, u) / room(place));
  }

  static String power(String load) {
    return "power of " + load;
  }

  static String gain(String meter) {
    return "gain of " + meter;
  }

  static String meterOhms(String meter) {
    return "ohms of " + meter;
  }

  static String length(Cable cable) {
    return "length " + cable.from() + " to " + cable.to();
  }

  static String cableJoints(Cable cable, ConductorRole conductor) {
    return "joints " + cable.from() + " to " + cable.to() + " " + conductor;
  }

  static String deviceJoints(String box, ConductorRole conductor) {
    return "device " + box + " " + conductor;
  }

  static String drift(String test) {
    return "drift in " + test;
  }
}
