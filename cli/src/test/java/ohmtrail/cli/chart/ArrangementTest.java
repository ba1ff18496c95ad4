package ohmtrail.cli.chart;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.Optional;
import ohmtrail.report.profile.Arrangement;
import ohmtrail.survey.LoadInUse;
import org.junit.jupiter.api.Test;

class ArrangementTest {

  private static List<Arrangement> of(InventedRun run) {
    return Arrangement.of(run.survey());
  }

  @Test
  void aHeaterCarriedFromBoxToBoxIsOneArrangement() {
    InventedRun run = InventedRun.northAmerican().chain(4, 5);
    List<Arrangement> all = of(run.carry(InventedRun.HEATER, run.receptacles()));
    assertEquals(1, all.size());
    assertEquals(Optional.of(InventedRun.HEATER), all.get(0).carried());
    assertEquals(8, all.get(0).readings().size());
    assertEquals(4, all.get(0).boxes());
    assertEquals(
        List.of(new LoadInUse(InventedRun.HEATER, "hall-3")), all.get(0).loadsFor("hall-3"));
  }

  @Test
  void aHeaterReadAtASingleBoxStaysWhereItIs() {
    InventedRun run = InventedRun.northAmerican().chain(4, 5);
    List<Arrangement> all = of(run.carry(InventedRun.HEATER, List.of("hall-4")));
    assertEquals(Optional.empty(), all.get(0).carried());
    assertEquals("heater (1500 W) at hall-4", ArrangementWords.of(all.get(0), run.survey()));
  }

  @Test
  void aLoadThatStaysOnIsToldFromTheOneCarried() {
    InventedRun run = InventedRun.northAmerican().chain(4, 5);
    for (String box : List.of("hall-2", "hall-3")) {
      run.read(
          "heater " + box,
          List.of(
              new LoadInUse(InventedRun.LAMP, "hall-1"), new LoadInUse(InventedRun.HEATER, box)),
          InventedRun.DMM,
          List.of(box));
    }
    List<Arrangement> all = of(run);
    assertEquals(1, all.size());
    assertEquals(
        "heater (1500 W) at the box read + lamp (60 W) at hall-1 (2 tests)",
        ArrangementWords.of(all.get(0), run.survey()));
    assertEquals(1560, all.get(0).watts());
  }

  @Test
  void repeatedTestsJoinAndTheOrderOfLoadsDoesNotMatter() {
    LoadInUse lamp = new LoadInUse(InventedRun.LAMP, "hall-1");
    LoadInUse heater = new LoadInUse(InventedRun.HEATER, "hall-2");
    InventedRun run =
        InventedRun.northAmerican()
            .chain(3, 5)
            .read("morning", List.of(lamp, heater), InventedRun.DMM, List.of("hall-3"))
            .read("evening", List.of(heater, lamp), InventedRun.DMM, List.of("hall-3"));
    assertEquals(1, of(run).size());
    assertEquals(4, of(run).get(0).readings().size());
  }

  @Test
  void readingsOfTwoMetersAreTwoArrangementsThatNameThem() {
    InventedRun run = InventedRun.northAmerican().chain(3, 5);
    run.idle(InventedRun.DMM, run.receptacles()).idle(InventedRun.LOW_IMPEDANCE, List.of("hall-3"));
    assertEquals(
        List.of("nothing on, dmm (test \"idle dmm\")", "nothing on, low-z (test \"idle low-z\")"),
        of(run).stream().map(each -> ArrangementWords.of(each, run.survey())).toList());
  }

  @Test
  void theHeaviestLoadComesFirst() {
    InventedRun run = InventedRun.northAmerican().chain(3, 5);
    run.idle(InventedRun.DMM, run.receptacles())
        .carry(InventedRun.LAMP, List.of("hall-1", "hall-2"))
        .carry(InventedRun.HEATER, List.of("hall-1", "hall-2"));
    assertEquals(List.of(1500.0, 60.0, 0.0), of(run).stream().map(Arrangement::watts).toList());
  }

  @Test
  void readingsKeepTheirPlaceInTheSurvey() {
    InventedRun run = InventedRun.northAmerican().chain(2, 5);
    run.idle(InventedRun.DMM, run.receptacles()).carry(InventedRun.HEATER, run.receptacles());
    List<Integer> heater =
        of(run).get(0).readings().stream().map(Arrangement.Taken::number).toList();
    assertEquals(List.of(4, 5, 6, 7), heater);
  }

  @Test
  void testsWithoutReadingsCountOnlyWhereNothingWasRead() {
    InventedRun run = InventedRun.northAmerican().chain(2, 5);
    LoadInUse heater = new LoadInUse(InventedRun.HEATER, "hall-2");
    run.read("planned", List.of(heater), InventedRun.DMM, List.of());
    assertEquals(List.of("heater (1500 W) at hall-2"), words(run));
    run.idle(InventedRun.DMM, List.of("hall-1"));
    assertEquals(List.of("nothing on (test \"idle dmm\")"), words(run));
  }

  private static List<String> words(InventedRun run) {
    return of(run).stream().map(each -> ArrangementWords.of(each, run.survey())).toList();
  }
}
