package ohmtrail.cli.report;

import java.util.List;
import ohmtrail.cli.render.words.Figures;

/**
 * Words for how strongly readings support one proposition against another, by the Bayes factor: the
 * verbal scale of the ENFSI Guideline for Evaluative Reporting in Forensic Science (2015), from
 * memory. They say nothing of how probable either is.
 *
 * @param least the least Bayes factor of the range
 * @param words the support
 */
public record Strength(double least, String words) {
  /** Every range, the strongest first. */
  public static final List<Strength> SCALE =
      List.of(
          new Strength(1e6, "extremely strong support"),
          new Strength(1e4, "very strong support"),
          new Strength(1e3, "strong support"),
          new Strength(1e2, "moderately strong support"),
          new Strength(10, "moderate support"),
          new Strength(2, "weak support"),
          new Strength(0, "no support"));

  /** The range of a Bayes factor of at least one. */
  public static Strength of(double bayesFactor) {
    return SCALE.stream().filter(each -> bayesFactor >= each.least()).findFirst().orElseThrow();
  }

  /** A Bayes factor in words and figures. */
  public static String said(double bayesFactor) {
    return of(bayesFactor).words() + " (Bayes factor " + figure(bayesFactor) + ")";
  }

  /** A Bayes factor to two digits. */
  static String figure(double bayesFactor) {
    return bayesFactor >= 1e6 ? "above a million" : Figures.twoDigits(bayesFactor);
  }
}
