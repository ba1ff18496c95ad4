package ohmtrail.locate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.Stream;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import ohmtrail.circuit.Circuit;
import ohmtrail.problem.Problem;
import ohmtrail.reference.Assumption;
import ohmtrail.reference.Assumptions;
import ohmtrail.survey.Finding;
import ohmtrail.survey.Survey;
import org.junit.jupiter.api.Test;

/** What was seen in open boxes; before any reading it is held to Bayes' rule. */
class FindingsTest {
  private static final double ROUNDING = 1e-6;

  /** As good as never are two joints degraded: a joint's posterior is then that of its box. */
  private static final Assumptions ONE_FAULT =
      Assumptions.defaults().with(Assumption.FURTHER_FAULT, 1e-9);

  private static final double MISSED = ONE_FAULT.value(Assumption.MISSED_BY_LOOKING);
  private static final double FALSE_ALARM = ONE_FAULT.value(Assumption.FALSE_ALARM);

  @Property(tries = 10)
  void aBoxThatLooksSoundLosesAgainstASoundCircuit(@ForAll long seed) {
    assertOddsTimes(MISSED, seed, Finding.State.FINE);
  }

  @Property(tries = 10)
  void aBoxThatLooksBurntWinsAgainstASoundCircuit(@ForAll long seed) {
    assertOddsTimes((1 - MISSED) / FALSE_ALARM, seed, Finding.State.BURNT);
  }

  private static void assertOddsTimes(double factor, long seed, Finding.State state) {
    RandomCase drawn = RandomCase.of(seed, ONE_FAULT);
    Survey unread = drawn.survey().withTests(List.of());
    String box = someBox(drawn.circuit(), seed);

    double before = odds(locate(drawn, unread), box);
    double after = odds(locate(drawn, unread.with(new Finding(box, state))), box);

    assertEquals(1, after / (before * factor), ROUNDING, box + " of seed " + seed);
  }

  /** Of a box against a sound circuit. */
  private static double odds(Diagnosis diagnosis, String box) {
    return diagnosis.boxes().stream()
            .filter(ranked -> ranked.box().equals(box))
            .mapToDouble(RankedBox::probability)
            .sum()
        / diagnosis.healthyProbability();
  }

  /** Not the panel: some of its joints lie before it. */
  private static String someBox(Circuit circuit, long seed) {
    int boxes = circuit.boxes().size() - 1;
    return circuit.boxes().get(1 + new SplittableRandom(seed).nextInt(boxes)).name();
  }

  @Test
  void aLookIntoTheLikeliestBoxSendsToAnother() {
    RandomCase drawn = RandomCase.of(1, ONE_FAULT);
    Survey unread = drawn.survey().withTests(List.of());
    String first = locate(drawn, unread).boxes().get(0).box();

    Diagnosis after = locate(drawn, unread.with(new Finding(first, Finding.State.FINE)));

    assertNotEquals(first, after.boxes().get(0).box());
  }

  @Test
  void assumptionsOnLookingAreToldWhereSomebodyLooked() {
    RandomCase drawn = RandomCase.of(1, ONE_FAULT);
    Survey unread = drawn.survey().withTests(List.of());
    Finding remade = new Finding(drawn.circuit().panel().name(), Finding.State.REMADE);

    assertTrue(locate(drawn, unread).assumptions().stream().noneMatch(Assumption::isAboutLooking));
    assertTrue(
        locate(drawn, unread.with(remade))
            .assumptions()
            .containsAll(
                Stream.of(Assumption.values()).filter(Assumption::isAboutLooking).toList()));
  }

  private static Diagnosis locate(RandomCase drawn, Survey survey) {
    return new Locator().locate(new Problem(drawn.circuit(), survey, ONE_FAULT));
  }
}
