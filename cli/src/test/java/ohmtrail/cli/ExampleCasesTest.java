package ohmtrail.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import ohmtrail.circuit.ConductorRole;
import ohmtrail.circuit.Joint;
import ohmtrail.cli.casefile.CaseFile;
import ohmtrail.cli.render.text.LocateText;
import ohmtrail.locate.Diagnosis;
import ohmtrail.locate.Locator;
import ohmtrail.locate.OhmsInterval;
import ohmtrail.locate.RankedBox;
import ohmtrail.locate.Suspect;
import ohmtrail.locate.Verdict;
import ohmtrail.report.Report;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * The example cases: made as they say, and answered rightly.
 *
 * <p>The readings of an example are never typed in. They are drawn by {@link
 * ohmtrail.practice.PracticeCase#staged} from the truth and the seed in the file beside it; to draw
 * them anew after a change that is meant: {@code mvn -pl solver,cli test -Dtest=ExampleCasesTest
 * -Dohmtrail.examples=write}.
 */
class ExampleCasesTest {
  private static final String SMALLEST = "smallest";
  private static final int MOST_LINES_OF_THE_SMALLEST = 20;

  /** The panel, six boxes, and the word run. */
  private static final int MOST_LINES_OF_SIX_BOXES = 8;

  /**
   * Share of the ohms. What a load really draws is known to 5 % (standard deviation), and the ohms
   * of a joint with it; four of these and a little for the rest.
   */
  private static final double FAR_OFF = 0.25;

  static Stream<ExampleCase> examples() throws IOException {
    return ExampleCase.all();
  }

  static Stream<ExampleCase> everyOne() throws IOException {
    return ExampleCase.everyOne();
  }

  static Stream<ExampleCase> degraded() throws IOException {
    return examples().filter(example -> !example.degraded().isEmpty());
  }

  static Stream<ExampleCase> healthy() throws IOException {
    return examples().filter(example -> example.degraded().isEmpty());
  }

  @ParameterizedTest
  @MethodSource("everyOne")
  void readingsAreThoseThatTruthAndSeedGive(ExampleCase example) throws IOException {
    String remade = example.remade();
    if ("write".equals(System.getProperty("ohmtrail.examples"))) {
      example.write(remade);
    }
    assertEquals(
        remade.lines().toList(),
        example.text().lines().toList(),
        example
            + ": the model draws other readings now. Maybe that is meant: draw them anew as the"
            + " comment on this class says, and look at the difference.");
  }

  @ParameterizedTest
  @MethodSource("everyOne")
  void nothingIsOddAboutTheCase(ExampleCase example) {
    assertEquals(List.of(), example.caseFile().warnings());
  }

  @ParameterizedTest
  @MethodSource("degraded")
  void theTrueBoxComesFirstOrSecondAndTheConductorIsRight(ExampleCase example) {
    CaseFile caseFile = example.caseFile();
    Joint truth = caseFile.circuit().joint(example.degraded().get(0).joint()).orElseThrow();
    Diagnosis diagnosis = locate(caseFile);
    assertEquals(Verdict.DEGRADED, diagnosis.verdict());
    List<String> firstTwo = diagnosis.boxes().stream().limit(2).map(RankedBox::box).toList();
    assertTrue(firstTwo.contains(truth.box()), truth.box() + " is not in " + firstTwo);
    assertEquals(truth.conductor(), likeliestConductor(diagnosis));
  }

  /**
   * Not the 90 % interval: it is missed once in ten, and one seed draws the same heater for all.
   */
  @ParameterizedTest
  @MethodSource("degraded")
  void theOhmsAreAboutRight(ExampleCase example) {
    String joint = example.degraded().get(0).joint();
    double ohms = example.degraded().get(0).ohms();
    OhmsInterval found =
        locate(example.caseFile()).suspects().stream()
            .filter(each -> each.joints().stream().anyMatch(same -> same.id().equals(joint)))
            .findFirst()
            .orElseThrow()
            .ohms();
    if (Double.isInfinite(ohms)) {
      assertTrue(found.high().isEmpty(), found.toString());
    } else {
      assertEquals(ohms, found.estimate().orElseThrow(), FAR_OFF * ohms, found.toString());
    }
  }

  @ParameterizedTest
  @MethodSource("healthy")
  void copperAloneIsCalledHealthy(ExampleCase example) {
    assertEquals(Verdict.HEALTHY, locate(example.caseFile()).verdict());
  }

  @Test
  void bothSortsOfExampleAreThere() throws IOException {
    assertTrue(degraded().count() >= 5, "degraded examples");
    assertTrue(healthy().count() >= 1, "healthy examples");
  }

  /** With the shared neutral open, 240 V divide between the lamps: 40 W gets 144 V of them. */
  @Test
  void aLostSharedNeutralIsToldByWhatTheLighterLegReceives() {
    CaseFile caseFile = ExampleCase.named("kitchen-multiwire").caseFile();
    String answer = LocateText.of(caseFile, Report.of(caseFile.problem())).replaceAll("\\s+", " ");
    assertTrue(answer.contains("Receptacles above 110 % of nominal"), answer);
    assertTrue(answer.contains("island leg 2-neutral: 14"), answer);
    assertTrue(answer.contains("Take the loads off both legs"), answer);
  }

  @Test
  void theSmallestCaseFitsOnACard() {
    long lines = ExampleCase.named(SMALLEST).linesOfAPerson();
    assertTrue(lines <= MOST_LINES_OF_THE_SMALLEST, lines + " lines");
  }

  @Test
  void aChainOfSixBoxesTakesEightLines() {
    ExampleCase smallest = ExampleCase.named(SMALLEST);
    assertEquals(7, smallest.caseFile().circuit().boxes().size());
    long lines =
        smallest
            .text()
            .lines()
            .dropWhile(line -> !line.equals("run:"))
            .takeWhile(line -> !line.equals("tests:"))
            .count();
    assertTrue(lines <= MOST_LINES_OF_SIX_BOXES, lines + " lines");
  }

  private static ConductorRole likeliestConductor(Diagnosis diagnosis) {
    Map<ConductorRole, Double> sums = new EnumMap<>(ConductorRole.class);
    for (Suspect suspect : diagnosis.suspects()) {
      for (int i = 0; i < suspect.joints().size(); i++) {
        sums.merge(
            suspect.joints().get(i).conductor(), suspect.jointProbabilities().get(i), Double::sum);
      }
    }
    return sums.entrySet().stream()
        .max(Comparator.comparingDouble(Map.Entry::getValue))
        .orElseThrow()
        .getKey();
  }

  private static Diagnosis locate(CaseFile caseFile) {
    return new Locator().locate(caseFile.problem());
  }
}
