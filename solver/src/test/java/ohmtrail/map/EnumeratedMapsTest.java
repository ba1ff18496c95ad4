package ohmtrail.map;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import ohmtrail.map.search.SearchEffort;
import ohmtrail.survey.Reading;
import ohmtrail.survey.Test;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The search beside an enumeration that shares no code with it. */
class EnumeratedMapsTest {
  private static final double MOST = 0.02;
  private static final double ALMOST_SOUND = 0.999;

  static List<EnumeratedMaps.Volts> volts(DrawnRun run, List<Test> tests) {
    List<EnumeratedMaps.Volts> volts = new ArrayList<>();
    for (int t = 0; t < tests.size(); t++) {
      Test test = tests.get(t);
      int heater = test.loads().isEmpty() ? 0 : run.number(test.loads().get(0).box());
      for (Reading reading : test.readings()) {
        volts.add(new EnumeratedMaps.Volts(t, heater, run.number(reading.box()), reading.value()));
      }
    }
    return volts;
  }

  /** All of them read at each heater, carried along, or half of them read. */
  private static List<Test> survey(DrawnRun run, String kind) {
    List<Integer> order = run.everyBox();
    Collections.shuffle(order, run.random());
    return switch (kind) {
      case "two-walks" -> run.walks(order.subList(0, 2));
      case "carried" -> order.stream().map(box -> run.walk(box, List.of(box))).toList();
      case "half-read" ->
          order.subList(0, 3).stream().map(box -> run.walk(box, order.subList(2, 5))).toList();
      case "idle-and-one" ->
          List.of(run.walk(0, run.everyBox()), run.walk(order.get(0), run.everyBox()));
      default -> throw new IllegalArgumentException(kind);
    };
  }

  private static double farthest(DrawnRun run, MapReport report, EnumeratedMaps enumerated) {
    double most = 0;
    for (int box = 1; box <= run.boxes; box++) {
      BoxFeeders feeders = report.feedersOf(DrawnRun.name(box)).orElseThrow();
      for (int feeder = 0; feeder <= run.boxes; feeder++) {
        double mine = feeders.probabilityOf(DrawnRun.name(feeder));
        most = Math.max(most, Math.abs(mine - enumerated.probability(box, feeder)));
      }
    }
    return most;
  }

  @ParameterizedTest
  @CsvSource({
    "two-walks, 61, true",
    "carried, 62, true",
    "half-read, 63, true",
    "idle-and-one, 64, true",
    "two-walks, 65, false",
    "carried, 66, false",
    "half-read, 67, false"
  })
  void everyFeederOfFiveBoxesIsAsProbableAsByEnumeration(
      String kind, long seed, boolean everyMapIsWeighed) {
    DrawnRun run = new DrawnRun(5, seed);
    List<Test> tests = survey(run, kind);
    SearchEffort effort = SearchEffort.usual().listing(everyMapIsWeighed ? 2000 : 0);

    MapReport report = new MapLocator(effort).map(run.problem(tests, ALMOST_SOUND));
    EnumeratedMaps enumerated = EnumeratedMaps.of(5, volts(run, tests), ALMOST_SOUND, false, seed);

    assertEquals(everyMapIsWeighed, report.search().exact());
    assertEquals(0, farthest(run, report, enumerated), MOST, kind + ", seed " + seed);
  }

  @ParameterizedTest
  @CsvSource({"71, 0", "72, 0.4", "73, 3", "74, 20"})
  void everyFeederOfThreeIsAsProbableWithABadJointSomewhereOrNone(long seed, double ohms) {
    DrawnRun drawn = new DrawnRun(3, seed);
    DrawnRun run = ohms > 0 ? drawn.bad(ohms, ohms) : drawn;
    List<Test> tests = run.walks(run.everyBox().subList(0, 2));

    MapReport report = new MapLocator().map(run.problem(tests, 0.3));
    EnumeratedMaps enumerated = EnumeratedMaps.of(3, volts(run, tests), 0.3, true, seed);

    assertEquals(0, farthest(run, report, enumerated), MOST, ohms + " ohm, seed " + seed);
  }

  @Tag("study")
  @ParameterizedTest
  @CsvSource({"two-walks, 81", "carried, 82"})
  void everyFeederOfSixBoxesIsAsProbableAsByEnumeration(String kind, long seed) {
    DrawnRun run = new DrawnRun(6, seed);
    List<Test> tests = survey(run, kind);

    MapReport report = new MapLocator().map(run.problem(tests, ALMOST_SOUND));
    EnumeratedMaps enumerated = EnumeratedMaps.of(6, volts(run, tests), ALMOST_SOUND, false, seed);

    double farthest = farthest(run, report, enumerated);
    System.out.println("six boxes, " + kind + ": farthest " + farthest + ", seed " + seed);
    assertEquals(0, farthest, MOST, kind + ", seed " + seed);
  }
}
