package ohmtrail.report;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import ohmtrail.locate.Suspect;
import ohmtrail.report.heat.HeatLimit;
import ohmtrail.report.heat.PublishedHeat;
import ohmtrail.report.heat.SuspectHeat;

/**
 * What comes before everything else: a likely joint that can start a fire.
 *
 * @param suspect where
 * @param heat how hot
 */
public record Danger(Suspect suspect, SuspectHeat heat) {
  /**
   * From here on a joint is told of first: the lesser of the two published figures of a glowing
   * connection ({@link PublishedHeat}). Watts.
   */
  private static final double WORTH_TELLING_FIRST =
      PublishedHeat.ALL.stream().mapToDouble(PublishedHeat::watts).min().orElseThrow();

  /** A suspect less likely than this is no reason to switch a circuit off. */
  private static final double LIKELY = 0.2;

  static Optional<Danger> of(List<Report.RankedSuspect> suspects) {
    return suspects.stream()
        .filter(ranked -> ranked.suspect().probability() >= LIKELY)
        .flatMap(ranked -> ranked.heat().map(heat -> new Danger(ranked.suspect(), heat)).stream())
        .filter(danger -> danger.watts() >= WORTH_TELLING_FIRST)
        .max(Comparator.comparingDouble(Danger::watts));
  }

  private double watts() {
    return heat.could().most().watts();
  }

  /** Whether the joint most probably lies before the panel: this circuit's breaker is no help. */
  public boolean isBeforePanel() {
    return heat.limit().by() == HeatLimit.By.SERVICE;
  }
}
