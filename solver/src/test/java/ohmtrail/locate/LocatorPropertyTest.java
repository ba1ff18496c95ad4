package ohmtrail.locate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import ohmtrail.circuit.Circuit;
import ohmtrail.practice.Population;
import ohmtrail.practice.Practice;
import ohmtrail.practice.PracticeCase;
import ohmtrail.problem.Problem;
import ohmtrail.reference.Assumptions;
import ohmtrail.survey.Survey;
import ohmtrail.survey.Test;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What must hold of any answer, over practice cases. */
class LocatorPropertyTest {
  private static final long SEED = 2;

  /** Sums of a few hundred probabilities. */
  private static final double ROUND_OFF = 1e-9;

  /** A fit stops at a relative change of 1e-4 of its sum of squares; round-off moves where. */
  private static final double WHERE_A_FIT_STOPS = 1e-3;

  @ParameterizedTest
  @ValueSource(strings = {"loose", "slight", "open", "healthy", "mistyped", "ground-too"})
  void probabilitiesSumToOne(String population) {
    for (PracticeCase drawn : cases(population, 2)) {
      Diagnosis diagnosis = locate(drawn);
      double others = diagnosis.healthyProbability() + diagnosis.unexplainedProbability();
      double boxes = diagnosis.boxes().stream().mapToDouble(RankedBox::probability).sum();
      double suspects = diagnosis.suspects().stream().mapToDouble(Suspect::probability).sum();
      // Several degraded joints count once in what they are part of, and once per joint elsewhere.
      double several = diagnosis.severalProbability();
      assertTrue(others + boxes >= 1 - ROUND_OFF, population);
      assertTrue(others + boxes <= 1 + 2 * several + ROUND_OFF, population);
      assertTrue(others + suspects >= 1 - several - ROUND_OFF, population);
      assertTrue(others + suspects <= 1 + 2 * several + ROUND_OFF, population);
      for (Suspect suspect : diagnosis.suspects()) {
        double joints =
            suspect.jointProbabilities().stream().mapToDouble(Double::doubleValue).sum();
        assertEquals(suspect.probability(), joints, ROUND_OFF, population);
      }
    }
  }

  @ParameterizedTest
  @ValueSource(strings = {"loose", "slight", "charred", "open", "healthy"})
  void theEstimateLiesWithinItsInterval(String population) {
    for (PracticeCase drawn : cases(population, 2)) {
      for (Suspect suspect : locate(drawn).suspects()) {
        OhmsInterval ohms = suspect.ohms();
        ohms.estimate()
            .ifPresent(
                estimate ->
                    assertTrue(
                        estimate >= ohms.low().orElse(0)
                            && estimate <= ohms.high().orElse(Double.POSITIVE_INFINITY),
                        population + ": " + suspect));
      }
    }
  }

  @ParameterizedTest
  @ValueSource(strings = {"loose", "slight", "open", "mistyped"})
  void theOrderInWhichTestsWereTakenDoesNotMatter(String population) {
    for (PracticeCase drawn : cases(population, 2)) {
      assertSame(drawn, drawn.circuit(), reordered(drawn.survey()), WHERE_A_FIT_STOPS);
    }
  }

  @ParameterizedTest
  @ValueSource(strings = {"loose", "slight", "open", "loose-230"})
  void theOrderInWhichBoxesAreListedDoesNotMatter(String population) {
    for (PracticeCase drawn : cases(population, 2)) {
      Circuit circuit = drawn.circuit();
      Circuit other =
          new Circuit(
              circuit.supply(),
              circuit.breakerAmperes(),
              shuffled(circuit.boxes()),
              shuffled(circuit.cables()));
      assertSame(drawn, other, drawn.survey(), WHERE_A_FIT_STOPS);
    }
  }

  /** Coverage of the 90 % interval over joints that were really degraded. */
  @Tag("study")
  @ParameterizedTest
  @ValueSource(strings = {"loose", "slight", "charred"})
  void intervalsContainTheTruthAboutAsOftenAsTheySay(String population) {
    int count = 60;
    int contained = 0;
    for (PracticeCase drawn : cases(population, count)) {
      double truth = drawn.truth().degraded().get(0).ohms();
      OhmsInterval ohms = suspectOf(drawn, locate(drawn)).ohms();
      boolean within =
          truth >= ohms.low().orElse(0) && truth <= ohms.high().orElse(Double.POSITIVE_INFINITY);
      contained += within ? 1 : 0;
    }
    // 60 draws at 0.9: 54 expected, standard deviation 2.3; three of them below.
    assertTrue(contained >= 47, population + ": " + contained + " of " + count);
  }

  private static Suspect suspectOf(PracticeCase drawn, Diagnosis diagnosis) {
    String id = drawn.truth().degraded().get(0).joint();
    return diagnosis.suspects().stream()
        .filter(suspect -> suspect.joints().stream().anyMatch(joint -> joint.id().equals(id)))
        .findFirst()
        .orElseThrow();
  }

  private static void assertSame(
      PracticeCase drawn, Circuit circuit, Survey survey, double tolerance) {
    Diagnosis one = locate(drawn);
    Diagnosis other = new Locator().locate(new Problem(circuit, survey, drawn.assumptions()));
    assertEquals(one.verdict(), other.verdict());
    assertEquals(one.healthyProbability(), other.healthyProbability(), tolerance);
    assertEquals(one.unexplainedProbability(), other.unexplainedProbability(), tolerance);
    Map<String, Double> expected = byBox(one);
    byBox(other)
        .forEach(
            (box, probability) -> assertEquals(expected.get(box), probability, tolerance, box));
  }

  private static Map<String, Double> byBox(Diagnosis diagnosis) {
    Map<String, Double> byBox = new TreeMap<>();
    diagnosis.boxes().forEach(box -> byBox.put(box.box(), box.probability()));
    return byBox;
  }

  private static Survey reordered(Survey survey) {
    List<Test> tests = new ArrayList<>();
    for (Test test : survey.tests()) {
      tests.add(new Test(test.name(), shuffled(test.loads()), shuffled(test.readings())));
    }
    return new Survey(shuffled(survey.meters()), shuffled(survey.loads()), shuffled(tests));
  }

  private static <T> List<T> shuffled(List<T> items) {
    List<T> copy = new ArrayList<>(items);
    Collections.shuffle(copy, new Random(SEED));
    return copy;
  }

  private static List<PracticeCase> cases(String population, int count) {
    Practice practice =
        new Practice(Population.named(population).orElseThrow(), Assumptions.defaults(), SEED);
    List<PracticeCase> drawn = new ArrayList<>();
    for (int number = 0; number < count; number++) {
      drawn.add(practice.caseOf(number));
    }
    return drawn;
  }

  private static Diagnosis locate(PracticeCase drawn) {
    return new Locator().locate(drawn.problem());
  }
}
