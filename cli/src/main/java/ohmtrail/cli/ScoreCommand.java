package ohmtrail.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.Iterator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.stream.Collectors;
import ohmtrail.cli.chart.CalibrationChart;
import ohmtrail.cli.chart.ChartFile;
import ohmtrail.cli.file.WholeFile;
import ohmtrail.cli.names.Names;
import ohmtrail.cli.render.json.GameJson;
import ohmtrail.cli.render.json.ScoreJson;
import ohmtrail.cli.render.text.GameText;
import ohmtrail.cli.render.text.ScoreText;
import ohmtrail.cli.terminal.Progress;
import ohmtrail.cli.terminal.Waiting;
import ohmtrail.practice.Population;
import ohmtrail.practice.Practice;
import ohmtrail.practice.exact.Oracle;
import ohmtrail.practice.score.Calibration;
import ohmtrail.practice.score.Comparison;
import ohmtrail.practice.score.GameScore;
import ohmtrail.practice.score.GameScorer;
import ohmtrail.practice.score.GameStudy;
import ohmtrail.practice.score.Scorer;
import ohmtrail.practice.score.Study;
import ohmtrail.reference.Assumptions;
import ohmtrail.reference.Minutes;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;

/** Scores the locator on circuits made up by chance. */
@Command(
    name = "score",
    description =
        "Draws circuits, faults and readings by chance, locates the faults and holds the answers"
            + " against the truth: boxes opened, beside a rule of thumb and an exact calculation on"
            + " the same circuits; how often box, joint and conductor are right; whether stated"
            + " probabilities keep their word. Or plays the whole search on them, from the"
            + " complaint to the joint.",
    footer = {
      "  ohmtrail score loose slight --cases 500 --chart calibration.svg",
      "  ohmtrail score as-assumed --cases 20 --oracle 0 --write practice",
      "  ohmtrail score loose slight --game --cases 100"
    })
final class ScoreCommand extends AnsweringCommand {
  private static final List<String> USUAL =
      List.of("loose", "loose-half-read", "slight", "charred", "healthy", "as-assumed");

  private static final List<String> USUAL_GAMES = List.of("loose", "slight");

  private static final int MOST_OFFERED = 4;
  private static final int MOST_IN_TITLE = 2;

  /** More would be a slip: that many take weeks. */
  private static final int MOST_CASES = 1_000_000;

  private static final int MOST_THREADS = 256;

  /** A Java that is told of less by its container is mostly told too little. */
  private static final int FEWEST_CORES = 2;

  @Parameters(
      paramLabel = "POPULATION",
      completionCandidates = Presets.class,
      description = {
        "What is drawn; several may be named. Usually: loose loose-half-read slight charred healthy"
            + " as-assumed; of games, loose slight.",
        "There are: ${COMPLETION-CANDIDATES}."
      })
  private List<String> names = List.of();

  @Option(
      names = "--cases",
      paramLabel = "N",
      description = "Circuits of each population (${DEFAULT-VALUE}).")
  private int cases = 200;

  @Option(
      names = "--seed",
      paramLabel = "NUMBER",
      description = "The same number draws the same circuits (${DEFAULT-VALUE}).")
  private long seed = 1;

  @Option(
      names = "--threads",
      paramLabel = "N",
      description = "Circuits at a time; the result is the same (as many as cores, at least 2).")
  private int threads = Math.max(FEWEST_CORES, Runtime.getRuntime().availableProcessors());

  @Option(
      names = "--game",
      description = {
        "Play the whole search instead, taking the advised readings: minutes, boxes opened and harm"
            + " done, beside half-split probing and beside reading everything first."
      })
  private boolean game;

  @Option(
      names = "--oracle",
      paramLabel = "N",
      description = "Ask the exact calculation, slow, on the first N of them (${DEFAULT-VALUE}).")
  private int oracleCases = 0;

  @Option(
      names = "--chart",
      paramLabel = "FILE",
      description = "Also draw stated against observed probability into FILE, .svg or .png.")
  private @Nullable Path chart;

  @Option(
      names = "--write",
      paramLabel = "DIRECTORY",
      description = "Also write each circuit as a case file, with the truth in a file beside it.")
  private @Nullable Path directory;

  /** Names to choose from. */
  private static final class Presets implements Iterable<String> {
    @Override
    public Iterator<String> iterator() {
      return all().iterator();
    }

    static List<String> all() {
      return Population.presets().stream().map(Population::name).toList();
    }
  }

  /** How many circuits are done says more than how long it took. */
  @Override
  Waiting waiting() {
    return new Waiting(Progress.nowhere(), spec().name());
  }

  @Override
  void requireSound() {
    requireWithin("Cases", cases, 1, MOST_CASES);
    requireWithin("Threads", threads, 1, MOST_THREADS);
    requireWithin("Cases for the exact calculation", oracleCases, 0, cases);
    if (chart != null) {
      ChartOption.requireKnownEnding(chart, spec());
    }
    List<Population> populations = populations();
    if (game) {
      requireGames(populations);
    }
  }

  private void requireGames(List<Population> populations) {
    if (oracleCases > 0 || chart != null) {
      throw new ParameterException(
          spec().commandLine(),
          (chart != null ? "Chart (" + chart + ")" : "Exact calculation (" + oracleCases + ")")
              + " must not be asked of a game: it is of the ranking."
              + "\nMaybe leave --game out, or play in a call of its own.");
    }
    populations.stream()
        .filter(population -> !GameScorer.hasGame(population))
        .findFirst()
        .ifPresent(
            without -> {
              throw new ParameterException(
                  spec().commandLine(),
                  "Population ("
                      + without.name()
                      + ") must have one bad joint in each circuit, which is as stated, to play on."
                      + "\nMaybe one of these: "
                      + String.join(", ", USUAL_GAMES)
                      + ".");
            });
  }

  private void requireWithin(String what, int value, int least, int most) {
    if (value < least || value > most) {
      throw new ParameterException(
          spec().commandLine(),
          what + " (" + value + ") must be from " + least + " to " + most + ".");
    }
  }

  private List<Population> populations() {
    List<String> usual = game ? USUAL_GAMES : USUAL;
    return new LinkedHashSet<>(names.isEmpty() ? usual : names)
        .stream().map(this::population).toList();
  }

  private Population population(String name) {
    return Population.named(name)
        .orElseThrow(
            () ->
                new ParameterException(
                    spec().commandLine(),
                    "Population ("
                        + name
                        + ") must be one of those there are.\nMaybe one of these: "
                        + new Names(Presets.all())
                            .nearestFirst(name)
                            .limit(MOST_OFFERED)
                            .collect(Collectors.joining(", "))
                        + "."));
  }

  @Override
  void answer(Form form, PrintWriter out) throws IOException {
    if (directory != null) {
      PracticeFiles files = PracticeFiles.in(directory);
      for (Population population : populations()) {
        files.write(practice(population), seed, cases);
      }
    }
    if (game) {
      GameStudy study = new GameStudy(seed, cases, populations().stream().map(this::play).toList());
      out.print(form == Form.JSON ? GameJson.of(study) : GameText.of(study));
    } else {
      Study study = new Study(seed, cases, populations().stream().map(this::compare).toList());
      out.print(form == Form.JSON ? ScoreJson.of(study) : ScoreText.of(study));
      if (chart != null) {
        Drawing.draw(chart, study);
      }
    }
  }

  private Practice practice(Population population) {
    return new Practice(population, Assumptions.defaults(), seed);
  }

  private Comparison compare(Population population) {
    Progress progress = progress();
    int all = cases + (Oracle.of(population).isPresent() ? oracleCases : 0);
    try {
      return new Scorer(practice(population), cases, threads)
          .compare(oracleCases, done -> progress.tell(population.name(), done, all));
    } finally {
      progress.end();
    }
  }

  private GameScore play(Population population) {
    Progress progress = progress();
    try {
      return new GameScorer(
              population, Assumptions.defaults(), Minutes.defaults(), seed, cases, threads)
          .play(done -> progress.tell(population.name(), done, cases));
    } finally {
      progress.end();
    }
  }

  /** Apart, so that nothing of the charts is loaded where none is asked for. */
  private static final class Drawing {
    static void draw(Path file, Study study) throws IOException {
      CalibrationChart chart =
          new CalibrationChart(
              "Stated and observed probability: " + words(study.names()),
              study.bins().stream().map(Drawing::bin).toList());
      WholeFile.write(file, whole -> ChartFile.write(chart, whole));
    }

    private static String words(List<String> names) {
      return names.size() <= MOST_IN_TITLE
          ? String.join(", ", names)
          : names.size() + " populations together";
    }

    private static CalibrationChart.Bin bin(Calibration.Bin bin) {
      return new CalibrationChart.Bin(
          bin.low(), bin.high(), bin.boxes(), bin.meanStated(), bin.frequency());
    }
  }
}
