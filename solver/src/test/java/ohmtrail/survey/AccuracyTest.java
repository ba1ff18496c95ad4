package ohmtrail.survey;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** From a meter's data sheet to standard uncertainty. */
class AccuracyTest {

  private static final double EXACT = 1e-12;

  @Test
  void sevenTenthsOfAPerCentAndTwoCountsOfAHundredAndTwentyVolts() {
    // As quoted in a secondary text: 120.0 V, +/-(0.7 % + 2), 0.1 V: +/-1.04 V, 118.96 to 121.04 V;
    // computed as a rectangular distribution 1.04/sqrt(3) = 0.6004 V.
    Accuracy accuracy = new Accuracy(0.007, 2);
    double limit = accuracy.limit(120.0, 0.1);
    assertEquals(1.04, limit, EXACT);
    assertEquals(118.96, 120.0 - limit, EXACT);
    assertEquals(121.04, 120.0 + limit, EXACT);
    assertEquals(0.6004, accuracy.standardUncertainty(120.0, 0.1), 0.00005);
  }

  @Test
  void halfAPerCentAndTenCountsOfTwoVolts() {
    // A published accuracy example: 2.0000 V, +/-(0.5 % + 10 counts): 1.9890 to 2.0110 V.
    double limit = new Accuracy(0.005, 10).limit(2.0000, 0.0001);
    assertEquals(1.9890, 2.0 - limit, EXACT);
    assertEquals(2.0110, 2.0 + limit, EXACT);
  }

  @Test
  void aRectangularDistributionBetweenSevenAndTen() {
    // A published worked example (EURACHEM/CITAC QUAM Appendix E.1, attribution from memory; GUM
    // 4.3.7, clause from memory): half-width 1.5, standard uncertainty 0.87.
    double halfWidth = (10.0 - 7.0) / 2;
    Accuracy accuracy = new Accuracy(0, halfWidth);
    assertEquals(0.87, accuracy.standardUncertainty(8.5, 1), 0.005);
    assertEquals(0.866025, accuracy.standardUncertainty(8.5, 1), 0.5e-6);
  }

  @Test
  void roundingAloneIsTheStepOverTheSquareRootOfTwelve() {
    // GUM 4.3.7, clause from memory: full width w, standard uncertainty w/sqrt(12).
    Meter meter = new Meter("m", 1e7, 0, new Accuracy(0.01, 0), 0.1);
    assertEquals(0.1 / Math.sqrt(12), meter.readingSigma(), EXACT);
  }

  @Test
  void whatAllReadingsShareAndWhatEachHasForItselfMakeUpTheStatement() {
    Accuracy accuracy = new Accuracy(0.008, 3);
    double reading = 118.3;
    assertEquals(
        accuracy.standardUncertainty(reading, 0.1),
        accuracy.gainSigma() * reading + accuracy.countsSigma(0.1),
        EXACT);
    assertEquals(accuracy.limit(reading, 0.1), accuracy.limit(-reading, 0.1), 0);
  }

  @ParameterizedTest
  @CsvSource({"-0.01, 2", "1, 2", "NaN, 2", "0.01, -1", "0.01, NaN", "0.01, Infinity"})
  void figuresThatNoDataSheetHasAreRefused(double share, double counts) {
    SurveyException refusal =
        assertThrows(SurveyException.class, () -> new Accuracy(share, counts));
    assertTrue(refusal.getMessage().contains(counts + " counts"), refusal.getMessage());
  }
}
