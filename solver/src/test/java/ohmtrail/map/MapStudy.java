package ohmtrail.map;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * How often the map is right, on runs drawn and read by a model of the tests' own: tees in one of
 * eight, lengths known to a factor of 1.8, 0.4 V of drift between tests, 0.15 V of noise, a display
 * of 0.1 V. What is held is the bar less two standard errors of the sample.
 */
@Tag("study")
class MapStudy {
  private static final long SEED = 20_000;
  private static final double SOUND_PRIOR = 0.3;
  private static final double SOUND = 0.999;
  private static final double STANDARD_ERRORS = 2;
  private static final int BINS = 10;

  private static int cases(int usual) {
    return Integer.getInteger("ohmtrail.cases", usual);
  }

  private static MapReport map(DrawnRun run, List<ohmtrail.survey.Test> tests) {
    return new MapLocator().map(run.problem(tests, SOUND_PRIOR));
  }

  private static MapReport sound(DrawnRun run, List<ohmtrail.survey.Test> tests) {
    return new MapLocator().map(run.problem(tests, SOUND));
  }

  private static DrawnRun exactly(int boxes, int number) {
    return new DrawnRun(boxes, SEED + number, DrawnRun.House.EXACTLY);
  }

  @ParameterizedTest
  @CsvSource({"5, 150, 0.98", "8, 60, 0.97", "12, 12, 0.95"})
  void aHeaterAtEveryBox(int boxes, int usual, double bar) {
    Tally tally = new Tally("heater at every box, " + boxes + " boxes");
    for (int number = 0; number < cases(usual); number++) {
      DrawnRun run = new DrawnRun(boxes, SEED + number);
      tally.add(run, map(run, run.walks(run.everyBox())));
    }
    tally.print();
    tally.requireMaps(bar);
  }

  @Test
  void aHeaterAtTwoBoxesOfFive() {
    Tally tally = new Tally("heater at two boxes, all read, 5 boxes");
    for (int number = 0; number < cases(200); number++) {
      DrawnRun run = exactly(5, number);
      List<Integer> order = run.everyBox();
      Collections.shuffle(order, run.random());
      tally.add(run, sound(run, run.walks(order.subList(0, 2))));
    }
    tally.print();
    tally.requireMaps(0.69);
    tally.requireFeeders(0.86);
    tally.requireCalibrated();
  }

  @Test
  void aHeaterCarriedAlongAndReadWhereItIs() {
    Tally tally = new Tally("heater carried along, read where it is, 5 boxes");
    for (int number = 0; number < cases(200); number++) {
      DrawnRun run = exactly(5, number);
      List<ohmtrail.survey.Test> tests =
          run.everyBox().stream().map(box -> run.walk(box, List.of(box))).toList();
      tally.add(run, sound(run, tests));
    }
    tally.print();
    tally.requireMaps(0.56);
    tally.requireFeeders(0.86);
    tally.requireCalibrated();
  }

  @ParameterizedTest
  @CsvSource({"2, 150, 0.76, 0.91", "3, 150, 0.86, 0.95"})
  void walksRoundWithTheNextHeaterWhereTheFeederIsLeastCertain(
      int walks, int usual, double mapBar, double feederBar) {
    Tally tally =
        new Tally(walks + " walks round, the next heater where least is certain, 5 boxes");
    for (int number = 0; number < cases(usual); number++) {
      DrawnRun run = exactly(5, number);
      List<ohmtrail.survey.Test> tests = new ArrayList<>();
      int heater = 1 + run.random().nextInt(5);
      MapReport report = sound(run, tests);
      List<Integer> left = run.everyBox();
      for (int walk = 0; walk < walks; walk++) {
        left.remove(Integer.valueOf(heater));
        tests.add(run.walk(heater, run.everyBox()));
        report = sound(run, tests);
        heater = leastCertain(report, left);
      }
      tally.add(run, report);
    }
    tally.print();
    tally.requireMaps(mapBar);
    tally.requireFeeders(feederBar);
  }

  private static int leastCertain(MapReport report, List<Integer> left) {
    return left.stream()
        .min(
            Comparator.comparingDouble(
                box ->
                    report.feedersOf(DrawnRun.name(box)).orElseThrow().likeliest().probability()))
        .orElseThrow();
  }

  @ParameterizedTest
  @CsvSource({"4, 200, 1.2", "8, 60, 1.25"})
  void boxesOpenedWithABadJointBesideTheMapGiven(int boxes, int usual, double bar) {
    double unknown = 0;
    double given = 0;
    int count = cases(usual);
    for (int number = 0; number < count; number++) {
      DrawnRun run = new DrawnRun(boxes, SEED + number).bad(0.3, 30);
      List<Integer> order = run.everyBox();
      Collections.shuffle(order, run.random());
      List<ohmtrail.survey.Test> tests = run.walks(order.subList(0, 2));
      unknown += opened(run, map(run, tests));
      given += opened(run, new MapLocator().map(run.problemKnown(tests, SOUND_PRIOR)));
    }
    System.out.printf(
        Locale.ROOT,
        "bad joint, two walks, %d boxes: opened %.3f, with the map given %.3f, ratio %.3f (%d cases, seed %d)%n",
        boxes,
        unknown / count,
        given / count,
        unknown / given,
        count,
        SEED);
    assertTrue(unknown / given <= bar, "ratio " + unknown / given);
  }

  /** Boxes opened by probability until the one with the bad joint: at either end of the cable. */
  private static int opened(DrawnRun run, MapReport report) {
    String bad = run.badBox();
    List<String> order = report.badJoint().boxes().stream().map(BadJoint.Place::box).toList();
    int place = order.indexOf(bad);
    return place < 0 ? order.size() : place + 1;
  }

  private static final class Tally {
    private final String what;
    private int maps;
    private int right;
    private int boxes;
    private int rightFeeders;
    private double claimed;
    private double claimedFeeders;
    private final double[] stated = new double[BINS];
    private final int[] hits = new int[BINS];
    private final int[] counts = new int[BINS];

    Tally(String what) {
      this.what = what;
    }

    void add(DrawnRun run, MapReport report) {
      maps++;
      right += run.isRight(report.likeliest().map()) ? 1 : 0;
      claimed += report.likeliest().probability();
      for (BoxFeeders box : report.boxes()) {
        String truth = DrawnRun.name(run.parents[run.number(box.box())]);
        boxes++;
        boolean isRight = box.likeliest().feeder().equals(truth);
        rightFeeders += isRight ? 1 : 0;
        claimedFeeders += box.likeliest().probability();
        for (int feeder = 0; feeder <= run.boxes; feeder++) {
          double probability = box.probabilityOf(DrawnRun.name(feeder));
          int bin = Math.min(BINS - 1, (int) (BINS * probability));
          stated[bin] += probability;
          hits[bin] += truth.equals(DrawnRun.name(feeder)) ? 1 : 0;
          counts[bin]++;
        }
      }
    }

    void print() {
      System.out.printf(
          Locale.ROOT,
          "%s: map %.3f (claimed %.3f), feeders %.3f (claimed %.3f), %d cases, seed %d%n",
          what,
          right / (double) maps,
          claimed / maps,
          rightFeeders / (double) boxes,
          claimedFeeders / boxes,
          maps,
          SEED);
      StringBuilder bins = new StringBuilder("  stated/right (count):");
      IntStream.range(0, BINS)
          .filter(bin -> counts[bin] > 0)
          .forEach(
              bin ->
                  bins.append(
                      String.format(
                          Locale.ROOT,
                          " %.3f/%.3f (%d)",
                          stated[bin] / counts[bin],
                          hits[bin] / (double) counts[bin],
                          counts[bin])));
      System.out.println(bins);
    }

    private static double slack(double bar, int count) {
      return STANDARD_ERRORS * Math.sqrt(bar * (1 - bar) / count);
    }

    void requireMaps(double bar) {
      assertTrue(right / (double) maps >= bar - slack(bar, maps), what + " " + right + "/" + maps);
    }

    void requireFeeders(double bar) {
      assertTrue(
          rightFeeders / (double) boxes >= bar - slack(bar, maps), what + " " + rightFeeders);
    }

    void requireCalibrated() {
      assertTrue(
          Math.abs(claimedFeeders - rightFeeders) / boxes <= 0.02 + slack(0.87, boxes),
          what + " claimed " + claimedFeeders / boxes);
    }
  }
}
