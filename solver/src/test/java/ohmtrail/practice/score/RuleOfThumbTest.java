package ohmtrail.practice.score;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.Map;
import ohmtrail.practice.answer.RuleOfThumb;
import ohmtrail.survey.Survey;
import org.junit.jupiter.api.Test;

class RuleOfThumbTest {
  private static List<String> order(Map<String, Double> idle, Map<String, Double> loaded) {
    Survey survey = HandMade.survey(idle, loaded);
    return RuleOfThumb.answer(HandMade.circuit(), survey).order();
  }

  @Test
  void opensTheFarBoxOfTheLargestStepThenTheNearOneThenTheNextStep() {
    Map<String, Double> loaded = Map.of("a", 118.0, "b", 117.0, "c", 105.0, "d", 104.5, "e", 113.0);
    Map<String, Double> idle = Map.of("a", 120.0);
    // Steps: b-c 12, b-e 4, p-a 2, a-b 1, c-d 0.5.
    assertEquals(List.of("c", "b", "e", "a", "p", "d"), order(idle, loaded));
  }

  @Test
  void opensTheBoxesThatWereNotReadBetweenTheTwoThatWere() {
    Map<String, Double> loaded = Map.of("a", 118.0, "d", 100.0, "e", 117.5);
    Map<String, Double> idle = Map.of("a", 119.0);
    // Steps: a-d 18 over c and b, p-a 1, a-e 0.5 over b.
    assertEquals(List.of("d", "c", "b", "a", "p", "e"), order(idle, loaded));
  }

  @Test
  void comparesTheFirstBoxWithItsIdleReadingAndWithTheNominalVoltageWithoutOne() {
    Map<String, Double> loaded = Map.of("a", 112.0, "b", 107.0);
    // With an idle reading of 116 V the step to a is 4 V, without one 8 V; that to b is 5 V.
    assertEquals("b", order(Map.of("a", 116.0), loaded).get(0));
    assertEquals("a", order(Map.of(), loaded).get(0));
  }

  @Test
  void withoutAnyLoadedReadingFollowsTheSupply() {
    assertEquals(List.of("p", "a", "b", "c", "e", "d"), order(Map.of("a", 120.0), Map.of()));
  }
}
