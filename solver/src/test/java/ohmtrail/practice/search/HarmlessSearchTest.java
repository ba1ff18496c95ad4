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
}
