package ohmtrail.cli.chart;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import ohmtrail.cli.chart.ProfileChart.Line;
import ohmtrail.cli.chart.ProfileChart.Panel;
import ohmtrail.cli.chart.ProfileChart.Place;
import ohmtrail.cli.chart.ProfileChart.Point;
import ohmtrail.cli.chart.ProfileChart.ReadingMark;
import ohmtrail.cli.chart.ProfileChart.Readings;
import ohmtrail.cli.render.words.Figures;
import ohmtrail.cli.render.words.Region;

/**
 * A profile in words: every line and every reading with its figures.
 *
 * @param region units
 * @param places the boxes
 */
record ProfileWords(Region region, List<Place> places) {

  String of(String sentence, List<Panel> panels) {
    List<String> sentences = new ArrayList<>();
    double farthest = places.stream().mapToDouble(Place::metres).max().orElse(0);
    sentences.add(
        "Voltages along a run of "
            + places.size()
            + " boxes from "
            + places.get(0).box()
            + ", "
            + region.length(farthest)
            + " to the farthest");
    sentences.add(sentence);
    panels.forEach(panel -> sentences.add(words(panel)));
    return String.join(". ", sentences) + ".";
  }

  private static String words(Panel panel) {
    List<String> parts = new ArrayList<>();
    panel.lines().forEach(line -> parts.add(words(line)));
    panel.readings().forEach(readings -> parts.add(words(readings)));
    return panel.quantity() + "; " + String.join("; ", parts);
  }

  private static String words(Line line) {
    return line.branches().stream()
        .flatMap(branch -> branch.points().stream())
        .distinct()
        .map(ProfileWords::words)
        .collect(Collectors.joining(", ", line.word() + ", " + line.arrangement() + ": ", ""));
  }

  private static String words(Point point) {
    return point.box() + " " + Figures.volts(point.volts());
  }

  private static String words(Readings readings) {
    return readings.marks().stream()
        .map(ProfileWords::words)
        .collect(Collectors.joining(", ", "read, " + readings.arrangement() + ": ", ""));
  }

  /** A reading with its bounds. */
  static String words(ReadingMark mark) {
    return mark.box()
        + " "
        + Figures.volts(mark.volts())
        + " ("
        + Figures.volts(mark.volts() - mark.below())
        + " to "
        + Figures.volts(mark.volts() + mark.above())
        + ")";
  }
}
