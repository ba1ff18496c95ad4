package ohmtrail.cli.render;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import ohmtrail.cli.casefile.CaseFile;
import ohmtrail.predict.Degradation;
import ohmtrail.report.Prediction;
import ohmtrail.report.Prediction.PredictedReading;
import ohmtrail.report.Prediction.PredictedTest;
import ohmtrail.report.VoltageDrop;
import ohmtrail.survey.LoadInUse;
import ohmtrail.survey.ProbePoints;
import ohmtrail.survey.Reading;
import ohmtrail.survey.Survey;
import org.junit.jupiter.api.Test;

class PredictionTest {
  /** The current is the load's alone but for microamperes in capacitance and meters. */
  private static final double RELATIVE_TOLERANCE = 1e-4;

  private static final CaseFile HALL = Answers.HALL;
  private static final Degradation NEUTRAL = new Degradation("bed-1/neutral/incoming", 2.4);

  @Test
  void everyReadingOfTheCaseIsPredictedInItsOrder() {
    Prediction prediction = Prediction.of(HALL.problem(), List.of());

    List<PredictedReading> predicted =
        prediction.tests().stream().flatMap(test -> test.readings().stream()).toList();
    List<Reading> read =
        HALL.survey().tests().stream().flatMap(test -> test.readings().stream()).toList();
    assertEquals(read, predicted.stream().map(PredictedReading::reading).toList());
    assertTrue(predicted.stream().allMatch(PredictedReading::isRead));
  }

  @Test
  void withoutDegradedJointsThePredictionIsTheHealthyOne() {
    Prediction.of(HALL.problem(), List.of())
        .tests()
        .forEach(test -> test.readings().forEach(r -> assertEquals(r.healthy(), r.predicted())));
  }

  @Test
  void aCaseWithoutTestsIsPredictedIdleAtEveryReceptacle() {
    Prediction prediction = Prediction.of(Answers.unread(HALL).problem(), List.of());

    PredictedTest only = prediction.tests().get(0);
    assertEquals(1, prediction.tests().size());
    assertEquals("idle", only.test().name());
    assertEquals(
        List.of("hall-1", "hall-2", "bath", "bed-1", "bed-2"),
        only.readings().stream().map(reading -> reading.reading().box()).toList());
    assertTrue(
        only.readings().stream()
            .allMatch(
                r ->
                    r.reading().between().equals(Optional.of(ProbePoints.HOT_NEUTRAL))
                        && !r.isRead()));
  }

  @Test
  void aTestWithoutReadingsIsPredictedAtEveryReceptacleWithItsLoads() {
    Survey survey = HALL.survey();
    CaseFile planned =
        new CaseFile(
            "planned",
            HALL.circuit(),
            new Survey(
                survey.meters(),
                survey.loads(),
                List.of(
                    new ohmtrail.survey.Test(
                        "kettle hour", List.of(new LoadInUse("heater", "bath")), List.of()))),
            HALL.assumptions(),
            List.of());

    PredictedTest only = Prediction.of(planned.problem(), List.of()).tests().get(0);

    assertEquals("kettle hour", only.test().name());
    assertEquals(5, only.readings().size());
    double atBath = volts(only, "bath");
    assertTrue(atBath < volts(only, "hall-1"), only.toString());
    assertEquals("dmm", only.readings().get(0).reading().meter());
  }

  @Test
  void aDegradedJointDropsItsOhmsTimesTheCurrentAndHeatsByTheSquare() {
    PredictedTest loaded = Prediction.of(HALL.problem(), List.of(NEUTRAL)).tests().get(1);

    double amperes = loaded.heat().get(0).amperes();
    VoltageDrop before = drop(loaded, "hall-2");
    VoltageDrop after = drop(loaded, "bed-1");
    PredictedTest sound = Prediction.of(HALL.problem(), List.of()).tests().get(1);
    double copper =
        (drop(sound, "bed-1").dropVolts() - drop(sound, "hall-2").dropVolts())
            / heaterAmperes(sound)
            * amperes;
    assertEquals(
        2.4 * amperes + copper,
        after.dropVolts() - before.dropVolts(),
        RELATIVE_TOLERANCE * after.dropVolts());
    assertEquals(
        2.4 * amperes * amperes, loaded.heat().get(0).watts(), RELATIVE_TOLERANCE * 2.4 * amperes);
  }

  @Test
  void anOpenJointCarriesNothingAndMakesNoHeat() {
    Degradation open = new Degradation("bed-1/neutral/incoming", Double.POSITIVE_INFINITY);

    PredictedTest loaded = Prediction.of(HALL.problem(), List.of(open)).tests().get(1);

    assertEquals(0, loaded.heat().get(0).amperes());
    assertEquals(0, loaded.heat().get(0).watts());
  }

  private static double heaterAmperes(PredictedTest test) {
    double ohms = 120.0 * 120 / 1500;
    return drop(test, "bed-2").volts() / ohms;
  }

  private static double volts(PredictedTest test, String box) {
    return test.readings().stream()
        .filter(reading -> reading.reading().box().equals(box))
        .mapToDouble(PredictedReading::predicted)
        .findFirst()
        .orElseThrow();
  }

  private static VoltageDrop drop(PredictedTest test, String box) {
    return test.state().drops().stream()
        .filter(drop -> drop.box().equals(box))
        .findFirst()
        .orElseThrow();
  }
}
