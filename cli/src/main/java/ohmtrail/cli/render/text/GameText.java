package ohmtrail.cli.render.text;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import java.util.function.ToIntFunction;
import ohmtrail.cli.render.words.Figures;
import ohmtrail.practice.score.GameScore;
import ohmtrail.practice.score.GameStudy;
import ohmtrail.practice.score.Mean;
import ohmtrail.practice.score.Ratio;
import ohmtrail.practice.score.Tally;
import ohmtrail.practice.search.Way;

/** How the ways to search do, as text. */
public final class GameText {
  private final GameStudy study;
  private final Page page = new Page();

  private GameText(GameStudy study) {
    this.study = study;
  }

  /** Writes it. */
  public static String of(GameStudy study) {
    return new GameText(study).write();
  }

  private String write() {
    page.paragraph(
        "Searched on "
            + study.games()
            + " drawn circuits of each population, seed "
            + study.seed()
            + ", from the complaint alone until the bad joint is seen. Every way is tried on the"
            + " same circuits.");
    page.gap();
    for (Way way : Way.values()) {
      page.item(word(way) + ": " + meaning(way));
    }
    writeComplaints();
    write("Minutes until the joint is seen", "mean and its standard error", Tally::minutes);
    writeRatios();
    write("Boxes opened", "the one with the joint among them", Tally::boxes);
    write("Readings taken", "each display that was written down", Tally::readings);
    writeHarms();
    return page.toString();
  }

  private static String word(Way way) {
    return switch (way) {
      case ADVICE -> "advice";
      case HALF_SPLIT -> "half-split";
      case EVERYTHING_FIRST -> "all first";
    };
  }

  private static String meaning(Way way) {
    return switch (way) {
      case ADVICE -> "what next says, step by step";
      case HALF_SPLIT ->
          "before and under a heater at the middle of what is left, and so on; then the boxes that"
              + " are left, at random";
      case EVERYTHING_FIRST ->
          "every receptacle with every meter and under a heater; then the boxes as locate ranks"
              + " them";
    };
  }

  private void writeComplaints() {
    Table table = new Table().words("").words("");
    study.scores().forEach(score -> table.row(score.population().name(), score.complaint().text()));
    page.heading("The complaint").table(table);
  }

  private void write(String heading, String meaning, Function<Tally, Mean> figure) {
    Table table = new Table().words("");
    for (Way way : Way.values()) {
      table.numbers(word(way));
    }
    for (GameScore score : study.scores()) {
      List<String> cells = new ArrayList<>(List.of(score.population().name()));
      for (Way way : Way.values()) {
        Mean mean = figure.apply(score.of(way));
        cells.add(
            Figures.hundredths(mean.value()) + " +-" + Figures.hundredths(mean.standardError()));
      }
      table.row(cells);
    }
    page.heading(heading).indented(meaning).table(table);
  }

  private void writeRatios() {
    Table table = new Table().words("");
    for (Way way : GameScore.BESIDE_ADVICE) {
      table.numbers("advice : " + word(way));
    }
    for (GameScore score : study.scores()) {
      List<String> cells = new ArrayList<>(List.of(score.population().name()));
      for (Way way : GameScore.BESIDE_ADVICE) {
        Ratio ratio = score.minutesOfAdviceBeside(way);
        cells.add(
            Figures.hundredths(ratio.value()) + " +-" + Figures.hundredths(ratio.standardError()));
      }
      table.row(cells);
    }
    page.heading("Minutes of the advice for each of another way")
        .indented("on the same circuits; below 1 the advice is quicker")
        .table(table);
  }

  private void writeHarms() {
    Table table = new Table().words("").words("");
    for (Way way : Way.values()) {
      table.numbers(word(way));
    }
    for (GameScore score : study.scores()) {
      count(table, score, "harmful tests", Tally::harms);
      count(table, score, "called sound", Tally::wrongStops);
    }
    page.heading("What went wrong, in all " + study.games() + " searches of each row")
        .indented(
            "harmful tests: under the true fault they tripped, overvolted or overheated something;"
                + " called sound: the search stopped although a joint was bad, and somebody had to"
                + " come back")
        .table(table);
  }

  private static void count(
      Table table, GameScore score, String what, ToIntFunction<Tally> figure) {
    List<String> cells = new ArrayList<>(List.of(score.population().name(), what));
    for (Way way : Way.values()) {
      cells.add(Integer.toString(figure.applyAsInt(score.of(way))));
    }
    table.row(cells);
  }
}
