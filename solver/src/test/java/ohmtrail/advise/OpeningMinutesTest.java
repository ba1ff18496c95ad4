package ohmtrail.advise;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import org.junit.jupiter.api.Test;

/** The order of opening against every other order. */
class OpeningMinutesTest {
  private static final double ROUNDING = 1e-9;
  private static final double WRONG_STOP = 240;
  private static final int BOXES = 5;

  /** Trying all orders of five boxes, and all numbers of them to open, finds nothing quicker. */
  @Property(tries = 200)
  void noOtherPlanIsQuicker(@ForAll long seed) {
    SplittableRandom random = new SplittableRandom(seed);
    double[] minutes = new double[BOXES];
    double[] masses = new double[BOXES];
    double sum = random.nextDouble();
    for (int b = 0; b < BOXES; b++) {
      minutes[b] = 5 + 30 * random.nextDouble();
      masses[b] = random.nextDouble();
      sum += masses[b];
    }
    for (int b = 0; b < BOXES; b++) {
      masses[b] /= sum;
    }

    double best = least(new ArrayList<>(), masses, minutes);

    assertEquals(best, new OpeningMinutes(minutes, WRONG_STOP).expected(masses), ROUNDING);
  }

  /** The quickest of all plans that begin with these boxes. */
  private static double least(List<Integer> opened, double[] masses, double[] minutes) {
    double best = cost(opened, masses, minutes);
    for (int b = 0; b < BOXES; b++) {
      if (!opened.contains(b)) {
        opened.add(b);
        best = Math.min(best, least(opened, masses, minutes));
        opened.remove(opened.size() - 1);
      }
    }
    return best;
  }

  private static double cost(List<Integer> opened, double[] masses, double[] minutes) {
    double spent = 0;
    double found = 0;
    double closed = 1;
    double degraded = 0;
    for (double mass : masses) {
      degraded += mass;
    }
    for (int box : opened) {
      spent += minutes[box];
      found += masses[box] * spent;
      closed -= masses[box];
      degraded -= masses[box];
    }
    return found + closed * spent + degraded * WRONG_STOP;
  }

  @Test
  void aSureBoxCostsItsOwnMinutes() {
    OpeningMinutes order = new OpeningMinutes(new double[] {10, 20, 30}, WRONG_STOP);
    assertEquals(20, order.expected(new double[] {0, 1, 0}), ROUNDING);
  }

  @Test
  void aCircuitThatIsSurelySoundIsLeftClosed() {
    assertEquals(
        0, new OpeningMinutes(new double[] {10, 20}, WRONG_STOP).expected(new double[2]), ROUNDING);
  }

  @Test
  void aBoxThatTakesLongWaits() {
    OpeningMinutes order = new OpeningMinutes(new double[] {40, 10}, WRONG_STOP);
    assertEquals(0.4 * 10 + 0.6 * 50, order.expected(new double[] {0.6, 0.4}), ROUNDING);
  }
}
