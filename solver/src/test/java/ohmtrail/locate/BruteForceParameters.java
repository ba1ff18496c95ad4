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
  private final Map<String, Integer> places = new LinkedHashMap<>();

  BruteForceParameters(Circuit circuit, Survey survey, Assumptions assumptions) {
    add("supply", assumptions.value(Assumption.SUPPLY_VOLTAGE_TOLERANCE));
    add("source", assumptions.value(Assumption.SOURCE_OHMS_SPREAD));
    add("capacitance", assumptions.value(Assumption.CAPACITANCE_SPREAD));
    for (Load load : survey.loads()) {
      add(power(load.name()), assumptions.value(Assumption.LOAD_POWER_TOLERANCE));
    }
    for (Meter meter : survey.meters()) {
      add(gain(meter.name()), meter.accuracy().gainSigma());
      add(meterOhms(meter.name()), assumptions.value(Assumption.METER_OHMS_TOLERANCE));
    }
    double jointSpread = assumptions.value(Assumption.HEALTHY_JOINT_SPREAD);
    for (Cable cable : circuit.cables()) {
      double usual =
          assumptions.value(
              cable.lengthMetres().isPresent()
                  ? Assumption.LENGTH_TOLERANCE
                  : Assumption.UNKNOWN_LENGTH_SPREAD);
      add(length(cable), cable.lengthTolerance().orElse(usual));
      for (ConductorRole conductor : cable.roles()) {
        add(cableJoints(cable, conductor), jointSpread);
      }
    }
    for (Joint joint : circuit.joints()) {
      switch (joint.role()) {
        case TAIL, CONTACT -> add(deviceJoints(joint.box(), joint.conductor()), jointSpread);
        case SUPPLY, INCOMING, OUTGOING -> {}
      }
    }
    for (Test test : survey.tests()) {
      add(drift(test.name()), assumptions.value(Assumption.SUPPLY_DRIFT));
    }
  }

  private void add(String name, double sigma) {
    if (places.putIfAbsent(name, sigmas.size()) == null) {
      sigmas.add(sigma);
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
