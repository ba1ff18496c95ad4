package ohmtrail.practice.search;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import ohmtrail.advise.safety.Harm;
import org.junit.jupiter.api.Test;

/** Some searches of every kind; {@link HarmlessSearchStudyTest} plays a thousand. */
class HarmlessSearchTest {
  private static final long SEED = 20_271_127;
  private static final int SEARCHES = 24;

  @Test
  void noAdvisedTestDoesHarmUnderTheTruth() {
    HarmlessSearch search = new HarmlessSearch(SEED);
    search.play(0, SEARCHES);

    System.out.println(SEARCHES + " searches, seed " + SEED + ": " + search.checked());
    assertTrue(search.checked().getOrDefault(Harm.TOUCH, 0) > SEARCHES, "seed " + SEED);
    assertEquals(List.of(), search.harmful(), "seed " + SEED);
  }

  /** A loop tester to a ground of 60 ohm that no reading had spoken of yet: 94 V. */
  @Test
  void aGroundThatNothingSpeaksOfIsNotTriedByALoopTester() {
    HarmlessSearch search = new HarmlessSearch(71_300_219);
    search.play(227, 228);

    assertTrue(search.checked().getOrDefault(Harm.TOUCH, 0) > 0, "nothing was looked at");
    assertEquals(List.of(), search.harmful());
  }
}
