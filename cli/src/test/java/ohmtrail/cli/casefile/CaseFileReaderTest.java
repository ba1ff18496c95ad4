package ohmtrail.cli.casefile;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.RandomAccessFile;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.OptionalDouble;
import ohmtrail.circuit.Box;
import ohmtrail.circuit.Cable;
import ohmtrail.circuit.Cable.Companion;
import ohmtrail.circuit.Circuit;
import ohmtrail.circuit.JointKind;
import ohmtrail.circuit.Supply;
import ohmtrail.cli.casefile.words.Vocabulary;
import ohmtrail.reference.Assumption;
import ohmtrail.reference.Assumptions;
import ohmtrail.reference.ConductorMaterial;
import ohmtrail.survey.Accuracy;
import ohmtrail.survey.Finding;
import ohmtrail.survey.LoadInUse;
import ohmtrail.survey.Meter;
import ohmtrail.survey.ProbePoints;
import ohmtrail.survey.Reading;
import ohmtrail.survey.load.HeatingElement;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class CaseFileReaderTest {

  private static final String HEAD =
      """
      breaker: 15 A
      cable: 14 AWG
      run:
        - panel
      """;

  /** A circuit of one receptacle at the end of a cable described by words. */
  private static Circuit circuit(String words) throws CaseFileException {
    return CaseFiles.read(HEAD + "  - hall-1: " + words + "\n").circuit();
  }

  private static Cable cable(String words) throws CaseFileException {
    return circuit(words).cables().get(0);
  }

  @Test
  void theWholeOfAnExampleIsWhatItSays() throws CaseFileException {
    CaseFile read = new CaseFileReader().read(CaseFiles.folder("good").resolve("example.yaml"));
    Circuit circuit = read.circuit();
    assertEquals("Back bedroom, breaker 12", read.title());
    assertEquals(Supply.NORTH_AMERICA_120, circuit.supply());
    assertEquals(15, circuit.breakerAmperes());
    assertEquals(
        List.of("panel", "hall-1", "hall-2", "closet", "bed-1", "bed-2"),
        circuit.boxes().stream().map(Box::name).toList());
    assertEquals(Box.feedThrough("hall-1", JointKind.PUSH_IN), circuit.box("hall-1").orElseThrow());
    assertEquals(JointKind.WIRE_NUT, circuit.box("hall-2").orElseThrow().splices());
    assertEquals(Box.junction("closet"), circuit.box("closet").orElseThrow());
    assertEquals(Box.feedThrough("bed-1", JointKind.SCREW), circuit.box("bed-1").orElseThrow());
    assertEquals(
        List.of("panel", "hall-1", "hall-2", "bed-1"),
        circuit.pathTo("bed-2").stream().map(Cable::from).toList());
    assertEquals(OptionalDouble.of(9.7536), circuit.cables().get(0).lengthMetres());
    assertEquals("12 AWG", circuit.pathTo("bed-2").get(3).conductor().size().designation());
    assertEquals(
        List.of(
            new Meter("dmm", 10e6, Meter.USUAL_INPUT_FARADS, new Accuracy(0.008, 3), 0.1),
            new Meter("load-meter", 3e3, Meter.USUAL_INPUT_FARADS, new Accuracy(0.015, 3), 0.1)),
        read.survey().meters());
    assertEquals(List.of(new HeatingElement("heater", 1500, 120)), read.survey().loads());
    assertEquals(
        List.of(
            new ohmtrail.survey.Test(
                "idle",
                List.of(),
                List.of(
                    new Reading("hall-1", ProbePoints.HOT_NEUTRAL, "dmm", 121.3),
                    new Reading("bed-2", ProbePoints.HOT_NEUTRAL, "dmm", 121.2),
                    new Reading("bed-2", ProbePoints.HOT_NEUTRAL, "load-meter", 120.8))),
            new ohmtrail.survey.Test(
                "heater at bed-1",
                List.of(new LoadInUse("heater", "bed-1")),
                List.of(
                    new Reading("hall-1", ProbePoints.HOT_NEUTRAL, "dmm", 118.6),
                    new Reading("bed-1", ProbePoints.HOT_NEUTRAL, "dmm", 112.4)))),
        read.survey().tests());
    assertEquals(
        Assumptions.defaults()
            .with(Assumption.SUPPLY_DRIFT, 0.5 / 120)
            .with(Assumption.LOAD_POWER_TOLERANCE, 0.07),
        read.assumptions());
  }

  @ParameterizedTest
  @CsvSource({
    "32 ft, 9.7536",
    "32ft, 9.7536",
    "9.5 m, 9.5",
    "950 cm, 9.5",
    "9500mm, 9.5",
    "12 ft 6 in, 3.81",
    "12ft 6in, 3.81",
    "150 in, 3.81",
    ".5 m, 0.5",
  })
  void aLengthIsReadInAnyOfItsUnits(String words, double metres) throws CaseFileException {
    assertEquals(OptionalDouble.of(metres), cable("receptacle " + words).lengthMetres());
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "receptacle",
        "receptacle unknown length",
        "receptacle unknown",
        "receptacle ? ft",
        "receptacle ?",
        "{kind: receptacle, length: unknown}",
        "{kind: receptacle, length: '? m'}"
      })
  void aLengthThatNobodyKnowsIsEmpty(String words) throws CaseFileException {
    assertEquals(OptionalDouble.empty(), cable(words).lengthMetres());
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "receptacle 3 m ±20 % with live companion 2.5 mm2 aluminium",
        "2.5mm², aluminum, +-20%, 3 m, with live companion, socket-outlet",
        "socket outlet with live companion +/- 20 % 300 cm 2.5 mm^2 aluminium from panel",
        "{kind: outlet, length: 3 m, tolerance: ±20 %, cable: 2.5 sqmm aluminium, companion: live}",
        "{kind: socket, length: 3 m, tolerance: 20%, cable: aluminium 2.5 mm2, companion: live,"
            + " from: panel}"
      })
  void theWordsOfAnEntryComeInAnyOrderOrAsKeys(String words) throws CaseFileException {
    Cable cable = cable(words);
    assertEquals(OptionalDouble.of(3), cable.lengthMetres());
    assertEquals(OptionalDouble.of(0.2), cable.lengthTolerance());
    assertEquals("2.5 mm2", cable.conductor().size().designation());
    assertEquals(ConductorMaterial.ALUMINIUM, cable.conductor().material());
    assertEquals(Companion.LIVE, cable.companion());
  }

  @ParameterizedTest
  @ValueSource(strings = {"12 AWG", "12AWG", "AWG 12", "AWG12", "awg 12"})
  void aWireGaugeIsReadAsPeopleWriteIt(String size) throws CaseFileException {
    assertEquals("12 AWG", cable("receptacle " + size).conductor().size().designation());
    assertEquals("2/0 AWG", cable("receptacle 2/0").conductor().size().designation());
  }

  @Test
  void aMetalAloneKeepsTheSizeOfTheCaseAndASizeAloneItsMetal() throws CaseFileException {
    String head = "breaker: 15 A\ncable: 12 AWG aluminium\nrun: [panel, {a: receptacle ";
    assertEquals(
        "12 AWG",
        CaseFiles.read(head + "copper}]")
            .circuit()
            .cables()
            .get(0)
            .conductor()
            .size()
            .designation());
    assertEquals(
        ConductorMaterial.ALUMINIUM,
        CaseFiles.read(head + "10 AWG}]").circuit().cables().get(0).conductor().material());
  }

  @Test
  void aJointKindIsThatOfTheTerminalsOrOfTheSplicesWhereThereAreAny() throws CaseFileException {
    assertEquals(
        Box.feedThrough("hall-1", JointKind.PUSH_IN),
        circuit("receptacle push in").box("hall-1").orElseThrow());
    Box pigtail = circuit("receptacle pigtail crimp").box("hall-1").orElseThrow();
    assertEquals(JointKind.CRIMP, pigtail.splices());
    assertEquals(JointKind.SCREW, pigtail.terminals());
    assertEquals(Box.pigtail("hall-1"), circuit("receptacle pigtail").box("hall-1").orElseThrow());
    assertEquals(
        JointKind.SOLDER, circuit("junction solder").box("hall-1").orElseThrow().splices());
  }

  @Test
  void aBoxMayBeFedFromOneFurtherDownThePage() throws CaseFileException {
    Circuit circuit =
        CaseFiles.read(HEAD + "  - a: receptacle from b\n  - b: receptacle from panel\n").circuit();
    assertEquals(List.of("panel", "b", "a"), circuit.boxes().stream().map(Box::name).toList());
  }

  @Test
  void theWordPanelMeansThePanelWhateverItIsCalled() throws CaseFileException {
    CaseFile ring =
        CaseFiles.read(
            """
            breaker: 32 A
            cable: 2.5 mm2
            supply: 230 V
            run:
              - consumer unit: panel
              - a: socket-outlet 10 m
              - b: socket-outlet 10 m
              - spur: socket-outlet 2 m from panel
              - panel: 10 m from b
            """);
    assertEquals(4, ring.circuit().cables().size());
    assertEquals(1, ring.circuit().pathTo("b").size());
  }

  @ParameterizedTest
  @CsvSource({"230 V, 230, 50", "120 V, 120, 60", "127V 60Hz, 127, 60", "50 Hz 0.24 kV, 240, 50"})
  void aUsualVoltageImpliesItsFrequency(String text, double volts, double hertz)
      throws CaseFileException {
    CaseFile read = CaseFiles.read("supply: " + text + "\n" + HEAD + "  - a: receptacle\n");
    assertEquals(new Supply(volts, hertz), read.circuit().supply());
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "hall-1 hot-neutral 118.6 V high",
        "high 118.6 hall-1 line-neutral",
        "118600 mV, neutral to line, high, hall-1",
        "0.1186kV L-N high HALL-1",
        "{at: hall-1, between: hot-neutral, volts: 118.6, meter: high}",
        "{at: Hall-1, between: neutral/hot, volts: 118.6 V, meter: High}"
      })
  void aReadingIsReadInAnyOrderAndInBothRegionsWords(String words) throws CaseFileException {
    CaseFile read =
        CaseFiles.read(HEAD + "  - hall-1: receptacle\ntests:\n  - idle:\n      - " + words + "\n");
    assertEquals(
        List.of(new Reading("hall-1", ProbePoints.HOT_NEUTRAL, "high", 118.6)),
        read.survey().tests().get(0).readings());
  }

  @Test
  void theOnlyMeterNeedNotBeNamed() throws CaseFileException {
    CaseFile read =
        CaseFiles.read(
            HEAD
                + """
                  - hall-1: receptacle
                meters:
                  dmm: 10 Mohm
                tests:
                  - idle: [hall-1 hot-ground 120.4]
                """);
    assertEquals("dmm", read.survey().tests().get(0).readings().get(0).meter());
    assertEquals(List.of(Meter.highImpedance("dmm")), read.survey().meters());
  }

  @Test
  void testsOfTheSameNameAreToldApartByANumber() throws CaseFileException {
    CaseFile read =
        CaseFiles.read(
            HEAD
                + """
                  - hall-1: receptacle
                tests:
                  - idle:
                  - idle: []
                  - name: idle (3)
                  - idle:
                  - 60 W at hall-1 + 60W at hall-1:
                """);
    assertEquals(
        List.of("idle", "idle (2)", "idle (3)", "idle (4)", "60 W at hall-1 + 60W at hall-1"),
        read.survey().tests().stream().map(ohmtrail.survey.Test::name).toList());
    assertEquals(List.of(new HeatingElement("60 W", 60, 120)), read.survey().loads());
  }

  @Test
  void aTableSavedByASpreadsheetIsReadWhateverPartsItsCells(@TempDir Path folder)
      throws IOException, CaseFileException {
    Path file = folder.resolve("case.yaml");
    Files.writeString(file, HEAD + "  - hall-1: receptacle\nreadings: table.csv\n");
    String table =
        """
        Loads;Box;Between;Meter;Volts;Remark
        idle;hall-1;hot-neutral;high;120.5;"quoted; with ""quotes"" and
        a line break"
        idle;HALL-1;hot-ground;low;119.5;
        """;
    List<Reading> expected =
        List.of(
            new Reading("hall-1", ProbePoints.HOT_NEUTRAL, "high", 120.5),
            new Reading("hall-1", ProbePoints.HOT_GROUND, "low", 119.5));
    List<String> saved =
        List.of(
            table,
            "\ufeff" + table.replace("\n", "\r\n"),
            table.replace("\n", "\r"),
            table.replace(";", ","),
            table.replace(";", "\t").replace("120.5", "120,5"),
            table.replace("120.5", "120,5").replace("Volts", "Reading (V)"));
    for (String text : saved) {
      Files.writeString(folder.resolve("table.csv"), text);
      CaseFile read = new CaseFileReader().read(file);
      assertEquals(expected, read.survey().tests().get(0).readings(), text);
      assertEquals(1, read.survey().tests().size(), text);
      assertEquals(
          List.of("Column (Remark) is not read."),
          read.warnings().stream()
              .map(problem -> problem.message().lines().findFirst().get())
              .toList(),
          text);
    }
  }

  @Test
  void aConductorThatIsAbsurdForItsBreakerIsWarnedOfWhereItStands() throws CaseFileException {
    CaseFile read =
        CaseFiles.read(
            """
            breaker: 15 A
            cable: 10 mm2
            run:
              - panel
              - a: receptacle 3 m 18 AWG
              - b: receptacle 3 m 14 AWG
            """);
    assertEquals(
        List.of(
            "2:8: Cable (10 mm2) is far too big for a breaker of (15 A).",
            "5:23: Cable (18 AWG) is far too small for a breaker of (15 A)."),
        read.warnings().stream()
            .map(
                problem ->
                    problem.line()
                        + ":"
                        + problem.column()
                        + ": "
                        + problem.message().lines().findFirst().orElse(""))
            .toList());
  }

  @Test
  void aCaseWithoutATitleIsCalledAfterItsFile(@TempDir Path folder)
      throws IOException, CaseFileException {
    Path file = folder.resolve("Back.bedroom.yaml");
    Files.writeString(file, HEAD + "  - a: receptacle\n");
    assertEquals("Back.bedroom", new CaseFileReader().read(file).title());
  }

  @Test
  void aColumnCountsCharactersAlsoOutsideTheBasicPlane() {
    assertEquals(
        List.of(
            "4:15: Word (x) must be one of " + Vocabulary.runWords().rule().substring(15) + "."),
        CaseFiles.problems(
                "breaker: 15 A\n"
                    + "cable: 14 AWG\n"
                    + "run:\n"
                    + "  - panel: \"\ud83d\udd0c x\"\n"
                    + "  - a: receptacle\n")
            .stream()
            .filter(problem -> problem.contains("(x)"))
            .toList());
  }

  private static String refusal(Path file) {
    CaseFileException refused =
        assertThrows(CaseFileException.class, () -> new CaseFileReader().read(file));
    assertEquals(1, refused.problems().size());
    return refused.problems().get(0).format().replace(file.toString(), "FILE");
  }

  @Test
  void whatIsNoFileIsRefusedByName(@TempDir Path folder) throws IOException {
    assertEquals(
        "FILE:1:1: File (FILE) must be a file that can be read.\nMaybe a file in it was meant.",
        refusal(folder));
    assertEquals(
        "FILE:1:1: File (FILE) does not exist.\nMaybe its name or its folder was mistyped.",
        refusal(folder.resolve("nowhere.yaml")));
  }

  @Test
  void aFileAboveFiveMegabytesIsRefusedUnread(@TempDir Path folder) throws IOException {
    Path file = folder.resolve("big.yaml");
    try (RandomAccessFile big = new RandomAccessFile(file.toFile(), "rw")) {
      big.setLength(40_000_000_000L);
    }
    assertEquals(
        "FILE:1:1: File (40000000000 bytes) must be at most 5000000 bytes long; it was not read."
            + "\nMaybe this is not the file that was meant.",
        refusal(file));
  }

  @Test
  void whatIsNoTextIsRefusedWhereItIsNone(@TempDir Path folder) throws IOException {
    Path file = folder.resolve("case.yaml");
    Files.write(file, "title: a\ncable: \u00e9".getBytes(StandardCharsets.ISO_8859_1));
    assertEquals(
        "FILE:2:8: File must be UTF-8 text; the byte here (0xE9) is not."
            + "\nMaybe save it again as UTF-8, or this is not the file that was meant.",
        refusal(file));
    Files.write(file, "title: a\n".getBytes(StandardCharsets.UTF_16));
    assertTrue(refusal(file).startsWith("FILE:1:1: File must be UTF-8 text"));
    Files.write(file, new byte[] {'a', '\n', 'b', 0, 1, 2});
    assertEquals(
        "FILE:2:2: File must be text; the character here (U+0000) is not."
            + "\nMaybe this is not the file that was meant.",
        refusal(file));
  }

  @Test
  void noMoreThanAHundredProblemsAreTold() {
    String text = "breaker: 15 A\nrun:\n  - panel\n";
    StringBuilder entries = new StringBuilder(text);
    for (int i = 0; i < 500; i++) {
      entries.append("  - box-" + i + ": receptcle\n");
    }
    assertEquals(100, CaseFiles.problems(entries.toString()).size());
  }

  @Test
  void aRunOfSixBoxesTakesEightLinesAndASmallCaseTwenty() throws CaseFileException {
    String run =
        """
        run:
          - panel
          - hall-1: receptacle 32 ft
          - hall-2: receptacle 12 ft
          - closet: junction 9.5 m
          - bed-1: receptacle 14 ft
          - bed-2: receptacle 9 ft
          - bed-3: receptacle 11 ft
        """;
    String small =
        "breaker: 15 A\ncable: 14 AWG\n"
            + run
            + """
            meters:
              dmm: 10 Mohm, 0.8 % + 3 counts
              load-meter: 3 kohm, 1.5 % + 3 counts
            tests:
              - idle:
                  - bed-3 hot-neutral 121.3 dmm
                  - bed-3 hot-neutral 4.1 load-meter
              - 1500 W at bed-1:
                  - bed-1 hot-neutral 112.4 dmm
                  - hall-2 hot-neutral 118.6 dmm
            """;
    assertEquals(8, run.lines().count());
    assertEquals(20, small.lines().count());
    CaseFile read = CaseFiles.read(small);
    assertEquals(7, read.circuit().boxes().size());
    assertEquals(4, read.survey().readingCount());
  }

  @Test
  void everyAssumptionIsTakenInTheUnitThatTheWriterGivesIt() throws CaseFileException {
    CaseFile plain = CaseFiles.read(HEAD + "  - a: receptacle\n");
    Assumptions changed = plain.assumptions();
    for (Assumption assumption : Assumption.values()) {
      changed = changed.with(assumption, changed.value(assumption) * 0.96875);
    }
    CaseFile other =
        new CaseFile("all", plain.circuit(), plain.survey(), changed, plain.warnings());
    assertEquals(changed, CaseFiles.read(new CaseFileWriter().write(other)).assumptions());
  }

  @Test
  void aBoxIsNotBothFineAndBurntUnlessItWasLookedIntoAgain() {
    CaseFileException clash =
        assertThrows(
            CaseFileException.class,
            () ->
                CaseFiles.read(
                    HEAD
                        + """
                          - a: receptacle
                        found:
                          - a: fine
                          - a: burnt
                        """));

    assertTrue(clash.getMessage().contains("Box (a) must not be both fine and burnt."));
  }

  @Test
  void whatWasFoundIsReadAndOfTwoWordsTheLastHolds() throws CaseFileException {
    CaseFile read =
        CaseFiles.read(
            HEAD
                + """
                  - a: receptacle
                  - b: receptacle
                found:
                  - a: fine
                  - B: out of reach
                  - the supply: fine
                  - a: burnt again
                """);

    assertEquals(
        List.of(
            new Finding("b", Finding.State.OUT_OF_REACH),
            new Finding(Finding.SUPPLY, Finding.State.FINE),
            new Finding("a", Finding.State.BURNT)),
        read.survey().findings());
  }

  @Test
  void whatCannotHaveBeenFoundIsRefusedWithTheNearestWord() {
    String wrong = HEAD + "  - attic: receptacle\nfound:\n  - atic: fine\n  - attic: fin\n";

    List<String> problems = CaseFiles.problems(wrong);

    assertEquals(2, problems.size(), problems.toString());
    assertTrue(problems.get(0).contains("Maybe attic was meant"), problems.get(0));
    assertTrue(problems.get(1).contains("Maybe fine was meant"), problems.get(1));
  }
}
