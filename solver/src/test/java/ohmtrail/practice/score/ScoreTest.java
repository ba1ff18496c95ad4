package ohmtrail.practice.score;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import ohmtrail.circuit.Circuit;
import ohmtrail.locate.OhmsInterval;
import ohmtrail.locate.RankedBox;
import ohmtrail.locate.Suspect;
import ohmtrail.locate.Verdict;
import ohmtrail.practice.PracticeCase;
import ohmtrail.practice.Truth;
import ohmtrail.practice.answer.Answer;
import ohmtrail.predict.Degradation;
import org.junit.jupiter.api.Test;

class ScoreTest {
  private static final double EXACT = 1e-12;
  private static final Circuit CIRCUIT = HandMade.circuit();

  /** The joint of b toward c, bad by 2 ohm. */
  private static final PracticeCase BAD_B = HandMade.with(new Degradation("b/hot/outgoing/c", 2));

  private static final PracticeCase BAD_D =
      HandMade.with(new Degradation("d/neutral/incoming", Double.POSITIVE_INFINITY));

  private static final PracticeCase HEALTHY = HandMade.with();

  private static OhmsInterval interval(OptionalDouble low, OptionalDouble high) {
    return new OhmsInterval(OptionalDouble.empty(), low, high, 0.9);
  }

  private static Suspect suspect(String joint, double probability, OhmsInterval ohms) {
    return new Suspect(
        List.of(CIRCUIT.joint(joint).orElseThrow()), List.of(probability), probability, ohms, 1);
  }

  private static Answer answer(
      Map<String, Double> boxes, List<Suspect> suspects, Verdict verdict, Double... wrong) {
    List<RankedBox> stated = new ArrayList<>();
    boxes.forEach((box, probability) -> stated.add(new RankedBox(box, probability)));
    return new Answer(
        Answer.byProbability(stated, CIRCUIT),
        stated,
        suspects,
        List.of(wrong),
        Optional.of(verdict),
        OptionalInt.of(1));
  }

  private static final OhmsInterval ONE_TO_THREE =
      interval(OptionalDouble.of(1), OptionalDouble.of(3));
  private static final OhmsInterval MORE_THAN_A_THOUSAND =
      interval(OptionalDouble.of(1000), OptionalDouble.empty());

  private static final Answer SAYS_B =
      answer(
          Map.of("a", 0.15, "b", 0.75, "c", 0.1),
          List.of(
              suspect("b/hot/outgoing/c", 0.7, ONE_TO_THREE),
              suspect("c/neutral/incoming", 0.3, ONE_TO_THREE)),
          Verdict.DEGRADED);

  private static final Answer SAYS_A =
      answer(
          Map.of("a", 0.55, "b", 0.45),
          List.of(
              suspect("a/hot/contact", 0.4, ONE_TO_THREE),
              suspect("d/neutral/incoming", 0.35, MORE_THAN_A_THOUSAND),
              suspect("b/neutral/contact", 0.25, ONE_TO_THREE)),
          Verdict.DEGRADED);

  private static Score score(Outcome... outcomes) {
    return Score.of(List.of(outcomes), List.of());
  }

  @Test
  void boxesOfTheSameProbabilityAreOpenedAsTheSupplyReachesThem() {
    assertEquals(List.of("a", "b", "p", "c", "e", "d"), SAYS_A.order());
    // p a b c e d is the order of the supply: e hangs off b beside c.
    assertEquals(6, SAYS_A.boxesOpened(List.of("d"), CIRCUIT));
  }

  @Test
  void boxesLeftOutOfAnOrderComeLast() {
    Answer answer = Answer.ofOrder(List.of("e"));
    assertEquals(1, answer.boxesOpened(List.of("e"), CIRCUIT));
    assertEquals(2, answer.boxesOpened(List.of("p"), CIRCUIT));
    assertEquals(6, answer.boxesOpened(List.of("d"), CIRCUIT));
    assertThrows(
        IllegalArgumentException.class, () -> answer.boxesOpened(List.of("nowhere"), CIRCUIT));
  }

  @Test
  void ofTwoBadBoxesTheFirstReachedCounts() {
    assertEquals(2, SAYS_A.boxesOpened(List.of("d", "b"), CIRCUIT));
  }

  @Test
  void countsBoxesOpenedOverTheDegradedCasesOnly() {
    Score score =
        score(Outcome.of(SAYS_B, BAD_B), Outcome.of(SAYS_A, BAD_B), Outcome.of(SAYS_B, HEALTHY));
    Opening opening = score.opening().orElseThrow();
    assertEquals(3, score.cases());
    assertEquals(2, opening.cases());
    assertEquals(1.5, opening.meanBoxes(), EXACT);
    assertEquals(0.5, opening.firstBoxShare(), EXACT);
    // Deviation of 1 and 2 is 1/sqrt 2; over sqrt 2.
    assertEquals(0.5, opening.standardError(), EXACT);
    assertTrue(score.ruleOfThumb().isEmpty());
  }

  @Test
  void aSuspectIsRightWhenTheFirstOneHoldsTheJoint() {
    assertTrue(Outcome.of(SAYS_B, BAD_B).suspectRight());
    assertEquals(false, Outcome.of(SAYS_A, BAD_D).suspectRight());
    assertEquals(
        0.5,
        score(Outcome.of(SAYS_B, BAD_B), Outcome.of(SAYS_A, BAD_D)).suspectShare().orElseThrow(),
        EXACT);
  }

  @Test
  void theConductorIsThatWithTheMostProbabilityNotThatOfTheFirstSuspect() {
    // Hot 0.4, neutral 0.35 + 0.25.
    assertTrue(Outcome.of(SAYS_A, BAD_D).conductorRight());
    assertEquals(false, Outcome.of(SAYS_A, BAD_B).conductorRight());
  }

  @Test
  void intervalsCoverWhatLiesBetweenTheirBoundsAndBeyondAMissingOne() {
    assertEquals(List.of(true), Outcome.of(SAYS_B, BAD_B).intervals());
    assertEquals(List.of(true), Outcome.of(SAYS_A, BAD_D).intervals());
    PracticeCase four = HandMade.with(new Degradation("b/hot/outgoing/c", 4));
    assertEquals(List.of(false), Outcome.of(SAYS_B, four).intervals());
    // No suspect holds the joint.
    assertEquals(List.of(), Outcome.of(SAYS_B, BAD_D).intervals());
    Score score =
        score(Outcome.of(SAYS_B, BAD_B), Outcome.of(SAYS_B, four), Outcome.of(SAYS_B, BAD_D));
    assertEquals(0.5, score.coverage().orElseThrow(), EXACT);
  }

  @Test
  void brierScoreIsTheSumOfSquaresPerCase() {
    Calibration calibration = score(Outcome.of(SAYS_B, BAD_B)).calibration().orElseThrow();
    assertEquals(0.15 * 0.15 + 0.25 * 0.25 + 0.1 * 0.1, calibration.brierScore(), EXACT);
  }

  @Test
  void binsHoldStatedProbabilityAgainstFrequency() {
    Score score = score(Outcome.of(SAYS_B, BAD_B), Outcome.of(SAYS_B, HEALTHY));
    Calibration calibration = score.calibration().orElseThrow();
    assertEquals(2, calibration.bins().size());
    Calibration.Bin low = calibration.bins().get(0);
    assertEquals(0.1, low.low(), EXACT);
    assertEquals(0.2, low.high(), EXACT);
    assertEquals(4, low.boxes());
    assertEquals(0.125, low.meanStated(), EXACT);
    assertEquals(0, low.frequency(), EXACT);
    Calibration.Bin high = calibration.bins().get(1);
    assertEquals(2, high.boxes());
    assertEquals(0.75, high.meanStated(), EXACT);
    assertEquals(0.5, high.frequency(), EXACT);
    assertEquals((4 * 0.125 + 2 * 0.25) / 6, calibration.expectedError(), EXACT);
  }

  @Test
  void certaintyBelongsToTheLastBin() {
    Answer certain = answer(Map.of("b", 1.0), List.of(), Verdict.DEGRADED);
    Calibration calibration = score(Outcome.of(certain, BAD_B)).calibration().orElseThrow();
    assertEquals(0.9, calibration.bins().get(0).low(), EXACT);
    assertEquals(0, calibration.brierScore(), EXACT);
  }

  @Test
  void falseAlarmsAreDegradedVerdictsOnHealthyCircuits() {
    Answer calm = answer(Map.of("b", 0.1), List.of(), Verdict.HEALTHY);
    Answer lost = answer(Map.of("b", 0.1), List.of(), Verdict.UNEXPLAINED);
    Score score =
        score(
            Outcome.of(SAYS_B, HEALTHY),
            Outcome.of(calm, HEALTHY),
            Outcome.of(lost, HEALTHY),
            Outcome.of(calm, HEALTHY),
            Outcome.of(calm, BAD_B));
    assertEquals(0.25, score.falseAlarms().orElseThrow(), EXACT);
    assertEquals(
        Map.of(Verdict.DEGRADED, 1, Verdict.HEALTHY, 2, Verdict.UNEXPLAINED, 1),
        score.verdictsOnHealthy());
    assertEquals(Map.of(Verdict.HEALTHY, 1), score.verdictsOnDegraded());
    assertTrue(score(Outcome.of(SAYS_B, BAD_B)).falseAlarms().isEmpty());
  }

  @Test
  void aWrongReadingIsNamedWhenItIsDoubtedMostAndMoreThanNot() {
    Truth truth =
        new Truth(
            BAD_B.truth().degraded(),
            BAD_B.truth().degraded(),
            Map.of(1, 118.0),
            List.of(),
            List.of());
    PracticeCase mistyped =
        new PracticeCase(BAD_B.circuit(), BAD_B.survey(), BAD_B.assumptions(), truth);
    Answer names = answer(Map.of(), List.of(), Verdict.DEGRADED, 0.1, 0.8);
    Answer other = answer(Map.of(), List.of(), Verdict.DEGRADED, 0.9, 0.8);
    Answer faint = answer(Map.of(), List.of(), Verdict.DEGRADED, 0.1, 0.4);
    assertEquals(
        1.0 / 3,
        score(
                Outcome.of(names, mistyped),
                Outcome.of(other, mistyped),
                Outcome.of(faint, mistyped),
                Outcome.of(names, BAD_B))
            .wrongReadingShare()
            .orElseThrow(),
        EXACT);
  }
}
