package ohmtrail.cli.casefile;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import ohmtrail.survey.Complaint;
import ohmtrail.survey.Symptom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What is complained of, as people write it. */
class ComplaintCaseTest {
  private static final String CASE =
      """
      breaker: 15 A
      cable: 14 AWG
      run:
        - panel
        - hall: receptacle 30 ft
        - reading corner: receptacle 12 ft
        - tv: receptacle 12 ft
      loads:
        heater: 1500 W
      complaint: %s
      """;

  private static CaseFile read(String complaint) {
    try {
      return new CaseFileReader().read("case", CASE.formatted(complaint));
    } catch (CaseFileException wrong) {
      throw new AssertionError(wrong);
    }
  }

  private static List<String> said(String complaint) {
    return read(complaint).survey().complaints().stream().map(Complaint::text).toList();
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "dead at tv | dead at tv",
        "The lights dim at TV with heater at reading corner | dims at tv with heater at reading corner",
        "lights flicker | flickers",
        "everything works but it is warm at Hall | warm at hall",
        "breaker trips with heater | trips with heater",
        "lamps get brighter | brighter",
        "crackles at hall | smells at hall"
      })
  void theWordsOfPeopleAreTaken(String written, String meant) {
    assertEquals(List.of(meant), said(written));
  }

  @Test
  void severalComplaintsMakeAListAndTheSameOneCountsOnce() {
    assertEquals(List.of("dims", "dead at tv"), said("[dims, dead at tv, lights dim]"));
    assertEquals(Symptom.DIMS, read("dims").survey().complaints().get(0).symptom());
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "flikers at tv | Maybe flickers was meant",
        "dims at teevee | Box (teevee) must be one of",
        "dims at tv with hater | Maybe heater was meant",
        "dims at tv since sunday | (since)",
        "{dims: tv} | must be a text"
      })
  void whatIsNotTakenIsNamedWithWhatMayHaveBeenMeant(String written, String message) {
    CaseFileException refused =
        assertThrows(
            CaseFileException.class,
            () -> new CaseFileReader().read("case", CASE.formatted(written)));
    String all = String.valueOf(refused.getMessage());
    assertTrue(all.contains(message), all);
    assertTrue(all.contains("case:10:"), all);
  }

  @Test
  void whatIsWrittenAnewReadsTheSame() throws CaseFileException {
    CaseFile once = read("[dims at tv with heater at hall, warm at reading corner]");
    String written = new CaseFileWriter().write(once);
    assertEquals(once.survey(), new CaseFileReader().read("again", written).survey(), written);
  }
}
