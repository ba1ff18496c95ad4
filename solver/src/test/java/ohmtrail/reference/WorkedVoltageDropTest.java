package ohmtrail.reference;

import static ohmtrail.reference.Conductors.copper;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;

/**
 * Worked voltage drops from textbooks and standards, through the tables of this package where they
 * can be.
 */
class WorkedVoltageDropTest {

  private static final double FEET_PER_METRE = 1 / 0.3048;
  private static final double SQUARE_METRES_PER_CIRCULAR_MIL = Math.PI / 4 * 25.4e-6 * 25.4e-6;

  /** One ohm circular mil per foot in ohm metres. */
  private static final double OHM_METRES_PER_OHM_CMIL_PER_FOOT =
      SQUARE_METRES_PER_CIRCULAR_MIL * FEET_PER_METRE;

  /** The usual constant for copper at 75 °C, as quoted in a secondary text, to three digits. */
  private static final double K_COPPER = 12.9 * OHM_METRES_PER_OHM_CMIL_PER_FOOT;

  private static double metres(double feet) {
    return feet / FEET_PER_METRE;
  }

  private static double dropByConstant(double amperes, double oneWayFeet, Conductor conductor) {
    return 2 * K_COPPER * amperes * metres(oneWayFeet) / conductor.size().areaSquareMetres();
  }

  @Test
  void aTwentyAmpereLoadAHundredFeetAwayDropsByTheConstantWhatTheCourseTextSays() {
    // Licence-exam course text, as quoted in a secondary text: 7.9 V (6.6 %) and 3.1 V (2.6 %) of
    // 120 V.
    assertEquals(7.90199, dropByConstant(20, 100, copper("12 AWG")), 0.00001);
    assertEquals(3.12538, dropByConstant(20, 100, copper("8 AWG")), 0.00001);
    assertEquals(6.6, dropByConstant(20, 100, copper("12 AWG")) / 120 * 100, 0.05);
    assertEquals(2.6, dropByConstant(20, 100, copper("8 AWG")) / 120 * 100, 0.05);
  }

  @Test
  void theSameLoadDropsByTableEightWhatStrandedTwelveGaugeShould() {
    // Computed from NEC Chapter 9 Table 8: 1.98 ohm/kFT.
    double ohms =
        2 * metres(100) * copper("12 AWG").ohmsPerMetre(Stranding.STRANDED, 75).orElseThrow();
    assertEquals(7.920, 20 * ohms, 1e-9);
  }

  @Test
  void theConstantIsTheTablesResistanceTimesItsArea() {
    // Computed from NEC Chapter 9 Table 8: 12.93 stranded, 12.60 solid, ohm cmil/ft.
    Conductor twelve = copper("12 AWG");
    double area = twelve.size().areaSquareMetres() / OHM_METRES_PER_OHM_CMIL_PER_FOOT;
    assertEquals(12.93, twelve.ohmsPerMetre(Stranding.STRANDED, 75).orElseThrow() * area, 0.005);
    assertEquals(12.60, twelve.ohmsPerMetre(Stranding.SOLID, 75).orElseThrow() * area, 0.005);
    Conductor aluminium = Conductors.aluminium("12 AWG");
    assertEquals(21.22, aluminium.ohmsPerMetre(Stranding.STRANDED, 75).orElseThrow() * area, 0.005);
  }

  @Test
  void aTwentyFourVoltControlRunOfStrandedSixteenGaugeDropsFourVolts() {
    // Worked example on NEC Chapter 9 Table 8: 100 ft, 4.99 ohm/kFT, 4 A: 4.0 V, 16.7 % of 24 V;
    // exactly 3.992 V.
    double ohms =
        2 * metres(100) * copper("16 AWG").ohmsPerMetre(Stranding.STRANDED, 75).orElseThrow();
    double volts = 4 * ohms;
    assertEquals(3.992, volts, 1e-9);
    assertEquals(4.0, volts, 0.05);
    assertEquals(16.7, volts / 24 * 100, 0.1);
  }

  @Test
  void theTextbooksLongFourteenGaugeLoopHasItsOhmsAndItsShortCircuitCurrent() {
    // Lessons In Electric Circuits, DC, conduct.sml: rho 10.09 ohm cmil/ft, 14 AWG (4107 cmil),
    // 2300 ft.
    double rho = 10.09 * OHM_METRES_PER_OHM_CMIL_PER_FOOT;
    double ohms = rho * metres(2300) / copper("14 AWG").size().areaSquareMetres();
    double cmilDigits = 0.001; // the table here rounds 4107 to 4110 circular mils
    assertEquals(5.651, ohms, cmilDigits * 5.651);
    assertEquals(11.301, 2 * ohms, cmilDigits * 11.301);
    assertEquals(20.352, 230 / (2 * ohms), cmilDigits * 20.352);
  }

  @Test
  void theTextbooksFifthOfAnOhmNeedsTwoOughtGauge() {
    // Lessons In Electric Circuits, DC, conduct.sml: 0.2 ohm in 2300 ft needs 116 035 circular
    // mils.
    double needed = 10.09 * OHM_METRES_PER_OHM_CMIL_PER_FOOT * metres(2300) / 0.2;
    assertEquals(116_035, needed / SQUARE_METRES_PER_CIRCULAR_MIL, 0.5);
    List<ConductorSize> bigEnough =
        ConductorSize.all().stream()
            .filter(size -> !size.isMetric() && size.areaSquareMetres() >= needed)
            .toList();
    assertEquals("2/0 AWG", bigEnough.get(0).designation());
  }

  @Test
  void theTextbooksWarmerWiresTakeAwayWhatItSaysFromTheLoad() {
    // Lessons In Electric Circuits, DC, conduct.sml: two wires of 15 ohm at 20 degC, alpha
    // 0.004041, 12.5 V at the
    // load; at 35 degC 12.42 V and 0.79 V a wire. Source 14 V and load 250 ohm computed from its
    // 0.75 V a wire.
    TemperatureCoefficient pureCopper = new TemperatureCoefficient(0.004041, 20);
    assertEquals(12.5, loadVolts(15 * pureCopper.factorAt(20)), 1e-9);
    double warmWire = 15 * pureCopper.factorAt(35);
    double amperes = loadVolts(warmWire) / 250;
    assertEquals(12.42, loadVolts(warmWire), 0.005);
    assertEquals(0.79, warmWire * amperes, 0.005);
    assertEquals(0.049677, amperes, 0.0000005);
  }

  private static double loadVolts(double ohmsPerWire) {
    return 14 * 250 / (250 + 2 * ohmsPerWire);
  }

  @Test
  void theInstallationStandardsFormulaGivesItsVoltsAndTheTablesMaximaLieALittleAbove() {
    // IEC 60364-5-52:2009 Table G.52.1: u = b rho1 (L/S) cos phi I, b = 2, rho1 = 0.0225 = 1.25
    // rho20.
    double formula = 2 * 0.0225 * 30 / (copper("2.5 mm2").size().areaSquareMetres() * 1e6) * 16;
    assertEquals(8.640, formula, 1e-9);
    assertEquals(3.757, formula / 230 * 100, 0.0005);
    // 1.25 of the 20 degC value is reached at 82.5 degC; the table holds maxima, a few per cent
    // above nominal.
    double byTable = 2 * 30 * copper("2.5 mm2").ohmsPerMetre(82.5) * 16;
    assertTrue(byTable > formula && byTable < 1.04 * formula, "by table " + byTable + " V");
    assertTrue(
        formula / 230 > VoltageDropGuidance.iec().branchFraction(), "more than lighting may drop");
    assertTrue(
        formula / 230 < VoltageDropGuidance.iec().totalFraction(), "less than other uses may drop");
  }

  @Test
  void guidanceIsThreeAndFivePerCentAndNamesItsSource() {
    // NEC 210.19(A) informational note; IEC 60364-5-52:2009 Table G.52.1.
    for (VoltageDropGuidance guidance :
        List.of(VoltageDropGuidance.nec(), VoltageDropGuidance.iec())) {
      assertEquals(0.03, guidance.branchFraction());
      assertEquals(0.05, guidance.totalFraction());
    }
    assertTrue(VoltageDropGuidance.nec().source().startsWith("NEC 210.19(A)"));
    assertTrue(VoltageDropGuidance.iec().source().startsWith("IEC 60364-5-52"));
  }
}
