package ohmtrail.cli.render.words;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.OptionalDouble;
import ohmtrail.locate.OhmsInterval;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class FiguresTest {
  @ParameterizedTest
  @CsvSource({
    "0, 0 ohm",
    "0.002, 0.002 ohm",
    "0.3512, 0.35 ohm",
    "2, 2 ohm",
    "2.4321, 2.4 ohm",
    "99.6, 100 ohm",
    "123, 120 ohm",
    "999.9, 1 kohm",
    "3100, 3.1 kohm",
    "10e6, 10 Mohm",
    "Infinity, open"
  })
  void ohmsHaveTwoDigitsAndAPrefix(double ohms, String written) {
    assertEquals(written, Figures.ohms(ohms));
  }

  @ParameterizedTest
  @CsvSource({
    "0, 0.0 ohm",
    "0.3, 0.30 ohm",
    "3.04841, 3.0 ohm",
    "9.96, 10 ohm",
    "10, 10 ohm",
    "2000, 2.0 kohm",
    "999.9, 1.0 kohm",
    "21000, 21 kohm",
    "650000, 650 kohm",
    "1.5e6, 1.5 Mohm"
  })
  void estimatedOhmsKeepBothDigits(double ohms, String written) {
    assertEquals(written, Figures.estimatedOhms(ohms));
  }

  @ParameterizedTest
  @CsvSource({
    "0, 0 W",
    "540, 540 W",
    "374.6, 375 W",
    "3600, 3600 W",
    "12345, 12.3 kW",
    "0.12, 0.12 W",
    "0.0054, 5.4 mW",
    "0.00009, 90 uW",
    "1e-9, less than 1 uW"
  })
  void wattsHaveThreeDigits(double watts, String written) {
    assertEquals(written, Figures.watts(watts));
  }

  @ParameterizedTest
  @CsvSource({"15, 15 A", "12.5, 12.5 A", "0.0401, 40.1 mA", "6.0824, 6.08 A"})
  void amperesHaveThreeDigits(double amperes, String written) {
    assertEquals(written, Figures.amperes(amperes));
  }

  @ParameterizedTest
  @CsvSource({"0.04, 0.0", "-0.04, 0.0", "0.25, +0.2", "-1.96, -2.0", "12, +12.0"})
  void aDifferenceCarriesItsSignUnlessItIsNothing(double value, String written) {
    assertEquals(written, Figures.signedTenths(value));
  }

  @Test
  void aSmallNegativeNumberIsNotWrittenAsMinusZero() {
    assertEquals("0.0", Figures.tenths(-0.01));
    assertEquals("0", Figures.upToTenths(-0.01));
  }

  @ParameterizedTest
  @CsvSource({
    "1, >99 %",
    "0.995, >99 %",
    "0.9949, 99 %",
    "0.87, 87 %",
    "0.005, 0 %",
    "0.0051, 1 %",
    "0.0049, <1 %",
    "0, <1 %"
  })
  void nothingIsCertain(double probability, String written) {
    assertEquals(written, Figures.probability(probability));
  }

  @ParameterizedTest
  @CsvSource({
    "0.03, 0.03",
    "1e-10, 1e-10",
    "1e7, 1e7",
    "0.0033, 0.0033",
    "30, 30",
    "1421.3, 1420",
    "0, 0"
  })
  void plainNumbersHaveThreeDigitsAndAnExponentOnlyWhereNeeded(double value, String written) {
    assertEquals(written, Figures.number(value));
  }

  @ParameterizedTest
  @CsvSource(
      nullValues = "-",
      value = {
        "2.4, 1.9, 3.1, about 2.4 ohm (1.9 to 3.1)",
        "900, 800, 1200, about 900 ohm (800 ohm to 1.2 kohm)",
        "1200, 800, 2100, about 1.2 kohm (800 ohm to 2.1 kohm)",
        "800, 1200, 2100, about 800 ohm (1.2 to 2.1 kohm)",
        "3000, 2000, -, about 3.0 kohm (more than 2.0 kohm)",
        "0.1, -, 0.3, about 0.10 ohm (less than 0.30 ohm)",
        "0.1, -, -, about 0.10 ohm",
        "-, 2000, -, 'more than 2.0 kohm, perhaps fully open'",
        "-, 9.5e6, -, fully open or nearly so (more than 9.5 Mohm)",
        "-, -, 0.3, less than 0.30 ohm",
        "-, 0.1, 0.3, anywhere from 0.10 to 0.30 ohm",
        "27, 0.041, 28e3, anywhere from 0.041 ohm to 28 kohm",
        "-, -, -, anything up to fully open"
      })
  void anIntervalIsToldAsFarAsItIsKnown(Double estimate, Double low, Double high, String words) {
    assertEquals(
        words,
        OhmsWords.of(new OhmsInterval(optional(estimate), optional(low), optional(high), 0.9)));
  }

  private static OptionalDouble optional(Double value) {
    return value == null ? OptionalDouble.empty() : OptionalDouble.of(value);
  }
}
