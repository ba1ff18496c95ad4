package ohmtrail.cli.casefile;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import ohmtrail.circuit.ConductorRole;
import ohmtrail.survey.Isolation;
import ohmtrail.survey.Measurand;
import ohmtrail.survey.Meter;
import ohmtrail.survey.ProbePoint;
import ohmtrail.survey.ProbePoints;
import ohmtrail.survey.Reading;
import ohmtrail.survey.Tap;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Amperes, ohms, long leads, joints and a dead circuit in a case file. */
class OtherReadingsCaseTest {
  private static final String RUN =
      """
      breaker: 15 A
      cable: 14 AWG
      run:
        - panel
        - hall: receptacle 20 ft
        - study spur: receptacle 12 ft
      meters:
        dmm: 10 Mohm, 1 % + 3 counts, 0.1 V, up to 600 V
        clamp: clamp, 2 % + 3 counts, 0.01 A
        loop: loop-tester
        cont: {kind: continuity-tester, accuracy: 2 % + 2 counts, resolution: 1 mohm, range: 20 ohm}
      loads:
        heater: 1500 W
      tests:
      """;

  @TempDir private Path folder;

  private CaseFile read(String text) throws IOException, CaseFileException {
    Path file = folder.resolve("case.yaml");
    Files.writeString(file, text);
    return new CaseFileReader().read(file);
  }

  private CaseFile tests(String tests) throws IOException, CaseFileException {
    return read(RUN + tests.indent(2));
  }

  private Reading only(String test, String reading) throws IOException, CaseFileException {
    CaseFile read = tests("- " + test + ":\n    - " + reading + "\n");
    assertEquals(List.of(), read.warnings());
    String written = new CaseFileWriter().write(read);
    assertEquals(read.survey(), read(written).survey(), written);
    return read.survey().tests().get(0).readings().get(0);
  }

  @Test
  void everySortOfTapIsReadAndWritten() throws IOException, CaseFileException {
    assertEquals(
        new Tap.Points(
            new ProbePoint.Contact("panel", ConductorRole.GROUND),
            new ProbePoint.Contact("study spur", ConductorRole.HOT)),
        only("idle", "panel ground to study spur hot 118.6 V dmm").tap());
    Reading across = only("idle", "across hall/neutral/incoming 0.8 V dmm");
    assertEquals("across hall/neutral/incoming", across.tap().word());
    assertEquals(0.8, across.value());
    assertEquals(
        "before hall/hot/incoming to hall neutral",
        only("idle", "before hall/hot/incoming to hall neutral 119 dmm").tap().word());
    Tap cable = new Tap.AroundConductor("panel", "hall", ConductorRole.HOT);
    assertEquals(cable, only("idle", "around panel to hall hot 5.2 A clamp").tap());
    assertEquals(cable, only("idle", "around hall to panel hot 5.2 A").tap(), "from either end");
    assertEquals(
        new Tap.AroundLoad("heater", "study spur"),
        only("heater at study spur", "around heater at study spur 12.4 A").tap());
  }

  @Test
  void ohmsAreThoseOfALoopWhileTheBreakerIsOnAndOfAWayWhileItIsOff()
      throws IOException, CaseFileException {
    Reading loop = only("idle", "hall hot-ground 0.86 ohm");
    assertEquals(Measurand.LOOP_IMPEDANCE, loop.measurand());
    assertEquals("loop", loop.meter());
    Reading way = only("off + link hot-ground at hall", "panel hot-ground 430 mohm");
    assertEquals(Measurand.RESISTANCE, way.measurand());
    assertEquals(0.43, way.value(), 1e-12);
    assertEquals("cont", way.meter());
    assertEquals(Double.POSITIVE_INFINITY, only("off", "hall hot-neutral open").value());
    assertEquals(Double.POSITIVE_INFINITY, only("off", "hall hot-neutral OL cont").value());
    assertEquals(
        Double.POSITIVE_INFINITY, only("off", "hall hot-neutral 21 ohm").value(), "out of range");
  }

  @Test
  void linksAndLiftedJointsAreReadAndWritten() throws IOException, CaseFileException {
    CaseFile read =
        tests(
            """
            - breaker off + link hall hot to panel neutral + lift panel/hot/outgoing:
                - across panel/hot/outgoing 0.2 ohm
            """);
    Isolation isolation = read.survey().tests().get(0).isolation().orElseThrow();
    assertEquals("hall hot to panel neutral", isolation.links().get(0).word());
    assertEquals("panel/hot/outgoing", isolation.lifted().get(0).id());
    String written = new CaseFileWriter().write(read);
    assertEquals(read.survey(), read(written).survey(), written);
  }

  @Test
  void aMeterSaysWhatItMeasures() throws IOException, CaseFileException {
    List<Meter> meters = tests("- idle: []\n").survey().meters();
    assertEquals(600, meters.get(0).greatest());
    assertEquals(Measurand.CURRENT, meters.get(1).measurand());
    assertEquals(0.01, meters.get(1).resolution());
    assertEquals(Meter.usual("loop", Measurand.LOOP_IMPEDANCE), meters.get(2));
    assertEquals(Measurand.RESISTANCE, meters.get(3).measurand());
    assertEquals(0.001, meters.get(3).resolution());
    assertEquals(20, meters.get(3).greatest());
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "loop-tester | 6",
        "loop-tester, 25 A, 3 % + 3 counts | 25",
        "loop tester 15 mA 0.01 ohm | 0.015",
        "loop-tester, no-trip | 0.015",
        "loop-tester, no trip, 3 % | 0.015",
        "{kind: loop-tester, test-current: no-trip} | 0.015",
        "{kind: loop-tester, test-current: 12 A} | 12"
      })
  void aLoopTesterSaysWhatItDraws(String words, double amperes)
      throws IOException, CaseFileException {
    CaseFile read = read(RUN.replace("loop: loop-tester", "loop: " + words) + "  - idle: []\n");
    Meter loop = read.survey().meter("loop");
    assertEquals(amperes, loop.testAmperes(), 1e-12);
    String written = new CaseFileWriter().write(read);
    assertEquals(loop, read(written).survey().meter("loop"), written);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "{resistance: 3 kohm, test-current: 6 A} | Test current (6 A) must be that of a"
            + " loop-tester",
        "loop-tester, 25 A, 6 A | Test current",
        "loop-tester, 250 A | must lie between 1 mA and 100 A",
        "10 Mohm, no-trip | (no-trip) is none of these"
      })
  void aTestCurrentThatCannotBeIsRefused(String words, String expected) {
    CaseFileException refusal =
        assertThrows(
            CaseFileException.class,
            () -> read(RUN.replace("loop: loop-tester", "loop: " + words) + "  - idle: []\n"));
    assertTrue(refusal.getMessage().contains(expected), refusal.getMessage());
    assertTrue(refusal.getMessage().contains("case.yaml:10:"), refusal.getMessage());
  }

  @Test
  void whatIsDeadIsNoVoltsBetweenTheContactsOfAPlug() throws IOException, CaseFileException {
    Reading dead = only("idle", "hall dead");
    assertTrue(dead.isDead());
    assertEquals(ProbePoints.HOT_NEUTRAL, dead.between().orElseThrow());
    assertEquals(15, dead.rangeSigma(), 1e-12);
  }

  @Test
  void aCaseWithoutMetersHasThemAtHand() throws IOException, CaseFileException {
    CaseFile read =
        read(
            """
            outlet: 120 V
            tests:
              - off + link hot-ground at panel:
                  - hot-ground 0.4 ohm
            """);
    assertEquals(
        List.of("high", "low", "ohmmeter"),
        read.survey().meters().stream().map(Meter::name).toList());
  }

  @Test
  void aTableTakesThemToo() throws IOException, CaseFileException {
    Files.writeString(
        folder.resolve("r.csv"),
        """
        loads;box;between;meter;reading
        off + link hot-ground at hall;panel;hot-ground;cont;0,43 ohm
        idle;hall;around panel to hall hot;clamp;5,2 A
        """);
    CaseFile read = read(RUN.replace("tests:\n", "readings: r.csv\n"));
    assertEquals(0.43, read.survey().tests().get(0).readings().get(0).value());
    assertEquals(5.2, read.survey().tests().get(1).readings().get(0).value());
  }

  @Test
  void aReadingBeyondItsMeterIsLeftOutAndSaid() throws IOException, CaseFileException {
    CaseFile read =
        tests("- idle:\n    - hall hot-neutral 612 V dmm\n    - hall hot-ground 120 V dmm\n");
    assertEquals(1, read.survey().readingCount());
    String warnings = read.warnings().toString();
    assertTrue(warnings.contains("beyond what meter (dmm) shows, up to (600 V)"), warnings);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "idle | hall hot-ground 0.4 ohm cont | must be read with the breaker off",
        "off | around panel to hall hot 5 A | must be taken with the breaker on",
        "off | hall hot-ground 0.4 ohm loop | must be taken with the breaker on",
        "idle | hall hot-ground 0.4 ohm dmm | Reading (0.4 ohm) must be in V: that is what meter"
            + " (dmm) shows",
        "idle | hall hot-ground 118 V clamp | Reading (118 V) must be in A: that is what meter"
            + " (clamp) shows",
        "idle | hall hot-neutral 5 A clamp | must be of two points in V or ohm",
        "idle | around panel to study spur hot 5 A | must be around a conductor of a cable",
        "off + link hot-ground at attic | hall hot-ground 0.4 ohm | is none of these",
        "off + lift hall/hot/nothing | hall hot-ground 0.4 ohm | is none of these",
        "off + heater at hall | hall hot-ground 0.4 ohm | is none of these"
      })
  void whatCannotBeIsRefusedWithItsPlace(String test, String reading, String expected)
      throws IOException, CaseFileException {
    String text = "- " + test + ":\n    - " + reading + "\n";
    CaseFileException refusal = assertThrows(CaseFileException.class, () -> tests(text));
    assertTrue(refusal.getMessage().contains(expected), refusal.getMessage());
    assertTrue(
        refusal.getMessage().matches("(?s).*case.yaml:1[56]:[0-9]+: .*"), refusal.getMessage());
  }
}
