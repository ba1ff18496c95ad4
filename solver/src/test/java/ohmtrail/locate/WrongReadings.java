package ohmtrail.locate;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;

/**
 * Which readings are wrong and what that costs: none, each one, each two.
 *
 * @param kept the readings that are not
 * @param dropped how many are
 * @param logFactor logarithm of the probability of it, times the density of the wrong readings
 */
record WrongReadings(List<Integer> kept, int dropped, double logFactor) {
  /** A wrong reading lies anywhere from zero to this many times the supply's voltage. */
  private static final double WIDEST = 1.25;

  /** None first, then each one, then each two in the order of a double loop. */
  static List<WrongReadings> all(int readings, double wrong, double supplyVolts) {
    double right = Math.log1p(-wrong);
    double cost = Math.log(wrong / (WIDEST * supplyVolts));
    List<WrongReadings> all = new ArrayList<>();
    all.add(without(readings, right, cost));
    for (int i = 0; i < readings; i++) {
      all.add(without(readings, right, cost, i));
    }
    for (int i = 0; i < readings; i++) {
      for (int j = i + 1; j < readings; j++) {
        all.add(without(readings, right, cost, i, j));
      }
    }
    return all;
  }

  private static WrongReadings without(int readings, double right, double cost, int... wrong) {
    List<Integer> kept =
        IntStream.range(0, readings)
            .filter(r -> Arrays.stream(wrong).noneMatch(w -> w == r))
            .boxed()
            .toList();
    return new WrongReadings(kept, wrong.length, kept.size() * right + wrong.length * cost);
  }

  int[] keptArray() {
    return kept.stream().mapToInt(Integer::intValue).toArray();
  }
}
