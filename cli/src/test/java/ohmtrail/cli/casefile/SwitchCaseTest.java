package ohmtrail.cli.casefile;

import static ohmtrail.circuit.ConductorRole.GROUND;
import static ohmtrail.circuit.ConductorRole.HOT;
import static ohmtrail.circuit.ConductorRole.NEUTRAL;
import static ohmtrail.circuit.ConductorRole.SWITCHED;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import ohmtrail.circuit.Circuit;
import ohmtrail.survey.LoadInUse;
import ohmtrail.survey.ProbePoints;
import ohmtrail.survey.Survey;
import ohmtrail.survey.Switching;
import org.junit.jupiter.api.Test;

/** Switches, luminaires and hard-wired loads in a case file. */
class SwitchCaseTest {
  private static final String HALL =
      """
      title: hall
      supply: 120 V 60 Hz
      breaker: 15 A
      cable: 14 AWG copper
      run:
        - panel
        - hall: receptacle 30 ft
        - hall switch: switch 14 ft
        - hall light: luminaire 12 ft
        - stair: light 9 ft
        - porch: luminaire 20 ft from hall
        - porch switch: switch 8 ft
        - den switch: switch 10 ft from hall switch hot/neutral/ground pigtail
        - den: receptacle 12 ft hot/switched/neutral/ground
      loads:
        bulbs: 120 W lamp, hard-wired at hall light
        bell: 20 W hard-wired at panel
        heater: 1500 W
      """;

  private static final String TESTS =
      HALL
          + """
          tests:
            - idle:
                - hall light switched-neutral 120.1 V high
            - hall switch off + bulbs out:
                - hall hot-neutral 121.0 V high
            - heater at hall + switch at porch switch open:
                - den switched hot to neutral 119.0 V high
                - across hall switch/switched/switch 0.2 V high
            - 60 W lamp at porch + bell off:
                - porch switched-neutral 120.5 V high
            - off + hall switch open:
                - hall light switched-neutral open
          """;

  private static List<String> problems(String tests) {
    return CaseFiles.problems(HALL + tests);
  }

  @Test
  void conductorsBehindASwitchAreThoseThatTheTradeWouldTake() throws Exception {
    Circuit circuit = CaseFiles.read(HALL).circuit();
    assertEquals(List.of(SWITCHED, NEUTRAL, GROUND), circuit.conductorsAt("stair"));
    assertEquals(List.of(HOT, SWITCHED, NEUTRAL, GROUND), circuit.conductorsAt("porch"));
    assertEquals(List.of(HOT, SWITCHED, GROUND), circuit.conductorsAt("porch switch"));
    assertEquals(
        List.of(SWITCHED, NEUTRAL, GROUND),
        circuit.deviceConductors(circuit.box("porch").orElseThrow()));
    assertEquals(List.of("hall switch", "den switch", "porch switch"), circuit.switches());
    assertTrue(circuit.joint("den switch/hot/tail").isPresent());
    assertTrue(circuit.joint("hall switch/hot/tail").isEmpty());
  }

  @Test
  void whatIsWiredInIsOnUnlessItIsSaidToBeOff() throws Exception {
    Survey survey = CaseFiles.read(TESTS).survey();
    assertEquals(
        List.of(new LoadInUse("bulbs", "hall light"), new LoadInUse("bell", "panel")),
        survey.hardWired());
    assertEquals(survey.hardWired(), survey.loadsOn(survey.tests().get(0)));
    assertEquals(
        List.of(new LoadInUse("60 W lamp", "porch"), new LoadInUse("bulbs", "hall light")),
        survey.loadsOn(survey.tests().get(3)));
    assertEquals(List.of(), survey.loadsOn(survey.tests().get(4)));
  }

  @Test
  void aTestSaysWhatWasSwitched() throws Exception {
    List<ohmtrail.survey.Test> tests = CaseFiles.read(TESTS).survey().tests();
    assertEquals(Switching.USUAL, tests.get(0).switching());
    assertEquals(new Switching(Set.of("hall switch"), Set.of("bulbs")), tests.get(1).switching());
    assertEquals(new Switching(Set.of("porch switch"), Set.of()), tests.get(2).switching());
    assertEquals(
        Optional.of(new ProbePoints(SWITCHED, NEUTRAL)), tests.get(2).readings().get(0).between());
    assertEquals(new Switching(Set.of("hall switch"), Set.of()), tests.get(4).switching());
    assertTrue(tests.get(4).isDead());
  }

  @Test
  void whatWasReadIsWrittenAndReadAgain() throws Exception {
    CaseFile first = CaseFiles.read(TESTS);
    String written = new CaseFileWriter().write(first);
    CaseFile again = CaseFiles.read(written);
    assertEquals(first.circuit(), again.circuit(), written);
    assertEquals(first.survey(), again.survey(), written);
    assertTrue(written.contains("hall light: luminaire 12 ft\n"), written);
    assertTrue(written.contains("porch switch: switch 8 ft\n"), written);
  }

  @Test
  void namesThatAreOtherWordsTooAreWrittenKeyByKey() throws Exception {
    String odd =
        HALL.replace("hall switch", "at + open")
            .replace("hall light", "W at")
            .replace("at W at", "at hall")
            .replace(
                "bulbs: 120 W lamp, hard-wired at hall",
                "b: {power: 120 W, kind: lamp, hard-wired: W at}");
    CaseFile first =
        CaseFiles.read(
            odd
                + """
                tests:
                  - name: dark
                    loads:
                      - open: at + open
                      - off: b
                    readings:
                      - hall hot-neutral 121.0 V high
                """);
    CaseFile again = CaseFiles.read(new CaseFileWriter().write(first));
    assertEquals(first.survey(), again.survey());
    assertEquals(Set.of("at + open"), first.survey().tests().get(0).switching().open());
    assertEquals(Set.of("b"), first.survey().tests().get(0).switching().off());
  }

  @Test
  void aSwitchStateForABoxWithoutASwitchIsRefusedWhereItStands() {
    assertEquals(
        List.of(
            "20:5: Switch (hall open) must be in a box with a switch: one of den switch, hall"
                + " switch, porch switch; hall has none.\n"
                + "Maybe write switch behind the box that it is in."),
        problems("tests:\n  - hall open:\n      - hall hot-neutral 121 V high\n"));
    assertEquals(
        List.of(
            "20:12: Switch (hall swich open) must be in a box with a switch: one of den switch,"
                + " hall switch, porch switch.\n"
                + "Maybe hall switch was meant."),
        problems("tests:\n  - idle + hall swich open:\n      - hall hot-neutral 121 V high\n"));
    List<String> none =
        CaseFiles.problems(
            "run:\n  - panel\n  - a: receptacle 3 m\ntests:\n  - a open:\n      - a hot-neutral 120 V"
                + " high\n");
    assertEquals(1, none.size());
    assertTrue(
        none.get(0).startsWith("5:5: Switch (a open) must be in a box with a switch: the run"));
  }

  @Test
  void whatIsWiredInIsNotPluggedInAndWhatIsPluggedInIsNotSwitchedOff() {
    assertTrue(
        problems("tests:\n  - bulbs at hall light:\n      - hall hot-neutral 121 V high\n")
            .get(0)
            .startsWith("20:5: Load (bulbs) must not be named as on: it is wired in"));
    assertTrue(
        problems("tests:\n  - heater at panel:\n      - hall hot-neutral 121 V high\n")
            .get(0)
            .contains("Maybe it is wired in there: write (hard-wired at panel)"));
    assertTrue(
        problems("tests:\n  - heater off:\n      - hall hot-neutral 121 V high\n")
            .get(0)
            .startsWith("20:5: Load (heater off) must say where it was plugged in."));
  }

  @Test
  void aSwitchThatLeadsNowhereIsSaidToBeSoAtItsLine() {
    List<String> problems =
        CaseFiles.problems("run:\n  - panel\n  - s: switch 3 m\n  - a: receptacle 3 m\n");
    assertEquals(1, problems.size());
    assertTrue(problems.get(0).startsWith("3:5: Switch (s) must lead somewhere"), problems.get(0));
  }
}
