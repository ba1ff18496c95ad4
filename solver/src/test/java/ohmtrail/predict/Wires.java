package ohmtrail.predict;

import java.util.List;
import ohmtrail.circuit.Box;
import ohmtrail.circuit.Circuit;
import ohmtrail.reference.Assumptions;
import ohmtrail.reference.Conductor;
import ohmtrail.reference.ConductorMaterial;
import ohmtrail.reference.ConductorSize;
import ohmtrail.survey.Accuracy;
import ohmtrail.survey.LoadInUse;
import ohmtrail.survey.Meter;
import ohmtrail.survey.ProbePoints;
import ohmtrail.survey.Reading;
import ohmtrail.survey.Survey;
import ohmtrail.survey.Test;
import ohmtrail.survey.load.Load;

/** Short ways to wire, load and read a circuit in the tests of this package. */
final class Wires {
  static final double METRES_PER_FOOT = 0.3048;

  /** Loads nothing, hides nothing. */
  static final Meter IDEAL = new Meter("ideal", 1e15, 0, new Accuracy(0, 0), 1e-9);

  private Wires() {}

  static Conductor copper(String size) {
    return new Conductor(ConductorSize.parse(size).orElseThrow(), ConductorMaterial.COPPER);
  }

  static Meter meter(double ohms) {
    return new Meter("meter", ohms, 0, new Accuracy(0, 0), 1e-9);
  }

  /** What a meter shows at a box. */
  static double volts(
      Circuit circuit,
      Assumptions assumptions,
      List<Load> loads,
      List<LoadInUse> uses,
      List<Degradation> degradations,
      Meter meter,
      String box,
      ProbePoints between) {
    Reading reading = new Reading(box, between, meter.name(), 0);
    Survey survey =
        new Survey(List.of(meter), loads, List.of(new Test("only", uses, List.of(reading))));
    return new Predictor(circuit, survey, assumptions).readings(degradations).get(0);
  }

  /** Names of all boxes. */
  static List<String> names(Circuit circuit) {
    return circuit.boxes().stream().map(Box::name).toList();
  }
}
