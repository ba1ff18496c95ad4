package ohmtrail.practice.search;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/**
 * A thousand searches of every kind: every meter, two legs, rings, wet surroundings, what is wired
 * in, loads that were off and a supply that moved. Another number by {@code
 * -Dohmtrail.study.harm.games=50}.
 */
@Tag("study")
class HarmlessSearchStudyTest {
  private static final long SEED = 71_300_219;

  /** Played between two lines of what was looked for so far. */
  private static final int BLOCK = 24;

  private static final int SEARCHES = Integer.getInteger("ohmtrail.study.harm.games", 1000);

  @Test
  void noAdvisedTestDoesHarmInAThousandSearches() {
    HarmlessSearch search = new HarmlessSearch(SEED);
    for (int from = 0; from < SEARCHES; from += BLOCK) {
      int to = Math.min(from + BLOCK, SEARCHES);
      search.play(from, to);
      System.out.println(to + " searches, seed " + SEED + ": " + search.checked());
      search.harmful().forEach(System.out::println);
    }

    assertEquals(List.of(), search.harmful(), "seed " + SEED);
  }
}
