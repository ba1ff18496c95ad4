package ohmtrail.reference;

import static ohmtrail.reference.Conductors.aluminium;
import static ohmtrail.reference.Conductors.copper;
import static ohmtrail.reference.Conductors.ohmsPerKft;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import ohmtrail.reference.table.TableFile;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** NEC (NFPA 70) Chapter 9 Table 8 against figures from elsewhere. */
class NecTable8Test {

  /** Three printed digits, the first often a 1: half a unit of the last is up to 0.4 %. */
  private static final double PRINTED_AGREEMENT = 0.004;

  /**
   * Foot and metric columns were rounded separately, so the half units of both add up: 13.1 (0.38
   * %) and 42.8 (0.12 %) are the worst pair, and differ by 0.42 %.
   */
  private static final double SEPARATELY_ROUNDED = 0.005;

  /** Three printed digits that begin with a 1: half a unit of the last is 0.5 %. */
  private static final double THREE_DIGITS_FROM_ONE = 0.005;

  /** The table gives circular mils to three or four digits: 1620 against 1624. */
  private static final double CIRCULAR_MIL_AGREEMENT = 0.003;

  /** Areas computed to four or five digits, 0.8230 the shortest. */
  private static final double AREA_DIGITS = 7e-5;

  /** The figures recomputed from the table to four decimals: half a unit of the last. */
  private static final double FOUR_DECIMALS = 0.00005;

  /**
   * Laying up makes the wires a little longer than the conductor: about 2 %, three printed digits.
   */
  private static final double LEAST_LAY = 1.010;

  private static final double MOST_LAY = 1.035;

  @ParameterizedTest
  @ValueSource(strings = {"18 AWG", "16 AWG", "14 AWG", "12 AWG", "10 AWG", "8 AWG"})
  void solidCopperAgreesWithAwgGeometryAndStandardCopper(String size) {
    // ASTM B258 diameters (closed formula from memory), IEC 60028 resistivity, alpha 0.00393 at 20
    // degC.
    double computed = AwgGeometry.copperOhmsPerKft(size, 75);
    assertEquals(
        computed, ohmsPerKft(copper(size), Stranding.SOLID, 75), PRINTED_AGREEMENT * computed);
  }

  @ParameterizedTest
  @CsvSource({"18, 7.765", "16, 4.884", "14, 3.071", "12, 1.932", "10, 1.215", "8, 0.764"})
  void theGeometryChainGivesItsKnownValues(String gauge, double ohmsPerKft) {
    // Computed from the AWG formula, 1/58 ohm mm2/m and alpha 0.00393; a check on the chain itself.
    assertEquals(ohmsPerKft, AwgGeometry.copperOhmsPerKft(gauge + " AWG", 75), 0.0005);
  }

  @ParameterizedTest
  @ValueSource(strings = {"18 AWG", "16 AWG", "14 AWG", "12 AWG", "10 AWG", "8 AWG"})
  void solidAluminiumAgreesWithAwgGeometryAndSixtyOnePerCentConductivity(String size) {
    // NEC Tables 8 and 9 rest on aluminium of 61 % IACS; IEC 60889 resistivity from memory, alpha
    // 0.00403.
    double computed = AwgGeometry.aluminiumOhmsPerKft(size, 75);
    assertEquals(
        computed,
        ohmsPerKft(aluminium(size), Stranding.SOLID, 75),
        THREE_DIGITS_FROM_ONE * computed);
  }

  @Test
  void everyStrandedConductorResistsAboutTwoPerCentMoreThanSolidOfItsGauge() {
    List<ConductorSize> sizes = NecTable8.instance().sizes();
    assertEquals(15, sizes.size());
    for (ConductorSize size : sizes) {
      String name = size.designation();
      double copperLay =
          ohmsPerKft(copper(name), Stranding.STRANDED, 75) / AwgGeometry.copperOhmsPerKft(name, 75);
      double aluminiumLay =
          ohmsPerKft(aluminium(name), Stranding.STRANDED, 75)
              / AwgGeometry.aluminiumOhmsPerKft(name, 75);
      assertTrue(copperLay > LEAST_LAY && copperLay < MOST_LAY, name + " copper " + copperLay);
      assertTrue(
          aluminiumLay > LEAST_LAY && aluminiumLay < MOST_LAY, name + " aluminium " + aluminiumLay);
    }
  }

  @Test
  void theOhmPerKilometreColumnsAgreeWithTheOhmPerThousandFeetColumns() {
    // Aluminium ohm/km: Modern Commercial Wiring p. 87; copper ohm/km as printed in the NEC: from
    // memory.
    List<TableFile.Row> rows = TableFile.read(NecTable8.FILE).rows();
    assertEquals(21, rows.size());
    for (TableFile.Row row : rows) {
      for (String metal : List.of("copper", "aluminium")) {
        double perKilometre = row.number(metal + "_ohms_per_km");
        double converted = row.number(metal + "_ohms_per_kft") / 0.3048;
        assertEquals(
            converted, perKilometre, SEPARATELY_ROUNDED * converted, metal + " line " + row.line());
      }
    }
  }

  @ParameterizedTest
  @CsvSource({"20, 1.6283", "25, 1.6602", "30, 1.6922", "60, 1.8841", "75, 1.98", "90, 2.0759"})
  void strandedTwelveGaugeMovesWithTemperatureByTheNoteUnderTheTable(
      double celsius, double ohmsPerKft) {
    // R2 = R1 [1 + 0.00323 (T2 - 75)], computed from the table's 1.98 ohm/kFT.
    assertEquals(
        ohmsPerKft, ohmsPerKft(copper("12 AWG"), Stranding.STRANDED, celsius), FOUR_DECIMALS);
  }

  @Test
  void theFactorsFromSeventyFiveToTwentyDegreesAreThoseOfTheNote() {
    // Computed from alpha 0.00323 and 0.00330.
    assertEquals(
        0.82235, copper("6 AWG").ohmsPerMetre(20) / copper("6 AWG").ohmsPerMetre(75), 1e-9);
    assertEquals(
        0.8185, aluminium("6 AWG").ohmsPerMetre(20) / aluminium("6 AWG").ohmsPerMetre(75), 1e-9);
  }

  @Test
  void theTablesAlphaIsTheHandbooksMovedFromTwentyToSeventyFiveDegrees() {
    // Industrial Power Engineering and Applications Handbook, Table 30.1: 0.00393 and 0.00403 at 20
    // degC.
    double copperAt75 = AwgGeometry.COPPER_ALPHA_20 / (1 + AwgGeometry.COPPER_ALPHA_20 * 55);
    double aluminiumAt75 =
        AwgGeometry.ALUMINIUM_ALPHA_20 / (1 + AwgGeometry.ALUMINIUM_ALPHA_20 * 55);
    assertEquals(copperAt75, alphaAt75(copper("6 AWG")), 0.000005);
    assertEquals(aluminiumAt75, alphaAt75(aluminium("6 AWG")), 0.000005);
  }

  private static double alphaAt75(Conductor conductor) {
    return conductor.ohmsPerMetre(76) / conductor.ohmsPerMetre(75) - 1;
  }

  @ParameterizedTest
  @CsvSource({"18, 6.385", "16, 4.016", "14, 2.525", "12, 1.588", "10, 0.9989", "8, 0.6282"})
  void solidCopperAtTwentyDegreesAgreesWithATextbookWireTable(String gauge, double ohmsPerKft) {
    // Hyperphysics, after Floyd, Electric Circuit Fundamentals.
    Conductor conductor = copper(gauge + " AWG");
    assertEquals(
        ohmsPerKft, ohmsPerKft(conductor, Stranding.SOLID, 20), PRINTED_AGREEMENT * ohmsPerKft);
  }

  @ParameterizedTest
  @CsvSource({"6, 0.3951", "4, 0.2485", "1/0, 0.0983", "2/0, 0.0780", "4/0, 0.0490"})
  void strandedCopperAtTwentyDegreesResistsALittleMoreThanTheTextbooksSolidWire(
      String gauge, double ohmsPerKft) {
    // Hyperphysics, after Floyd, Electric Circuit Fundamentals.
    double ratio = copper(gauge + " AWG").ohmsPerMetre(20) * Conductors.METRES_PER_KFT / ohmsPerKft;
    assertTrue(ratio > LEAST_LAY && ratio < MOST_LAY, "ratio " + ratio);
  }

  @ParameterizedTest
  @CsvSource({
    "4/0, 107.219",
    "2/0, 67.431",
    "1/0, 53.475",
    "4, 21.151",
    "6, 13.302",
    "8, 8.3656",
    "10, 5.2612",
    "12, 3.3088",
    "14, 2.0809",
    "16, 1.3087",
    "18, 0.8230"
  })
  void areasFromCircularMilsAgreeWithTheGaugeFormula(String gauge, double squareMillimetres) {
    // Computed from the ASTM B258 rule; circular mils as quoted in a secondary text.
    double areaSquareMetres = copper(gauge + " AWG").size().areaSquareMetres();
    assertEquals(
        squareMillimetres, areaSquareMetres * 1e6, CIRCULAR_MIL_AGREEMENT * squareMillimetres);
    assertEquals(
        squareMillimetres,
        AwgGeometry.areaSquareMillimetres(gauge + " AWG"),
        AREA_DIGITS * squareMillimetres);
  }

  @Test
  void tenGaugeAndSmallerIsSolidUnlessSaidOtherwiseAndLargerIsStranded() {
    for (ConductorSize size : NecTable8.instance().sizes()) {
      Conductor conductor = copper(size.designation());
      boolean small = size.areaSquareMetres() < 6e-6;
      Stranding usual = small ? Stranding.SOLID : Stranding.STRANDED;
      assertEquals(
          conductor.ohmsPerMetre(usual, 75).orElseThrow(),
          conductor.ohmsPerMetre(75),
          size.designation());
    }
  }

  @Test
  void theTableListsNoSolidConductorAboveEightGauge() {
    assertTrue(copper("8 AWG").ohmsPerMetre(Stranding.SOLID, 75).isPresent());
    assertTrue(copper("6 AWG").ohmsPerMetre(Stranding.SOLID, 75).isEmpty());
  }
}
