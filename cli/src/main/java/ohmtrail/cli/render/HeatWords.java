package ohmtrail.cli.render;

import java.util.Optional;
import java.util.stream.Collectors;
import ohmtrail.cli.render.words.Figures;
import ohmtrail.report.heat.Heat;
import ohmtrail.report.heat.HeatLimit;
import ohmtrail.report.heat.HeatRange;
import ohmtrail.report.heat.PublishedHeat;
import ohmtrail.report.heat.SuspectHeat;

/** Heat in words: what was made in a test first, what could be made second. */
public final class HeatWords {
  /** Bounds further apart than this leave nothing to call an estimate. */
  private static final double WIDEST_FACTOR = 30;

  /** A joint is said to lie perhaps before the panel from this probability on. */
  private static final double WORTH_TELLING = 0.05;

  /** A current within this share of a rating is written as that rating. */
  private static final double SAME_CURRENT = 1e-3;

  private static final String OPEN =
      "Open, it carries no current and makes none while it stays so, but it may have been hot"
          + " before it opened; one that makes contact now and then arcs.";

  private HeatWords() {}

  /** All that is known of the heat in a suspect, with the published figures. */
  public static String of(SuspectHeat heat) {
    return sentences(heat) + " " + published();
  }

  private static String sentences(SuspectHeat heat) {
    String made =
        heat.measured()
            .map(inTest -> "In test " + inTest.test() + " it made " + amount(inTest.heat()) + ".")
            .orElse("No load was on in these tests, so that next to no current heated it.");
    return made + " " + could(heat) + (heat.mayBeOpen() ? " " + OPEN : "");
  }

  /** "303 W (275 to 331 W), 10.2 A through 2.9 ohm"; "anything up to 7 W". */
  private static String amount(HeatRange range) {
    String bounds = bounds(range);
    return estimate(range)
        .map(
            heat ->
                Figures.watts(heat.watts())
                    + " ("
                    + bounds
                    + "), "
                    + Figures.amperes(heat.amperes())
                    + " through "
                    + Figures.ohms(heat.ohms()))
        .orElse("anything from " + bounds);
  }

  private static String bounds(HeatRange range) {
    return Figures.watts(range.least().watts()) + " to " + Figures.watts(range.most().watts());
  }

  /** The heat at the estimate of the ohms, where that says anything. */
  private static Optional<Heat> estimate(HeatRange range) {
    return range.most().watts() > WIDEST_FACTOR * range.least().watts()
        ? Optional.empty()
        : range.estimate();
  }

  private static String could(SuspectHeat heat) {
    HeatLimit limit = heat.limit();
    Heat worst = estimate(heat.could()).orElse(heat.could().most());
    String amount =
        estimate(heat.could())
            .map(each -> Figures.watts(each.watts()) + " (" + bounds(heat.could()) + ")")
            .orElse("up to " + Figures.watts(worst.watts()));
    return "With more on it could make " + amount + current(worst, limit) + "." + beforePanel(heat);
  }

  private static String beforePanel(SuspectHeat heat) {
    if (heat.limit().by() == HeatLimit.By.SERVICE) {
      return " All that this panel feeds flows through it.";
    }
    return heat.beforePanel() < WORTH_TELLING
        ? ""
        : " It may lie before the panel ("
            + Figures.probability(heat.beforePanel())
            + "), where this breaker off does not unload it.";
  }

  /** " at 15 A, this breaker's rating". */
  private static String current(Heat worst, HeatLimit limit) {
    double below = limit.ratedAmperes() - worst.amperes();
    boolean atRating = below < SAME_CURRENT * limit.ratedAmperes();
    return " at "
        + Figures.amperes(worst.amperes())
        + switch (limit.by()) {
          case BREAKER -> atRating ? ", this breaker's rating" : "";
          case SERVICE -> atRating ? ", taken as the service's rating" : "";
        };
  }

  /** Watts in half a sentence, for a list. */
  public static String brief(SuspectHeat heat) {
    return heat.measured()
        .map(
            inTest ->
                estimate(inTest.heat())
                        .map(each -> Figures.watts(each.watts()))
                        .orElse("up to " + Figures.watts(inTest.heat().most().watts()))
                    + " in test "
                    + inTest.test())
        .orElseGet(
            () ->
                "could make "
                    + estimate(heat.could())
                        .map(each -> Figures.watts(each.watts()))
                        .orElse("up to " + Figures.watts(heat.could().most().watts())));
  }

  /** The worst at ohms that are supposed. */
  public static String supposed(Heat worst, HeatLimit limit) {
    if (Double.isInfinite(worst.ohms())) {
      return OPEN;
    }
    return Figures.ohms(worst.ohms())
        + " could make "
        + Figures.watts(worst.watts())
        + current(worst, limit)
        + ". "
        + published();
  }

  private static String published() {
    return "For comparison, glowing connections in tests reached "
        + PublishedHeat.ALL.stream()
            .map(each -> Figures.watts(each.watts()) + " at " + Figures.amperes(each.amperes()))
            .collect(Collectors.joining(" and "))
        + ", and no fuse, breaker or GFCI operated ("
        + PublishedHeat.SOURCE
        + ").";
  }
}
