package ohmtrail.reference;

import static ohmtrail.reference.Conductors.aluminium;
import static ohmtrail.reference.Conductors.copper;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** IEC 60228 against the metal it is made of and against the standard's own temperature factors. */
class Iec60228TableTest {

  /** The factors are printed to three places. */
  private static final double THREE_PLACES = 0.0005 + 1e-12;

  /**
   * How far a maximum may lie above rho L / A of the nominal area. The rule of thumb is 5 to 9 %;
   * the nominal 50 mm² is built with about 47 mm² of metal and is the worst.
   */
  private static final double MOST_ABOVE_NOMINAL = 1.14;

  @ParameterizedTest
  @CsvSource({
    "5, 1.064",
    "10, 1.042",
    "15, 1.020",
    "20, 1.000",
    "25, 0.980",
    "30, 0.962",
    "40, 0.926",
    "50, 0.893",
    "60, 0.862",
    "70, 0.833",
    "75, 0.820",
    "80, 0.806",
    "90, 0.781"
  })
  void resistanceMovesByTheStandardsTemperatureFactors(double celsius, double factorToTwenty) {
    // IEC 60228, R20 = Rt kt.
    for (Conductor conductor : new Conductor[] {copper("2.5 mm2"), aluminium("16 mm2")}) {
      assertEquals(
          factorToTwenty,
          conductor.ohmsPerMetre(20) / conductor.ohmsPerMetre(celsius),
          THREE_PLACES);
    }
  }

  @Test
  void noCopperMaximumIsBelowStandardCopperOfTheNominalArea() {
    int checked = 0;
    for (ConductorSize size : Iec60228Table.instance().sizes()) {
      double nominal = AwgGeometry.COPPER_OHM_MM2_PER_METRE * 1e-6 / size.areaSquareMetres();
      double ratio = copper(size.designation()).ohmsPerMetre(20) / nominal;
      assertTrue(ratio >= 1 && ratio < MOST_ABOVE_NOMINAL, size.designation() + " ratio " + ratio);
      checked++;
    }
    assertEquals(14, checked);
  }

  @ParameterizedTest
  @CsvSource({"2.5", "4", "6", "10", "16", "25", "35", "50", "70", "95"})
  void noAluminiumMaximumIsBelowSixtyOnePerCentAluminiumOfTheNominalArea(double squareMillimetres) {
    // Resistivity: IEC 60889 hard-drawn aluminium, from memory.
    double nominal = AwgGeometry.ALUMINIUM_OHM_MM2_PER_METRE / squareMillimetres;
    double ratio = aluminium(squareMillimetres + " mm2").ohmsPerMetre(20) / nominal;
    assertTrue(ratio >= 1 && ratio < MOST_ABOVE_NOMINAL, "ratio " + ratio);
  }

  @Test
  void twoAndAHalfSquareMillimetresIsTheTablesMaximumAndNotTheNominalArea() {
    // IEC 60228 Table A.1: 7.41 ohm/km; 1000 / 58 / 2.5 = 6.897 ohm/km.
    assertEquals(0.00741, copper("2.5 mm2").ohmsPerMetre(20), 1e-12);
    assertEquals(7.41 / 6.897, copper("2.5 mm2").ohmsPerMetre(20) / (1.0 / 58 / 2.5), 1e-4);
  }

  @Test
  void solidAndStrandedShareTheirMaxima() {
    Conductor conductor = copper("2.5 mm2");
    assertEquals(
        conductor.ohmsPerMetre(20), conductor.ohmsPerMetre(Stranding.SOLID, 20).orElseThrow());
    assertEquals(
        conductor.ohmsPerMetre(20), conductor.ohmsPerMetre(Stranding.STRANDED, 20).orElseThrow());
  }

  @Test
  void aluminiumOfASizeNotListedIsRefusedAndTheListedSizesAreOffered() {
    IllegalArgumentException refused =
        assertThrows(IllegalArgumentException.class, () -> aluminium("1.5 mm2"));
    assertTrue(
        refused.getMessage().contains("(1.5 mm2) is not listed in aluminium"),
        refused.getMessage());
    assertTrue(refused.getMessage().contains(" 2.5 mm2"), refused.getMessage());
    assertTrue(!refused.getMessage().contains(" 1 mm2"), refused.getMessage());
  }
}
