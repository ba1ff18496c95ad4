package ohmtrail.advise;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import ohmtrail.practice.Population;
import ohmtrail.practice.Practice;
import ohmtrail.practice.PracticeCase;
import ohmtrail.reference.Assumptions;
import ohmtrail.reference.Minutes;
import ohmtrail.report.OpeningPlan;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What is advised speaks of the same boxes as the answer does. */
class AdviceReportTest {
  private static final long SEED = 20240611;

  /** Nothing but the order of additions lies between the two. */
  private static final double ARITHMETIC = 1e-9;

  /** With two joints a pair is one explanation of many: its boxes are not the answer's. */
  @ParameterizedTest
  @CsvSource({"two-joints, 0", "two-joints, 1", "two-joints, 3", "loose, 0", "two-leg, 0"})
  void theBoxesHaveTheMarginalProbabilitiesOfTheAnswer(String population, long number) {
    PracticeCase drawn =
        new Practice(Population.named(population).orElseThrow(), Assumptions.defaults(), SEED)
            .caseOf(number);
    AdviceReport advised = AdviceReport.of(drawn.problem(), Situation.START, Minutes.defaults());
    String panel = drawn.circuit().panel().name();
    double supply = 0;
    for (OpeningPlan.Step step : advised.advice().opening().steps()) {
      if (step.box().equals(ohmtrail.survey.Finding.SUPPLY)) {
        supply = step.probability();
      } else if (!step.box().equals(panel)) {
        assertEquals(
            advised.report().diagnosis().probabilityOf(step.box()),
            step.probability(),
            ARITHMETIC,
            step.box());
      }
    }
    double inPanel =
        advised.advice().opening().steps().stream()
            .filter(step -> step.box().equals(panel))
            .mapToDouble(OpeningPlan.Step::probability)
            .sum();
    assertEquals(
        advised.report().diagnosis().probabilityOf(panel), supply + inPanel, ARITHMETIC, panel);
    for (Option option : advised.advice().options()) {
      if (option.choice() instanceof Choice.Open open && !open.box().equals(panel)) {
        assertEquals(
            advised.report().diagnosis().probabilityOf(open.box()),
            option.outcomes().get(0).probability(),
            ARITHMETIC);
      }
      assertTrue(
          option.outcomes().stream().allMatch(outcome -> outcome.probability() <= 1 + ARITHMETIC),
          option.toString());
    }
  }
}
