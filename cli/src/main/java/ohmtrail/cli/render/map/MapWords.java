package ohmtrail.cli.render.map;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import ohmtrail.cli.render.words.Figures;
import ohmtrail.cli.render.words.JointWords;
import ohmtrail.map.BadJoint;
import ohmtrail.map.BoxFeeders;
import ohmtrail.map.MapReport;
import ohmtrail.map.known.RunMap;
import ohmtrail.survey.Finding;

/** The sentences of a map. */
public final class MapWords {
  /** What is less probable is left to the tables. */
  private static final double WORTH_NAMING = 0.05;

  private static final double MORE_LIKELY_THAN_NOT = 0.5;

  /** How much it heats is known once the map is. */
  private static final String DANGER =
      "Leave this breaker off but for readings: a bad joint heats under load. ";

  private static final int MOST_NAMED = 3;

  private final MapReport report;

  /**
   * @param report what is believed
   */
  public MapWords(MapReport report) {
    this.report = report;
  }

  /** The answer in a sentence or two. */
  public String headline() {
    int boxes = report.boxes().size();
    long settled = report.boxes().stream().filter(BoxFeeders::isSettled).count();
    String map = Figures.probability(report.likeliest().probability());
    if (report.problem().survey().readingCount() == 0) {
      return "Nothing was read: any map is as likely as the next that what is known leaves.";
    }
    if (settled == boxes) {
      return "It is settled what feeds every box; the map as a whole has " + map + ".";
    }
    return "What feeds "
        + settled
        + " of "
        + boxes
        + " boxes is settled ("
        + Figures.wholeShare(BoxFeeders.SETTLED)
        + " or more); the most probable map as a whole has "
        + map
        + ".";
  }

  /** What else may feed each box that is not settled. */
  public List<String> open() {
    return report.boxes().stream()
        .filter(feeders -> !feeders.isSettled())
        .map(
            feeders ->
                feeders.box()
                    + ": fed from "
                    + JointWords.listed(
                        feeders.feeders().stream()
                            .filter(share -> share.probability() >= WORTH_NAMING)
                            .limit(MOST_NAMED)
                            .map(MapWords::share)
                            .toList(),
                        "or"))
        .toList();
  }

  private static String share(BoxFeeders.Share share) {
    return share.feeder() + " (" + Figures.probability(share.probability()) + ")";
  }

  /** The boxes that read alike. */
  public List<String> alike() {
    return report.alike().stream()
        .map(
            boxes ->
                "Nothing read tells between "
                    + JointWords.listed(boxes, "and")
                    + ": they may change places.")
        .toList();
  }

  /** The outlets that are not on this circuit. */
  public List<String> foreign() {
    return report.foreign().stream()
        .map(
            box ->
                box
                    + " is probably on another circuit ("
                    + report
                        .feedersOf(box)
                        .map(feeders -> feeders.probabilityOf(RunMap.ANOTHER_CIRCUIT))
                        .map(Figures::probability)
                        .orElse("")
                    + "). Switch this breaker off and see whether it stays live.")
        .toList();
  }

  /** Where a joint may be bad, whichever map is right. */
  public String joint() {
    BadJoint bad = report.badJoint();
    if (bad.soundProbability() >= MORE_LIKELY_THAN_NOT) {
      return "Probably no joint is bad ("
          + Figures.probability(bad.soundProbability())
          + "), whichever map is right.";
    }
    Optional<String> stretches =
        listed(
            bad.stretches().stream()
                .filter(stretch -> stretch.probability() >= WORTH_NAMING)
                .limit(MOST_NAMED)
                .map(
                    stretch ->
                        "between "
                            + stretch.feeder()
                            + " and "
                            + stretch.box()
                            + " ("
                            + Figures.probability(stretch.probability())
                            + ")")
                .toList());
    Optional<String> boxes =
        listed(
            bad.boxes().stream()
                .filter(place -> place.probability() >= WORTH_NAMING)
                .limit(MOST_NAMED)
                .map(
                    place ->
                        (place.box().equals(Finding.SUPPLY) ? "the supply" : place.box())
                            + " ("
                            + Figures.probability(place.probability())
                            + ")")
                .toList());
    return DANGER
        + "A joint is probably bad (no bad joint: "
        + Figures.probability(bad.soundProbability())
        + ")"
        + stretches.map(words -> ", most likely " + words).orElse("")
        + ", whichever map is right"
        + boxes.map(words -> "; by box: " + words).orElse("")
        + ".";
  }

  private static Optional<String> listed(List<String> words) {
    return words.isEmpty() ? Optional.empty() : Optional.of(JointWords.listed(words, "or"));
  }

  /** How the answer was found. */
  public List<String> search() {
    MapReport.Search search = report.search();
    List<String> words = new ArrayList<>();
    words.add(
        search.exact()
            ? "Every map that what is known leaves was weighed: " + search.mapsWeighed() + "."
            : search.mapsWeighed()
                + " maps were weighed, found by climbing and by a sampler that drew "
                + search.drawn()
                + " (seed "
                + search.seed()
                + "): not every map there is.");
    if (search.readingsLeftOut() > 0) {
      words.add(
          search.readingsLeftOut()
              + " readings have no part in it: they are of a kind that the model of maps has not.");
    }
    return words;
  }

  /** A map in a line: every box behind the one that feeds it. */
  static String inLine(RunMap map) {
    return String.join(
        ", ", map.feeds().stream().map(feed -> feed.feeder() + " > " + feed.box()).toList());
  }
}
