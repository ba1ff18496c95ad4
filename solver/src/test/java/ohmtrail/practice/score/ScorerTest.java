package ohmtrail.practice.score;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.IntStream;
import ohmtrail.locate.RankedBox;
import ohmtrail.practice.Population;
import ohmtrail.practice.Practice;
import ohmtrail.practice.PracticeCase;
import ohmtrail.practice.answer.Answer;
import ohmtrail.practice.answer.RuleOfThumb;
import ohmtrail.reference.Assumptions;
import org.junit.jupiter.api.Test;

class ScorerTest {
  private static final long SEED = 31;

  private static Scorer scorer(String population, int cases, int threads) {
    Practice practice =
        new Practice(Population.named(population).orElseThrow(), Assumptions.defaults(), SEED);
    return new Scorer(practice, cases, threads);
  }

  /** Ranks the boxes by what their readings end in: nonsense, but the same nonsense every time. */
  private static Answer nonsense(PracticeCase practiceCase) {
    List<RankedBox> stated = new ArrayList<>();
    practiceCase.survey().tests().stream()
        .flatMap(test -> test.readings().stream())
        .forEach(reading -> stated.add(new RankedBox(reading.box(), reading.value() % 1)));
    return new Answer(
        Answer.byProbability(stated, practiceCase.circuit()),
        stated,
        List.of(),
        List.of(),
        java.util.Optional.empty(),
        java.util.OptionalInt.empty());
  }

  @Test
  void theScoreDoesNotDependOnTheNumberOfThreads() {
    Score alone = scorer("as-assumed", 40, 1).score(ScorerTest::nonsense, done -> {});
    Score four = scorer("as-assumed", 40, 4).score(ScorerTest::nonsense, done -> {});
    assertEquals(alone, four);
    assertEquals(40, alone.cases());
    assertTrue(alone.opening().orElseThrow().cases() < 40);
  }

  @Test
  void theLocatorsScoreDoesNotDependOnTheNumberOfThreads() {
    assertEquals(
        scorer("loose", 4, 1).score(Scorer::locate, done -> {}),
        scorer("loose", 4, 4).score(Scorer::locate, done -> {}));
  }

  @Test
  void tellsHowManyCasesAreDoneOneByOne() {
    List<Integer> told = new ArrayList<>();
    scorer("loose", 7, 3).score(RuleOfThumb::answer, told::add);
    assertEquals(IntStream.rangeClosed(1, 7).boxed().toList(), told);
  }

  @Test
  void scoresTheRuleOfThumbBesideTheMethod() {
    Score score = scorer("loose", 30, 2).score(RuleOfThumb::answer, done -> {});
    assertEquals(score.opening(), score.ruleOfThumb());
    assertTrue(score.calibration().isEmpty());
    assertTrue(score.coverage().isEmpty());
  }

  /**
   * Asked again with the reading put right, a method that trusts the last reading changes its mind.
   */
  @Test
  void tellsWhetherAWrongReadingMovedTheFirstBox() {
    Score trusting =
        scorer("mistyped", 12, 2)
            .score(
                drawn ->
                    Answer.ofOrder(
                        List.of(drawn.truth().wrongReadings().isEmpty() ? "panel" : "elsewhere")),
                done -> {});
    assertEquals(OptionalDouble.of(0), trusting.firstBoxKeptShare());
    Score stubborn =
        scorer("mistyped", 12, 2).score(drawn -> Answer.ofOrder(List.of("panel")), done -> {});
    assertEquals(OptionalDouble.of(1), stubborn.firstBoxKeptShare());
    Score unasked = scorer("loose", 3, 2).score(RuleOfThumb::answer, done -> {});
    assertEquals(OptionalDouble.empty(), unasked.firstBoxKeptShare());
  }

  @Test
  void aMethodThatFailsIsNotPassedOver() {
    Scorer scorer = scorer("loose", 3, 2);
    assertThrows(
        UnsupportedOperationException.class,
        () ->
            scorer.score(
                each -> {
                  throw new UnsupportedOperationException("on purpose");
                },
                done -> {}));
    assertThrows(IllegalArgumentException.class, () -> scorer("loose", 0, 1));
    assertThrows(IllegalArgumentException.class, () -> scorer("loose", 1, 0));
  }

  @Test
  void theLocatorOpensFewerBoxesThanTheRuleOfThumbAndNamesWhatItFinds() {
    Score score = scorer("loose-half-read", 30, 2).score(Scorer::locate, done -> {});
    double boxes = score.opening().orElseThrow().meanBoxes();
    double byRule = score.ruleOfThumb().orElseThrow().meanBoxes();
    assertTrue(boxes < byRule, boxes + " boxes, by rule " + byRule + ", seed " + SEED);
    assertTrue(score.coverage().orElseThrow() > 0.7, "seed " + SEED + ": " + score);
  }
}
