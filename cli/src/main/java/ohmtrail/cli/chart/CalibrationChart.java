package ohmtrail.cli.chart;

import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;

/**
 * Whether stated probabilities keep their word: of the answers given with 70 %, seven in ten should
 * be right.
 *
 * @param title what was scored
 * @param bins answers of about the same stated probability, from low to high
 */
public record CalibrationChart(String title, List<Bin> bins) implements Chart {
  /** Coverage of the intervals drawn. */
  public static final double COVERAGE = 0.9;

  /** Copies the list. */
  public CalibrationChart {
    bins = List.copyOf(bins);
  }

  /**
   * Answers of about the same stated probability.
   *
   * @param low least probability that falls in here
   * @param high greatest
   * @param count how many answers do; where none does, the next two mean nothing
   * @param stated their mean stated probability
   * @param observed the share of them that was right
   */
  public record Bin(double low, double high, long count, double stated, double observed) {
    /** The 0.95 quantile of the standard normal distribution. */
    private static final double NORMAL_QUANTILE = 1.6448536269514722;

    /** Rejects what is no probability. */
    public Bin {
      if (!(low >= 0 && low < high && high <= 1) || count < 0) {
        throw new IllegalArgumentException(
            "Bin ("
                + low
                + " to "
                + high
                + ", "
                + count
                + " answers) must lie within 0 to 1"
                + " and not hold fewer than none\nMaybe it was given in per cent.");
      }
      requireProbability("Mean stated probability", stated);
      requireProbability("Share that was right", observed);
    }

    private static void requireProbability(String what, double value) {
      if (!(value >= 0 && value <= 1)) {
        throw new IllegalArgumentException(
            what + " (" + value + ") must lie within 0 to 1\nMaybe it was given in per cent.");
      }
    }

    /**
     * Lower end of the {@value CalibrationChart#COVERAGE} score interval for the share that is
     * right (E. B. Wilson, J. Am. Stat. Assoc. 22, 1927, from memory); 0 for an empty bin.
     */
    public double lowest() {
      return count == 0 ? 0 : Math.max(0, centre() - halfWidth());
    }

    /** Upper end of the same interval; 1 for an empty bin. */
    public double highest() {
      return count == 0 ? 1 : Math.min(1, centre() + halfWidth());
    }

    private double centre() {
      return (observed + NORMAL_QUANTILE * NORMAL_QUANTILE / (2 * count)) / shrinkage();
    }

    private double halfWidth() {
      double scatter = observed * (1 - observed) / count;
      double own = NORMAL_QUANTILE / (2 * count);
      return NORMAL_QUANTILE * Math.sqrt(scatter + own * own) / shrinkage();
    }

    private double shrinkage() {
      return 1 + NORMAL_QUANTILE * NORMAL_QUANTILE / count;
    }
  }

  /** The bins that hold answers. */
  List<Bin> filled() {
    return bins.stream().filter(bin -> bin.count() > 0).toList();
  }

  @Override
  public String description() {
    String figures =
        filled().stream().map(CalibrationChart::words).collect(Collectors.joining("; "));
    return filled().isEmpty()
        ? "No answers were scored."
        : "How often answers were right, by the probability stated with them: " + figures + ".";
  }

  private static String words(Bin bin) {
    return String.format(
        Locale.ROOT,
        "stated %.0f %%, right %.0f %% (90 %% interval %.0f to %.0f %%) of %d",
        100 * bin.stated(),
        100 * bin.observed(),
        100 * bin.lowest(),
        100 * bin.highest(),
        bin.count());
  }
}
