package ohmtrail.practice.score;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeMap;

/**
 * Stated box probabilities against how often the box had the degraded joint, over every box of
 * every case.
 *
 * @param bins by stated probability, those with any box in them
 * @param brierScore mean over the cases of the sum over boxes of the squared difference between the
 *     stated probability and 1 or 0 (Brier 1950, from memory): 0 for a clairvoyant, at most 2
 * @param expectedError mean over the boxes of the difference between stated probability and
 *     frequency in their bin
 */
public record Calibration(List<Bin> bins, double brierScore, double expectedError) {
  /**
   * Boxes of about the same stated probability.
   *
   * @param low least stated probability
   * @param high most stated probability; not in the bin but where it is 1
   * @param boxes how many, at least one
   * @param meanStated mean of their stated probabilities
   * @param frequency share of them with a degraded joint
   */
  public record Bin(double low, double high, int boxes, double meanStated, double frequency) {
    private Bin with(Bin other) {
      int both = boxes + other.boxes;
      return new Bin(
          low,
          high,
          both,
          (boxes * meanStated + other.boxes * other.meanStated) / both,
          (boxes * frequency + other.boxes * other.frequency) / both);
    }
  }

  private static final int BINS = 10;

  /** Bins of fewer boxes say little about how far probabilities and frequencies differ. */
  public static final int TELLING_BOXES = 100;

  /** Copies the list. */
  public Calibration {
    bins = List.copyOf(bins);
  }

  /** Counts; empty for a method that states no probabilities. */
  static Optional<Calibration> of(List<Outcome> outcomes) {
    List<Outcome.StatedBox> all =
        outcomes.stream().flatMap(outcome -> outcome.stated().stream()).toList();
    if (all.isEmpty()) {
      return Optional.empty();
    }
    double squares = 0;
    for (Outcome.StatedBox box : all) {
      double miss = box.probability() - (box.degraded() ? 1 : 0);
      squares += miss * miss;
    }
    List<Bin> bins = bins(all);
    double error = 0;
    for (Bin bin : bins) {
      error += bin.boxes() * Math.abs(bin.meanStated() - bin.frequency());
    }
    return Optional.of(new Calibration(bins, squares / outcomes.size(), error / all.size()));
  }

  /**
   * The greatest difference between stated probability and frequency, over the bins of {@value
   * #TELLING_BOXES} boxes or more; empty where there is none.
   */
  public OptionalDouble worstError() {
    return bins.stream()
        .filter(bin -> bin.boxes() >= TELLING_BOXES)
        .mapToDouble(bin -> Math.abs(bin.meanStated() - bin.frequency()))
        .max();
  }

  /** The bins of several calibrations, those of the same bounds together, from low to high. */
  public static List<Bin> pooled(List<Calibration> calibrations) {
    Map<Double, Bin> pooled = new TreeMap<>();
    calibrations.stream()
        .flatMap(each -> each.bins().stream())
        .forEach(bin -> pooled.merge(bin.low(), bin, Bin::with));
    return List.copyOf(pooled.values());
  }

  private static List<Bin> bins(List<Outcome.StatedBox> all) {
    List<Bin> bins = new ArrayList<>();
    for (int place = 0; place < BINS; place++) {
      int bin = place;
      List<Outcome.StatedBox> inside = all.stream().filter(box -> binOf(box) == bin).toList();
      if (!inside.isEmpty()) {
        double stated =
            inside.stream().mapToDouble(Outcome.StatedBox::probability).average().orElseThrow();
        long hits = inside.stream().filter(Outcome.StatedBox::degraded).count();
        bins.add(
            new Bin(
                bin / (double) BINS,
                (bin + 1) / (double) BINS,
                inside.size(),
                stated,
                hits / (double) inside.size()));
      }
    }
    return bins;
  }

  private static int binOf(Outcome.StatedBox box) {
    return Math.min(BINS - 1, (int) (box.probability() * BINS));
  }
}
