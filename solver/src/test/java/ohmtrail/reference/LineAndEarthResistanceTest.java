package ohmtrail.reference;

import static ohmtrail.reference.Conductors.copper;
import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * R1 + R2 of line and protective conductor, against D. Locke, Guide to the Wiring Regulations: 17th
 * Edition (BS 7671:2008), Wiley 2008, Appendix 4, Tables 4.1 to 4.3.
 */
class LineAndEarthResistanceTest {

  /** Each entry is the sum of two entries of IEC 60228, printed in full. */
  private static final double PRINTED_IN_FULL = 1e-9;

  private static double milliohmsPerMetre(String lineAndEarth, double celsius) {
    int slash = lineAndEarth.indexOf('/');
    Conductor line = copper(lineAndEarth.substring(0, slash) + " mm2");
    Conductor earth = copper(lineAndEarth.substring(slash + 1) + " mm2");
    return 1000 * (line.ohmsPerMetre(celsius) + earth.ohmsPerMetre(celsius));
  }

  @ParameterizedTest
  @CsvSource({
    "1.5/1.0, 30.2",
    "2.5/1.5, 19.51",
    "4/1.5, 16.71",
    "6/2.5, 10.49",
    "10/4, 6.44",
    "16/6, 4.23",
    "1.5/1.5, 24.2",
    "2.5/2.5, 14.82",
    "4/4, 9.22",
    "6/6, 6.16",
    "10/10, 3.66"
  })
  void milliohmsPerMetreAreThoseOfThePrintedTable(String sizes, double printed) {
    assertEquals(printed, milliohmsPerMetre(sizes, 20), PRINTED_IN_FULL);
  }

  @ParameterizedTest
  @CsvSource({"1.0/1.0, 36.2", "2.5/1.0, 25.51", "4/2.5, 12.02", "6/4, 7.69", "10/6, 4.91"})
  void theOtherPairsAreTheSumsOfTheirConductors(String sizes, double computed) {
    // Computed from IEC 60228; as On-Site Guide entries from memory.
    assertEquals(computed, milliohmsPerMetre(sizes, 20), PRINTED_IN_FULL);
  }

  @ParameterizedTest
  @CsvSource({
    "1.5/1.0, 1.51, 0.005",
    "2.5/1.5, 0.98, 0.005",
    "4/1.5, 0.84, 0.005",
    "6/2.5, 0.52, 0.005",
    "10/4, 0.32, 0.005",
    "16/6, 0.211, 0.0005"
  })
  void fiftyMetresGiveThePrintedOhms(
      String sizes, double printedOhms, double halfAUnitOfTheLastDigit) {
    double ohms = 50 * milliohmsPerMetre(sizes, 20) / 1000;
    assertEquals(printedOhms, ohms, halfAUnitOfTheLastDigit + 1e-9);
  }

  @Test
  void theWorkedRunOfTwentyTwoMetresGivesItsThreeFigures() {
    // 22 m of 2.5/1.5 mm2, citing On-Site Guide Table 11, as quoted in a secondary text.
    double r1 = 22 * copper("2.5 mm2").ohmsPerMetre(20);
    double r2 = 22 * copper("1.5 mm2").ohmsPerMetre(20);
    assertEquals(0.163, r1, 0.0005);
    assertEquals(0.266, r2, 0.0005);
    assertEquals(0.429, r1 + r2, 0.0005);
  }

  @ParameterizedTest
  @CsvSource({"70, 1.20", "90, 1.28"})
  void theMultiplierToOperatingTemperatureIsTheGuides(double celsius, double multiplier) {
    // On-Site Guide, from memory; equal to 1 + 0.004 (t - 20), computed from the factors of IEC
    // 60228.
    assertEquals(
        multiplier, milliohmsPerMetre("2.5/1.5", celsius) / milliohmsPerMetre("2.5/1.5", 20), 1e-9);
  }

  @ParameterizedTest
  @CsvSource({"5, 1.06", "10, 1.04", "15, 1.02", "20, 1.00", "25, 0.98"})
  void ambientReadingsMoveToTwentyDegreesByThePrintedFactors(double celsius, double factor) {
    // Table 8.6 of an electrician's guide to the 16th edition, printed to two places.
    assertEquals(
        factor, milliohmsPerMetre("2.5/1.5", 20) / milliohmsPerMetre("2.5/1.5", celsius), 0.005);
  }

  @Test
  void theSmallerEarthConductorResistsByTheTablesRatioAndNotByArea() {
    // r2/r1 of 2.5/1.5: 12.1/7.41 = 1.633, computed from IEC 60228; 1.67 by area.
    assertEquals(
        1.633, copper("1.5 mm2").ohmsPerMetre(20) / copper("2.5 mm2").ohmsPerMetre(20), 0.0005);
  }
}
