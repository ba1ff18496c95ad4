package ohmtrail.cli.casefile;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import ohmtrail.circuit.Cable;
import ohmtrail.circuit.Circuit;
import ohmtrail.circuit.ConductorRole;
import ohmtrail.circuit.Grounding;
import ohmtrail.circuit.JointKind;
import ohmtrail.circuit.ResidualCurrentDevice;
import ohmtrail.circuit.ResidualCurrentDevice.Rating;
import ohmtrail.circuit.Supply;
import ohmtrail.reference.Conductor;
import ohmtrail.reference.ConductorMaterial;
import ohmtrail.reference.ConductorSize;
import ohmtrail.survey.LoadInUse;
import ohmtrail.survey.ProbePoints;
import ohmtrail.survey.Reading;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Supplies of two legs, conductors of cables and devices, and loads between any of them. */
class TwoLegCaseTest {
  private static final ConductorRole LEG_1 = ConductorRole.LEG_1;
  private static final ConductorRole LEG_2 = ConductorRole.LEG_2;
  private static final ConductorRole NEUTRAL = ConductorRole.NEUTRAL;
  private static final ConductorRole GROUND = ConductorRole.GROUND;

  private static final String SHARED =
      """
      title: kitchen
      supply: 120/240 V
      breaker: 20 A
      cable: 12 AWG copper
      run:
        - panel
        - splice: junction 30 ft
        - counter: receptacle 8 ft leg-1/neutral/ground
        - island: receptacle 12 ft leg-2/neutral/ground from splice
        - desk: receptacle 14 ft from panel pigtail on leg 2
      loads:
        toaster: 900 W at 120 V
        range: 3 kW at 240 V
      tests:
        - toaster at desk leg-2-neutral + range at desk leg-1-leg-2:
            - counter leg-1-neutral 117.2 V high
            - desk leg 2 to neutral 117.3 V high
            - desk l1-l2 239.8 V high
      """;

  @TempDir Path folder;

  private CaseFile read(String text) throws Exception {
    return new CaseFileReader().read(Files.writeString(folder.resolve("case.yaml"), text));
  }

  private String refusal(String text) {
    return assertThrows(CaseFileException.class, () -> read(text)).getMessage();
  }

  @Test
  void conductorsAreThoseOfTheBoxUpstreamUnlessNamed() throws Exception {
    Circuit circuit = read(SHARED).circuit();
    assertEquals(List.of(LEG_1, LEG_2, NEUTRAL, GROUND), circuit.conductorsAt("splice"));
    assertEquals(List.of(LEG_1, NEUTRAL, GROUND), circuit.conductorsAt("counter"));
    assertEquals(List.of(LEG_2, NEUTRAL, GROUND), circuit.conductorsAt("island"));
    assertEquals(
        List.of(LEG_2, NEUTRAL, GROUND),
        circuit.deviceConductors(circuit.box("desk").orElseThrow()));
    assertEquals(JointKind.WIRE_NUT, circuit.joint("desk/leg-1/incoming").orElseThrow().kind());
    assertEquals(Optional.empty(), circuit.joint("desk/leg-1/contact"));
  }

  @Test
  void loadsAndReadingsSayTheirConductorsInAnyOfTheUsualWays() throws Exception {
    ohmtrail.survey.Test test = read(SHARED).survey().tests().get(0);
    assertEquals(
        List.of(
            new LoadInUse("toaster", "desk", Optional.of(new ProbePoints(LEG_2, NEUTRAL))),
            new LoadInUse("range", "desk", Optional.of(new ProbePoints(LEG_1, LEG_2)))),
        test.loads());
    assertEquals(
        List.of(
            new ProbePoints(LEG_1, NEUTRAL),
            new ProbePoints(LEG_2, NEUTRAL),
            new ProbePoints(LEG_1, LEG_2)),
        test.readings().stream().flatMap(reading -> reading.between().stream()).toList());
  }

  @Test
  void whatWasReadIsWrittenAndReadAgain() throws Exception {
    CaseFile first = read(SHARED);
    CaseFile again = read(new CaseFileWriter().write(first));
    assertEquals(first.circuit(), again.circuit());
    assertEquals(first.survey(), again.survey());
    CaseFile ring =
        read(
            """
            supply: 230 V TT
            breaker: 32 A
            cable: 2.5/1.5 mm2
            run:
              - board: panel
              - a: socket-outlet 11 m
              - b: socket-outlet 4.5 m 4 mm2
              - panel: 13 m
            """);
    assertEquals(Supply.Earthing.TT, ring.circuit().supply().earthing());
    Cable cable = ring.circuit().cables().get(0);
    assertEquals("2.5 mm2", cable.conductor().size().designation());
    assertEquals(
        new Grounding.Wire(
            new Conductor(ConductorSize.parse("1.5 mm2").orElseThrow(), ConductorMaterial.COPPER)),
        cable.ground().orElseThrow());
    assertEquals(ring.circuit(), read(new CaseFileWriter().write(ring)).circuit());
  }

  @Test
  void aFlickeringReadingIsARangeAndReadsBack() throws Exception {
    CaseFile read =
        read(
            """
            run:
              - panel
              - hall: receptacle 12 ft
            tests:
              - idle:
                  - hall hot-neutral 88-117 V high
                  - hall hot-ground 116.5-120.5 high
            """);
    List<Reading> readings = read.survey().tests().get(0).readings();
    ProbePoints between = ProbePoints.HOT_NEUTRAL;
    assertEquals(Reading.flickering("hall", between, "high", 88, 117), readings.get(0));
    assertEquals(118.5, readings.get(1).value());
    assertEquals(read.survey(), read(new CaseFileWriter().write(read)).survey());
  }

  @Test
  void protectionIsAtTheBreakerOrInAReceptacleAndReadsBack() throws Exception {
    CaseFile read =
        read(
            """
            protection: RCD 100 mA
            run:
              - panel
              - bath: receptacle 12 ft gfci
              - hall: receptacle rcd 6 ft
              - loft: {kind: receptacle, length: 6 ft, protection: RCD 10 mA}
            """);
    assertEquals(
        List.of(
            new ResidualCurrentDevice("panel", Rating.rcd(0.1)),
            new ResidualCurrentDevice("bath", Rating.CLASS_A),
            new ResidualCurrentDevice("hall", Rating.rcd(0.03)),
            new ResidualCurrentDevice("loft", Rating.rcd(0.01))),
        read.circuit().residualCurrentDevices());
    assertEquals(read.circuit(), read(new CaseFileWriter().write(read)).circuit());
    String refusal = refusal("protection: fuse\nrun:\n  - panel\n  - a: receptacle 3 m\n");
    assertTrue(refusal.contains("case.yaml:1:13: Protection (fuse)"), refusal);
  }

  @ParameterizedTest
  @CsvSource({
    "120/240 V, OPPOSITE, 120, 60, TN_C_S",
    "240/120V 60 Hz, OPPOSITE, 120, 60, TN_C_S",
    "208Y/120 V, OF_A_STAR, 120, 60, TN_C_S",
    "120/208 V 60 Hz, OF_A_STAR, 120, 60, TN_C_S",
    "230 V TT, ONE, 230, 50, TT",
    "230 V 50 Hz TN-S, ONE, 230, 50, TN_S",
    "127/220 V 60 Hz, OF_A_STAR, 127, 60, TN_C_S"
  })
  void suppliesAreReadByTheirVoltages(
      String text, Supply.Legs legs, double volts, double hertz, Supply.Earthing earthing)
      throws Exception {
    Supply supply =
        read("supply: " + text + "\nrun:\n  - panel\n  - a: receptacle 3 m\n").circuit().supply();
    assertEquals(new Supply(volts, hertz, legs, earthing), supply);
  }

  @Test
  void aProbePointThatTheCircuitHasNotGotIsRefusedWithItsConductors() {
    String refusal =
        refusal(
            """
            supply: 120/240 V
            conductors: leg-1/leg-2/ground
            run:
              - panel
              - heater: receptacle 20 ft
            tests:
              - idle:
                  - heater leg-1-neutral 120 V high
            """);
    assertTrue(refusal.contains("Conductor (neutral) at heater"), refusal);
    assertTrue(refusal.contains("[leg-1, leg-2, ground]"), refusal);
  }

  @Test
  void aLegOnASupplyOfOneLegIsRefused() {
    String refusal = refusal("run:\n  - panel\n  - a: receptacle 20 ft leg-1/neutral/ground\n");
    assertTrue(refusal.contains("case.yaml:3:25: Conductor (leg-1)"), refusal);
    assertTrue(refusal.contains("hot, neutral, ground"), refusal);
  }

  @Test
  void aLoadOnTwoLegsMustSayItsVoltage() {
    String refusal =
        refusal(
            """
            supply: 120/240 V
            run:
              - panel
              - kiln: receptacle 20 ft
            loads:
              element: 5000 W
            """);
    assertTrue(refusal.contains("case.yaml:6:3: Load (element) must say the voltage"), refusal);
  }

  @Test
  void voltagesThatAreNoTwoLegsAreRefused() {
    String refusal = refusal("supply: 120/300 V\nrun:\n  - panel\n  - a: receptacle 3 m\n");
    assertTrue(refusal.contains("case.yaml:1:9: Supply voltages (120/300)"), refusal);
  }
}
