package ohmtrail.practice;

import java.util.ArrayList;
import java.util.List;
import ohmtrail.circuit.Circuit;
import ohmtrail.circuit.Joint;
import ohmtrail.predict.Degradation;
import ohmtrail.predict.Predictor;
import ohmtrail.reference.Assumption;
import ohmtrail.reference.Assumptions;
import ohmtrail.survey.Meter;
import ohmtrail.survey.Reading;
import ohmtrail.survey.Survey;
import ohmtrail.survey.Test;

/**
 * A circuit with a hidden fault that answers whatever is asked of it, as a real one would: every
 * test has a drift of its own and every reading an error of its own, drawn in the order in which
 * they are taken. The same questions in the same order get the same answers. Not for two threads.
 */
public final class LiveCircuit {
  private final PracticeCase hidden;
  private final Chance chance;

  /**
   * Brings a case to life.
   *
   * @param hidden circuit and truth; its meters and loads are at hand, its readings are forgotten
   * @param seed the same seed gives the same drifts and errors
   */
  public LiveCircuit(PracticeCase hidden, long seed) {
    this.hidden = hidden;
    this.chance = Chance.of(seed, 1);
  }

  /** The circuit as it is stated to be wired. */
  public Circuit circuit() {
    return hidden.circuit();
  }

  /** What the method may take for granted. */
  public Assumptions assumptions() {
    return hidden.assumptions();
  }

  /** The meters and loads at hand, with no reading taken. */
  public Survey equipment() {
    return hidden.survey().withTests(List.of());
  }

  /**
   * Takes the readings of a test.
   *
   * @param blank what to read; the volts are of no effect
   * @return the same with what the meters show
   */
  public Test take(Test blank) {
    Chance forTest = chance.split();
    Survey survey = hidden.survey().withTests(List.of(blank));
    Predictor predictor = new Predictor(circuit(), survey, assumptions());
    List<Degradation> now =
        blank.loads().isEmpty() ? hidden.truth().degradedIdle() : hidden.truth().degraded();
    double[] point = truePoint();
    List<Double> exact = predictor.readings(now, point);
    double drift = assumptions().value(Assumption.SUPPLY_DRIFT) * forTest.gaussian();
    List<Reading> readings = new ArrayList<>();
    for (int r = 0; r < exact.size(); r++) {
      Reading asked = blank.readings().get(r);
      Meter meter = survey.meter(asked.meter());
      double value = ReadingDraw.drifted(exact.get(r), drift, meter);
      double shown = ReadingDraw.display(value, meter, assumptions(), forTest.gaussian());
      readings.add(asked.showing(shown));
    }
    return blank.withReadings(readings);
  }

  /** The true u of every parameter, in the order of the survey's parameters. */
  public double[] truePoint() {
    return hidden.truth().point().stream().mapToDouble(Double::doubleValue).toArray();
  }

  /** The degraded joints as they are under a load. */
  public List<Degradation> degraded() {
    return hidden.truth().degraded();
  }

  /** Whether a box, once open, shows a degraded joint. */
  public boolean showsInside(String box) {
    return degraded().stream()
        .map(degradation -> circuit().joint(degradation.joint()).orElseThrow())
        .map(Joint::box)
        .anyMatch(box::equals);
  }
}
