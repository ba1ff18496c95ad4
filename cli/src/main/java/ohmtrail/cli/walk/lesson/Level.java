package ohmtrail.cli.walk.lesson;

import java.util.stream.LongStream;
import ohmtrail.circuit.Box;
import ohmtrail.practice.Population;
import ohmtrail.practice.Practice;
import ohmtrail.practice.PracticeCase;
import ohmtrail.reference.Assumption;
import ohmtrail.reference.Assumptions;

/**
 * How hard a lesson is.
 *
 * @param population what is drawn from
 * @param mostReceptacles longer runs are passed over
 */
public record Level(String population, int mostReceptacles) {
  private static final int ANY = Integer.MAX_VALUE;
  private static final int SHORT = 6;

  /** Drawn anew that often at most; runs of five boxes are one in eight. */
  private static final int MOST_DRAWS = 1000;

  /** Something is bad: that is the complaint. */
  private static final Assumptions COMPLAINT =
      Assumptions.defaults().with(Assumption.HEALTHY_PRIOR, 0.02);

  /** The number of levels. */
  public static final int COUNT = 4;

  /** From 1: a short run; any run; a joint hardly worse than sound; one charred. */
  public static Level of(int number) {
    return switch (number) {
      case 1 -> new Level("loose", SHORT);
      case 2 -> new Level("loose", ANY);
      case 3 -> new Level("slight", ANY);
      case 4 -> new Level("charred", ANY);
      default -> throw new IllegalArgumentException("Level (" + number + ") must be 1 to " + COUNT);
    };
  }

  /** The circuit of a number: the same whenever it is asked for. */
  public PracticeCase draw(long seed) {
    Practice practice = new Practice(Population.named(population).orElseThrow(), COMPLAINT, seed);
    return LongStream.range(0, MOST_DRAWS)
        .mapToObj(practice::caseOf)
        .filter(this::fits)
        .findFirst()
        .orElseThrow();
  }

  private boolean fits(PracticeCase drawn) {
    return drawn.circuit().boxes().stream().filter(Box::hasReceptacle).count() <= mostReceptacles;
  }
}
