package ohmtrail.reference;

import static ohmtrail.reference.Conductors.aluminium;
import static ohmtrail.reference.Conductors.copper;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The breakers usually found on conductors: common practice, no source. */
class BreakerPracticeTest {

  @ParameterizedTest
  @CsvSource({
    "14 AWG, 15",
    "12 AWG, 20",
    "10 AWG, 30",
    "1.5 mm2, 16",
    "2.5 mm2, 20",
    "4 mm2, 32",
    "6 mm2, 40"
  })
  void theUsualBreakersAreTheTrades(String size, double amperes) {
    assertEquals(OptionalDouble.of(amperes), copper(size).typicalBreakerAmperes());
  }

  @Test
  void aluminiumCarriesASmallerBreakerThanCopperOfItsSize() {
    for (ConductorSize size : ConductorSize.all()) {
      boolean aluminiumIsListed = !size.isMetric() || size.areaSquareMetres() > 2e-6;
      if (!aluminiumIsListed) {
        continue;
      }
      OptionalDouble amperes = aluminium(size.designation()).typicalBreakerAmperes();
      if (amperes.isPresent()) {
        double copperAmperes = copper(size.designation()).typicalBreakerAmperes().orElseThrow();
        assertTrue(amperes.getAsDouble() < copperAmperes, size.designation());
      }
    }
  }

  @ParameterizedTest
  @CsvSource({
    "14 AWG, 15, USUAL",
    "14 AWG, 20, USUAL",
    "14 AWG, 30, TOO_SMALL",
    "10 AWG, 15, USUAL",
    "4/0 AWG, 20, TOO_BIG",
    "2.5 mm2, 32, USUAL",
    "1.5 mm2, 32, TOO_SMALL",
    "25 mm2, 16, TOO_BIG",
    "0.5 mm2, 6, UNKNOWN"
  })
  void onlyWhatNobodyWouldWireIsFlagged(String size, double breakerAmperes, BreakerFit fit) {
    assertEquals(fit, copper(size).fitOn(breakerAmperes));
  }

  @ParameterizedTest
  @ValueSource(doubles = {0, -15, Double.NaN, Double.POSITIVE_INFINITY})
  void aBreakerRatingThatIsNoneIsRefused(double amperes) {
    assertThrows(IllegalArgumentException.class, () -> copper("14 AWG").fitOn(amperes));
  }
}
