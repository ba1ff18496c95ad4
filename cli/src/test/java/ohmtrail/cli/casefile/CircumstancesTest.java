package ohmtrail.cli.casefile;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.List;
import java.util.Optional;
import ohmtrail.cli.casefile.circumstances.Circumstances;
import ohmtrail.cli.casefile.circumstances.MeterIdentity;
import ohmtrail.cli.casefile.circumstances.TestTime;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Who measured, when, where and with what, as a case file says it. */
class CircumstancesTest {
  private static final String CASE =
      """
      breaker: 15 A
      cable: 14 AWG
      run:
        - panel
        - hall-1: receptacle 32 ft
      meters:
        dmm: 10 Mohm
      tests:
        - idle:
            - hall-1 hot-neutral 120.1 V dmm
      """;

  private static final String RECORD =
      """
      record:
        person: R. Example
        date: 2026-03-14
        place: 12 Mill Lane
        claim: C-1
        job: 118
        weather: dry
        temperature: 70 degF
        hours-of-use: 400 h
        meters:
          dmm: {description: "multimeter, true RMS", serial: 40711, calibrated: 2025-11-03}
        notes:
          - It smelt burnt.
          - "<b>bold</b>"
        photographs:
          - {file: hall-1.jpg, taken: 10:50, shows: the terminals}
          - panel.PNG
      times:
        idle: 2026-03-14 10:32
      """;

  private static CaseFile read(String text) throws CaseFileException {
    return new CaseFileReader().read("case.yaml", text);
  }

  @Test
  void everyKeyIsRead() throws CaseFileException {
    Circumstances said = read(CASE + RECORD).circumstances();
    assertEquals(Optional.of("R. Example"), said.person());
    assertEquals(Optional.of(LocalDate.of(2026, 3, 14)), said.date());
    assertEquals(Optional.of("12 Mill Lane"), said.place());
    assertEquals(Optional.of("C-1"), said.claim());
    assertEquals(Optional.of("118"), said.job());
    assertEquals(Optional.of("70 degF"), said.temperature());
    assertEquals(400, said.hoursOfUse().orElseThrow());
    assertEquals(
        Optional.of(
            new MeterIdentity(
                "dmm",
                Optional.of("multimeter, true RMS"),
                Optional.of("40711"),
                Optional.of(LocalDate.of(2025, 11, 3)))),
        said.identityOf("dmm"));
    assertEquals(List.of("It smelt burnt.", "<b>bold</b>"), said.notes());
    assertEquals("hall-1.jpg", said.photographs().get(0).file());
    assertEquals(
        Optional.of(LocalDateTime.of(2026, 3, 14, 10, 50)), said.photographs().get(0).taken());
    assertEquals(
        Optional.of(new TestTime("idle", LocalDateTime.of(2026, 3, 14, 10, 32))),
        said.timeOf("idle"));
  }

  @Test
  void whatIsWrittenReadsBackEqual() throws CaseFileException {
    CaseFile first = read(CASE + RECORD);
    CaseFile again = read(new CaseFileWriter().write(first));
    assertEquals(first.circumstances(), again.circumstances());
    assertEquals(first.survey(), again.survey());
  }

  @Test
  void aCaseThatSaysNothingOfItHasNothingOfIt() throws CaseFileException {
    assertEquals(Circumstances.UNSAID, read(CASE).circumstances());
  }

  @Test
  void aTimeAddedToATextLeavesTheRestAlone() throws CaseFileException {
    CaseFile before = read(CASE);
    CaseFile now =
        before.with(
            before
                .circumstances()
                .withTimes(List.of(new TestTime("idle", LocalDateTime.of(2026, 3, 14, 9, 5, 7)))));
    assertEquals(
        CASE + "times:\n  idle: \"2026-03-14 09:05:07\"\n",
        CaseText.of("case.yaml", CASE).saying(now));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "date: 2026-03-14 | date: 14.3.2026 | case.yaml:13:9: Date (14.3.2026)",
        "date: 2026-03-14 | date: 2026-02-30 | case.yaml:13:9: Date (2026-02-30)",
        "hours-of-use: 400 h | hours-of-use: often | case.yaml:19:17: Hours of use (often)",
        "hours-of-use: 400 h | hours-of-use: 0 | case.yaml:19:17: Hours of use (0)",
        "dmm: {desc | dnn: {desc | case.yaml:21:5: Meter (dnn)",
        "hall-1.jpg | ../hall-1.jpg | case.yaml:26:14: Photograph (../hall-1.jpg)",
        "hall-1.jpg | hall-1.svg | case.yaml:26:14: Photograph (hall-1.svg)",
        "panel.PNG | C:\\panel.png | case.yaml:27:7: Photograph (C:\\panel.png)",
        "10:50 | 25:10 | case.yaml:26:33: Time (25:10)",
        "idle: 2026-03-14 10:32 | idel: 2026-03-14 10:32 | case.yaml:29:3: Test (idel)",
        "idle: 2026-03-14 10:32 | idle: at ten | case.yaml:29:9: Time (at ten)",
        "person: R. Example | prson: R. Example | case.yaml:12:3: Key (prson)",
      })
  void whatIsWrongIsRefusedWithItsPlace(String was, String is, String message) {
    String damaged = CASE + RECORD.replace(was, is);
    CaseFileException refused = assertThrows(CaseFileException.class, () -> read(damaged));
    assertTrue(
        refused.getMessage().startsWith(message), () -> message + " in " + refused.getMessage());
  }

  @Test
  void aTimeOfNoDayIsRefused() {
    CaseFileException refused =
        assertThrows(CaseFileException.class, () -> read(CASE + "times:\n  idle: \"10:32\"\n"));
    assertTrue(
        refused.getMessage().startsWith("case.yaml:12:10: Time (10:32)"), refused::getMessage);
  }
}
