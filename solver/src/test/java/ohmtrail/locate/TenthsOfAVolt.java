package ohmtrail.locate;

import java.util.ArrayList;
import java.util.List;
import ohmtrail.circuit.Circuit;
import ohmtrail.predict.Degradation;
import ohmtrail.predict.Predictor;
import ohmtrail.reference.Assumptions;
import ohmtrail.survey.Reading;
import ohmtrail.survey.Survey;
import ohmtrail.survey.Test;

/** Surveys read on a model where everything is as stated, on a display of tenths of a volt. */
final class TenthsOfAVolt {
  private static final double STEPS_PER_VOLT = 10;

  private TenthsOfAVolt() {}

  /** The planned readings with what the display shows on the circuit with a fault. */
  static Survey taken(Circuit circuit, Survey plan, Degradation fault) {
    List<Double> volts =
        new Predictor(circuit, plan, Assumptions.defaults()).readings(List.of(fault));
    List<Test> tests = new ArrayList<>();
    int next = 0;
    for (Test test : plan.tests()) {
      List<Reading> shown = new ArrayList<>();
      for (Reading each : test.readings()) {
        double rounded = Math.round(STEPS_PER_VOLT * volts.get(next++)) / STEPS_PER_VOLT;
        shown.add(each.showing(rounded));
      }
      tests.add(test.withReadings(shown));
    }
    return plan.withTests(tests);
  }
}
