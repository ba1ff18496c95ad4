package ohmtrail.cli.casefile;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import ohmtrail.circuit.Box;
import ohmtrail.reference.Conductor;
import ohmtrail.reference.ConductorMaterial;
import ohmtrail.reference.ConductorSize;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** What is missing or odd and can be worked with: taken, and told. */
class LenientReadingTest {
  @Test
  void minutesToOpenABoxAreReadAsWordsAndAsAKey() throws CaseFileException {
    CaseFile read =
        CaseFiles.read(
            """
            run:
              - panel
              - a: junction 3 m 40 min
              - b: {kind: receptacle, minutes: 7.5}
              - c: {kind: receptacle, minutes: 90 minutes}
              - d: receptacle 3 m
            """);
    List<OptionalDouble> minutes =
        read.circuit().boxes().stream().map(Box::openingMinutes).toList();
    assertEquals(
        List.of(
            OptionalDouble.empty(),
            OptionalDouble.of(40),
            OptionalDouble.of(7.5),
            OptionalDouble.of(90),
            OptionalDouble.empty()),
        minutes);
  }

  @ParameterizedTest
  @ValueSource(strings = {"minutes: 0", "minutes: 40 ft", "minutes: soon", "minutes: 2000"})
  void minutesThatAreNoneAreRefused(String minutes) {
    assertThrows(
        CaseFileException.class,
        () -> CaseFiles.read("run:\n  - panel\n  - a: {kind: receptacle, " + minutes + "}\n"));
  }

  private static final String LITTLE =
      """
      %s
      run:
        - panel
        - a: receptacle 3 m
        - b: receptacle 3 m
      """;

  private static Conductor conductor(CaseFile read) {
    return read.circuit().cables().get(0).conductor();
  }

  private static Conductor copper(String size) {
    return new Conductor(ConductorSize.parse(size).orElseThrow(), ConductorMaterial.COPPER);
  }

  @ParameterizedTest
  @CsvSource({
    "14 mm2, 15 A, 14 AWG",
    "12mm2, 20 A, 12 AWG",
    "1.5 AWG, 16 A, 1.5 mm2",
    "2.5 AWG, 20 A, 2.5 mm2"
  })
  void aSizeThatIsListedOnlyWithTheOtherUnitIsReadSoWithAWarningWhereItSuitsTheBreaker(
      String written, String breaker, String meant) throws CaseFileException {
    CaseFile read = CaseFiles.read(LITTLE.formatted("breaker: " + breaker + "\ncable: " + written));

    assertEquals(copper(meant), conductor(read));
    String warning = read.warnings().get(0).format();
    assertTrue(warning.contains(":2:8: Cable size (" + written + ") is no listed size"), warning);
    assertTrue(warning.contains("read as (" + meant + ")"), warning);
    assertTrue(warning.contains("\nMaybe "), warning);
  }

  @Test
  void aSizeThatIsListedOnlyWithTheOtherUnitIsRefusedWhereItDoesNotSuitTheBreaker() {
    assertThrows(
        CaseFileException.class,
        () -> CaseFiles.read(LITTLE.formatted("breaker: 63 A\ncable: 14 mm2")));
  }

  @ParameterizedTest
  @CsvSource({
    "supply: 120 V, 15, 14 AWG, breaker cable",
    "supply: 230 V, 20, 2.5 mm2, breaker cable",
    "breaker: 20 A, 20, 12 AWG, cable",
    "cable: 12 AWG, 20, 12 AWG, breaker",
    "cable: 1.5 mm2, 16, 1.5 mm2, breaker"
  })
  void whatIsNotSaidOfBreakerAndCableIsTakenAsUsualAndNamed(
      String said, double amperes, String size, String keys) throws CaseFileException {
    CaseFile read = CaseFiles.read(LITTLE.formatted(said));

    assertEquals(amperes, read.circuit().breakerAmperes());
    assertEquals(copper(size), conductor(read));
    assertEquals(
        keys,
        read.taken().stream().map(CaseFile.Taken::key).collect(Collectors.joining(" ")),
        read.taken().toString());
    assertEquals(List.of(), read.warnings());
  }

  @Test
  void aCaseWhoseEntriesAllSayTheirCableHasNoneTaken() throws CaseFileException {
    String own = LITTLE.formatted("breaker: 20 A").replace("3 m", "3 m 12 AWG");

    assertEquals(List.of(), CaseFiles.read(own).taken());
  }

  @ParameterizedTest
  @CsvSource({"180 V, 0", "180.1 V, 1", "1213, 1", "2.4 kV, 1"})
  void aReadingAboveOneAndAHalfTimesTheSupplyIsTakenWithAWarning(String volts, int warnings)
      throws CaseFileException {
    CaseFile read =
        CaseFiles.read(
            LITTLE.formatted("breaker: 15 A")
                + "tests:\n  - idle:\n      - a hot-neutral "
                + volts
                + " high\n");

    assertEquals(1, read.survey().readingCount());
    assertEquals(warnings, read.warnings().size(), read.warnings().toString());
    read.warnings()
        .forEach(
            warning ->
                assertTrue(
                    warning.message().contains("Maybe the decimal point slipped"),
                    warning.message()));
  }
}
