package ohmtrail.cli.render.map;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import ohmtrail.cli.render.text.Page;
import ohmtrail.cli.render.words.Figures;
import ohmtrail.cli.render.words.Region;
import ohmtrail.map.BoxFeeders;
import ohmtrail.map.EstimatedCable;
import ohmtrail.map.MapReport;
import ohmtrail.map.known.RunMap;

/**
 * The most probable map as a tree of lines: a box straight below the one that feeds it, moved in
 * where more than one is fed. Before each stands a question mark where its feeder is not settled,
 * behind it the probability of that feeder and the length of the cable.
 */
final class MapTree {
  private static final String FORK = "|- ";
  private static final String LAST = "`- ";
  private static final String PASSING = "|  ";
  private static final String BLANK = "   ";

  private static final int LONGEST_NAME = 24;

  private final MapReport report;
  private final Region region;
  private final List<Line> lines = new ArrayList<>();

  /**
   * A line of the tree.
   *
   * @param start what stands before the name
   * @param box the box
   */
  private record Line(String start, String box) {
    String name() {
      return start
          + (box.length() <= LONGEST_NAME ? box : box.substring(0, LONGEST_NAME - 1) + "~");
    }
  }

  private MapTree(MapReport report, Region region) {
    this.report = report;
    this.region = region;
  }

  /** Draws it on a page. */
  static void draw(MapReport report, Region region, Page page) {
    new MapTree(report, region).draw(page);
  }

  private void draw(Page page) {
    layOut();
    int widest = lines.stream().mapToInt(line -> line.name().length()).max().orElse(0);
    for (Line line : lines) {
      page.line(
          "  " + line.name() + " ".repeat(widest - line.name().length()) + figures(line.box()));
    }
  }

  /** By a list of what is left and not by recursion. */
  private void layOut() {
    RunMap map = report.likeliest().map();
    Deque<Line> pending = new ArrayDeque<>();
    Deque<String> indents = new ArrayDeque<>();
    pending.push(new Line("", report.problem().run().panel().name()));
    indents.push("");
    while (!pending.isEmpty()) {
      Line next = pending.pop();
      String indent = indents.pop();
      lines.add(next);
      List<String> fed = map.fedBy(next.box());
      for (int f = fed.size() - 1; f >= 0; f--) {
        boolean last = f == fed.size() - 1;
        boolean alone = fed.size() == 1;
        pending.push(new Line(indent + (alone ? "" : last ? LAST : FORK), fed.get(f)));
        indents.push(alone ? indent : indent + (last ? BLANK : PASSING));
      }
    }
  }

  private String figures(String box) {
    Optional<BoxFeeders> feeders = report.feedersOf(box);
    if (feeders.isEmpty()) {
      return "";
    }
    String sure =
        String.format(
            Locale.ROOT,
            "  %6s %s",
            Figures.probability(feeders.get().likeliest().probability()),
            feeders.get().isSettled() ? " " : "?");
    return sure + cable(box).map(cable -> "  " + length(cable)).orElse("");
  }

  private Optional<EstimatedCable> cable(String box) {
    return report.cables().stream().filter(cable -> cable.box().equals(box)).findFirst();
  }

  private String length(EstimatedCable cable) {
    return cable.isMeasured()
        ? "about " + region.length(cable.metres().value())
        : "length not known";
  }
}
