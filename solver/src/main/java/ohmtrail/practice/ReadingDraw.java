package ohmtrail.practice;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import ohmtrail.circuit.Circuit;
import ohmtrail.predict.Degradation;
import ohmtrail.predict.Parameter;
import ohmtrail.predict.Predictor;
import ohmtrail.reference.Assumption;
import ohmtrail.reference.Assumptions;
import ohmtrail.survey.Meter;
import ohmtrail.survey.Reading;
import ohmtrail.survey.ReadingError;
import ohmtrail.survey.Survey;
import ohmtrail.survey.Test;

/**
 * Draws what the meters show: every parameter, the drift of every test and the error of every
 * reading from its own tolerance, then rounds to the display.
 */
final class ReadingDraw {
  private static final double LARGEST_INSTABILITY = 10;
  private static final double LENGTH_SLIP = 2;
  private static final double WEAK_HEATER = 0.8;

  /** In limits of the meter's stated accuracy. */
  private static final double GAIN_SLIP = 3;

  private final Circuit circuit;
  private final Survey blank;
  private final Assumptions assumptions;
  private final Chance forPoint;
  private final Chance forDrifts;
  private final Chance forErrors;
  private final Chance forDisturbance;

  ReadingDraw(Circuit circuit, Survey blank, Assumptions assumptions, Chance chance) {
    this.circuit = circuit;
    this.blank = blank;
    this.assumptions = assumptions;
    this.forPoint = chance.split();
    this.forDrifts = chance.split();
    this.forErrors = chance.split();
    this.forDisturbance = chance.split();
  }

  PracticeCase draw(List<Degradation> degraded, Disturbance disturbance) {
    Scene scene = new SceneDraw(circuit, blank, forDisturbance).draw(disturbance);
    Predictor predictor = new Predictor(scene.circuit(), scene.survey(), assumptions);
    List<Parameter> parameters = predictor.parameters().all();
    double[] point = parameters.stream().mapToDouble(each -> forPoint.gaussian()).toArray();
    disturb(parameters, point, disturbance);
    List<Degradation> idle =
        disturbance == Disturbance.UNSTABLE_JOINT ? unstable(degraded) : degraded;
    List<Double> drifts = blank.tests().stream().map(test -> drift()).toList();
    List<Double> errors = Stream.generate(forErrors::gaussian).limit(blank.readingCount()).toList();
    List<Double> supplies = scene.supplies(drifts);
    List<Double> shown =
        shown(
            supplies,
            predictor.readings(scene.on(degraded), point),
            predictor.readings(scene.on(idle), point),
            errors);
    List<Double> written = new ArrayList<>(shown);
    Map<Integer, Double> wrong = new LinkedHashMap<>();
    if (disturbance == Disturbance.MISTYPED_READING) {
      int place = forDisturbance.whole(0, shown.size() - 1);
      wrong.put(place, shown.get(place));
      written.set(place, new SlipOfThePen(forDisturbance).instead(shown.get(place)));
    }
    if (disturbance == Disturbance.READING_ELSEWHERE) {
      takeElsewhere(degraded, point, supplies, errors, written, wrong);
    }
    List<Double> truePoint = new ArrayList<>();
    for (double u : point) {
      truePoint.add(u);
    }
    Truth truth =
        new Truth(
            scene.asStated(degraded), scene.asStated(idle), wrong, truePoint, drifts, disturbance);
    return new PracticeCase(scene.stated(), filled(written), assumptions, truth);
  }

  /**
   * Takes one reading at a neighbour of its box. Where it would hardly have differed there is no
   * slip: one that would is drawn, or the one that differs most.
   */
  private void takeElsewhere(
      List<Degradation> degraded,
      double[] point,
      List<Double> supplies,
      List<Double> errors,
      List<Double> written,
      Map<Integer, Double> wrong) {
    Survey elsewhere = SceneDraw.atNeighbours(circuit, blank);
    List<Double> exact = new Predictor(circuit, elsewhere, assumptions).readings(degraded, point);
    List<Double> there = shown(supplies, exact, exact, errors);
    List<Integer> telling = new ArrayList<>();
    int most = 0;
    for (int place = 0; place < there.size(); place++) {
      double difference = Math.abs(there.get(place) - written.get(place));
      if (difference >= SlipOfThePen.SMALLEST_SLIP_VOLTS) {
        telling.add(place);
      }
      if (difference > Math.abs(there.get(most) - written.get(most))) {
        most = place;
      }
    }
    int place = telling.isEmpty() ? most : forDisturbance.oneOf(telling);
    wrong.put(place, written.get(place));
    written.set(place, there.get(place));
  }

  private double drift() {
    return assumptions.value(Assumption.SUPPLY_DRIFT) * forDrifts.gaussian();
  }

  private List<Degradation> unstable(List<Degradation> degraded) {
    List<Degradation> changed = new ArrayList<>();
    for (Degradation each : degraded) {
      double factor = forDisturbance.logUniform(1 / LARGEST_INSTABILITY, LARGEST_INSTABILITY);
      changed.add(new Degradation(each.joint(), each.ohms() * factor));
    }
    return changed;
  }

  private void disturb(List<Parameter> parameters, double[] point, Disturbance disturbance) {
    switch (disturbance) {
      case WRONG_LENGTH -> {
        double factor = forDisturbance.happens(0.5) ? LENGTH_SLIP : 1 / LENGTH_SLIP;
        set(parameters, point, Parameter.CableLength.class, factor);
      }
      case WEAK_HEATER -> set(parameters, point, Parameter.LoadRating.class, WEAK_HEATER);
      case METER_OUT_OF_ACCURACY -> {
        double sign = forDisturbance.happens(0.5) ? 1 : -1;
        double share = blank.meters().get(0).accuracy().share();
        set(parameters, point, Parameter.MeterGain.class, 1 + sign * GAIN_SLIP * share);
      }
      default -> {
        // Acts elsewhere.
      }
    }
  }

  /** Makes one parameter of a kind, drawn among all of it, that factor of its nominal value. */
  private void set(
      List<Parameter> parameters, double[] point, Class<? extends Parameter> kind, double factor) {
    List<Integer> places = new ArrayList<>();
    for (int place = 0; place < parameters.size(); place++) {
      if (kind.isInstance(parameters.get(place))) {
        places.add(place);
      }
    }
    int place = forDisturbance.oneOf(places);
    point[place] = StrictMath.log(factor) / parameters.get(place).sigma();
  }

  private List<Double> shown(
      List<Double> supplies, List<Double> loaded, List<Double> idle, List<Double> errors) {
    List<Double> shown = new ArrayList<>();
    for (int t = 0; t < blank.tests().size(); t++) {
      Test test = blank.tests().get(t);
      List<Double> exact = test.loads().isEmpty() ? idle : loaded;
      for (Reading reading : test.readings()) {
        Meter meter = blank.meter(reading.meter());
        double value = drifted(exact.get(shown.size()), supplies.get(t), meter);
        shown.add(display(value, meter, assumptions, errors.get(shown.size())));
      }
    }
    return shown;
  }

  /** What follows the supply drifts with it. */
  static double drifted(double value, double drift, Meter meter) {
    return meter.measurand().followsSupply() ? value * (1 + drift) : value;
  }

  /**
   * A display shows no sign; rounding supplies its own error.
   *
   * @param error a standard normal number
   */
  static double display(double value, Meter meter, Assumptions assumptions, double error) {
    double resolution = meter.resolution();
    double scatter = ReadingError.scatter(meter.measurand(), assumptions);
    double sigma = Math.hypot(meter.accuracy().countsSigma(resolution), scatter);
    double withError = Math.abs(value + sigma * error);
    double stepsPerVolt = 1 / resolution;
    return Math.rint(withError * stepsPerVolt) / stepsPerVolt;
  }

  private Survey filled(List<Double> volts) {
    List<Test> tests = new ArrayList<>();
    int place = 0;
    for (Test test : blank.tests()) {
      List<Reading> readings = new ArrayList<>();
      for (Reading reading : test.readings()) {
        readings.add(reading.showing(volts.get(place++)));
      }
      tests.add(test.withReadings(readings));
    }
    return blank.withTests(tests);
  }
}
