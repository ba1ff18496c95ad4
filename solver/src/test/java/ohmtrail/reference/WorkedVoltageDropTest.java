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

  private static double metres(double feet) {
    return feet / FEET_PER_METRE;
  }

  @Test
  void theUsualConstantForCopperIsTheTablesStrandedResistanceTimesItsArea() {
    // Licence-exam course text, as quoted in a secondary text: K = 12.9 ohm cmil/ft for copper.
    // For aluminium 21.2, from memory.
    Conductor twelve = copper("12 AWG");
    double area = twelve.size().areaSquareMetres() / OHM_METRES_PER_OHM_CMIL_PER_FOOT;
    assertEquals(12.9, twelve.ohmsPerMetre(Stranding.STRANDED, 75).orElseThrow() * area, 0.05);
    Conductor aluminium = Conductors.aluminium("12 AWG");
    assertEquals(21.2, aluminium.ohmsPerMetre(Stranding.STRANDED, 75).orElseThrow() * area, 0.05);
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

  /** 1.7241 of the standard copper of the tables to 1.678 of the textbook's pure element. */
  private static final double STANDARD_TO_PURE_COPPER = 1.7241 / 1.678;

  @Test
  void theTextbooksLongFourteenGaugeLoopResistsMoreInTheCopperThatWireIsMadeOf() {
    // Lessons In Electric Circuits, DC, conduct.sml: 2300 ft of 14 AWG and back are 11.301 ohm,
    // 230 V into a short 20.352 A, with the resistivity of the pure element at 20 degC (CRC
    // Handbook, 78th edition) where wire is made to that of IEC 60028.
    double loop = 2 * metres(2300) * copper("14 AWG").ohmsPerMetre(20);
    assertEquals(11.61, loop, 0.005);
    assertEquals(STANDARD_TO_PURE_COPPER, loop / 11.301, 0.003);
    assertEquals(STANDARD_TO_PURE_COPPER, 20.352 / (230 / loop), 0.003);
  }

  @Test
  void theTextbooksFifthOfAnOhmNeedsTwoOughtGaugeByTheTableToo() {
    // Lessons In Electric Circuits, DC, conduct.sml: 0.2 ohm in 2300 ft needs 116 035 circular
    // mils, which is 2/0 AWG.
    List<ConductorSize> enough =
        ConductorSize.all().stream()
            .filter(size -> !size.isMetric())
            .filter(size -> metres(2300) * copper(size.designation()).ohmsPerMetre(20) <= 0.2)
            .toList();
    assertEquals("2/0 AWG", enough.get(0).designation());
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
