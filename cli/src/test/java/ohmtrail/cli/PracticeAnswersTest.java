package ohmtrail.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.core.JsonProcessingException;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import ohmtrail.cli.casefile.CaseFile;
import ohmtrail.cli.render.Headline;
import ohmtrail.cli.render.json.CheckJson;
import ohmtrail.cli.render.json.DocumentSchema;
import ohmtrail.cli.render.json.LocateJson;
import ohmtrail.cli.render.json.PredictJson;
import ohmtrail.cli.render.text.CheckText;
import ohmtrail.cli.render.text.LocateText;
import ohmtrail.cli.render.text.PredictText;
import ohmtrail.locate.Verdict;
import ohmtrail.practice.Population;
import ohmtrail.practice.Practice;
import ohmtrail.practice.PracticeCase;
import ohmtrail.reference.Assumptions;
import ohmtrail.report.Prediction;
import ohmtrail.report.Report;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.TestFactory;

/** Whatever the circuit, the fault and the readings, there is an answer and it can be printed. */
class PracticeAnswersTest {
  private static final long SEED = 20_240_611;

  /** One of each sort of fault and of answer. */
  private static final List<String> POPULATIONS =
      List.of(
          "loose",
          "slight-half-read",
          "charred",
          "open",
          "healthy",
          "as-assumed",
          "two-joints",
          "mistyped",
          "ground-too",
          "loose-230",
          "two-leg",
          "ring");

  private static final int WIDTH = 80;
  private static final DocumentSchema SCHEMA = DocumentSchema.named("locate");

  @TestFactory
  Stream<DynamicTest> everyKindOfCaseIsAnswered() {
    return POPULATIONS.stream()
        .map(
            name ->
                DynamicTest.dynamicTest(
                    name, () -> assertAnswered(Population.named(name).orElseThrow(), 0)));
  }

  private static void assertAnswered(Population population, long number)
      throws JsonProcessingException {
    String which = population.name() + " " + number + " of seed " + SEED;
    PracticeCase drawn = new Practice(population, Assumptions.defaults(), SEED).caseOf(number);
    CaseFile caseFile =
        new CaseFile(which, drawn.circuit(), drawn.survey(), drawn.assumptions(), List.of());
    Report report = Report.of(drawn.problem());
    Prediction prediction = Prediction.of(drawn.problem(), drawn.truth().degraded());

    assertPrintable(LocateText.of(caseFile, report), which);
    assertPrintable(CheckText.of(caseFile), which);
    assertPrintable(PredictText.of(caseFile, prediction), which);
    assertFalse(CheckJson.of(caseFile).isEmpty(), which);
    assertFalse(PredictJson.of(caseFile, prediction).isEmpty(), which);
    assertEquals(Set.of(), SCHEMA.breaches(LocateJson.of(caseFile, report)), which);
    String headline = Headline.of(caseFile, report);
    assertEquals(
        report.diagnosis().verdict() == Verdict.DEGRADED,
        headline.startsWith("Open ")
            || headline.contains("If it stands: Open ")
            || headline.contains("With that: Open ")
            || headline.contains("ave panel opened first by a licensed electrician")
            || headline.contains(" joints are bad at once"),
        which + ": " + headline);
  }

  private static void assertPrintable(String text, String which) {
    text.lines().forEach(line -> assertTrue(line.length() <= WIDTH, which + ": " + line));
    assertFalse(text.contains("NaN"), which);
    assertFalse(text.contains("Infinity"), which);
    assertFalse(text.contains("null"), which);
  }
}
