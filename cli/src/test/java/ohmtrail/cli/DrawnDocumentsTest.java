package ohmtrail.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import ohmtrail.advise.AdviceReport;
import ohmtrail.advise.Situation;
import ohmtrail.cli.casefile.CaseFile;
import ohmtrail.cli.casefile.CaseFileException;
import ohmtrail.cli.casefile.CaseFileReader;
import ohmtrail.cli.casefile.CaseFileWriter;
import ohmtrail.cli.render.json.CheckJson;
import ohmtrail.cli.render.json.DocumentSchema;
import ohmtrail.cli.render.json.LocateJson;
import ohmtrail.cli.render.json.MapJson;
import ohmtrail.cli.render.json.NextJson;
import ohmtrail.cli.render.json.PredictJson;
import ohmtrail.cli.render.json.ScoreJson;
import ohmtrail.locate.Locator;
import ohmtrail.locate.Posterior;
import ohmtrail.map.MapLocator;
import ohmtrail.practice.Population;
import ohmtrail.practice.Practice;
import ohmtrail.practice.PracticeCase;
import ohmtrail.practice.score.Scorer;
import ohmtrail.practice.score.Study;
import ohmtrail.reference.Assumptions;
import ohmtrail.reference.Minutes;
import ohmtrail.report.Prediction;
import ohmtrail.survey.Reading;
import ohmtrail.survey.Survey;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.TestFactory;

/**
 * Every document of cases drawn by chance, of every population, keeps to its schema: as drawn, and
 * with readings mistyped, taken twice or at another place. Each number is finite and each
 * probability lies between 0 and 1.
 */
class DrawnDocumentsTest {
  private static final long SEED = 20_261_127;

  /** Of each population, in the ordinary build. */
  private static final int FEW = 4;

  /** Cases of the study, in all. */
  private static final int MANY = 1000;

  private static final Pattern PROBABILITY =
      Pattern.compile("probability|(healthy|unexplained|several|unstable|wrong)Probability");

  private static final ObjectMapper JACKSON = new ObjectMapper();

  private static DocumentSchema schema(String document) {
    return DocumentSchema.named(document);
  }

  @TestFactory
  Stream<DynamicTest> aFewOfEveryPopulation() {
    return ofEveryPopulation(FEW);
  }

  @TestFactory
  @Tag("study")
  Stream<DynamicTest> aThousandInAll() {
    int populations = Population.presets().size();
    return ofEveryPopulation((MANY + populations - 1) / populations);
  }

  private static Stream<DynamicTest> ofEveryPopulation(int each) {
    Documents documents = new Documents();
    return Population.presets().stream()
        .map(
            population ->
                DynamicTest.dynamicTest(
                    population.name() + ", " + each + " of seed " + SEED,
                    () -> documents.requireSound(population, each)));
  }

  @TestFactory
  Stream<DynamicTest> theScoresOfEveryPopulation() {
    DocumentSchema schema = schema("score");
    return Population.presets().stream()
        .map(
            population ->
                DynamicTest.dynamicTest(
                    population.name(),
                    () -> {
                      Practice practice = new Practice(population, Assumptions.defaults(), SEED);
                      Study study =
                          new Study(
                              SEED, 2, List.of(new Scorer(practice, 2, 1).compare(0, done -> {})));
                      requireSound(schema, ScoreJson.of(study), population.name());
                    }));
  }

  /** Drawn runs of which nothing is known but the boxes. */
  @TestFactory
  Stream<DynamicTest> theMapsOfAFewDrawnRuns() {
    DocumentSchema schema = schema("map");
    Practice practice =
        new Practice(Population.named("loose").orElseThrow(), Assumptions.defaults(), SEED);
    return IntStream.range(0, FEW)
        .mapToObj(
            number ->
                DynamicTest.dynamicTest(
                    "loose " + number + " of seed " + SEED,
                    () -> {
                      CaseFile open = open(practice.caseOf(number));
                      requireSound(
                          schema,
                          MapJson.of(open, new MapLocator().map(open.mapProblem().orElseThrow())),
                          "loose " + number);
                    }));
  }

  private static CaseFile open(PracticeCase drawn) throws CaseFileException {
    String written =
        new CaseFileWriter()
            .write(
                new CaseFile(
                    "open", drawn.circuit(), drawn.survey(), drawn.assumptions(), List.of()));
    String boxes =
        drawn.circuit().boxes().stream()
            .skip(1)
            .map(box -> "  - " + box.name() + "\n")
            .collect(Collectors.joining("", "boxes:\n", ""));
    return new CaseFileReader()
        .read("open", written.replaceFirst("(?s)run:\n.*?(?=\n[a-z])", boxes.strip()));
  }

  private static void requireSound(DocumentSchema schema, String document, String which)
      throws JsonProcessingException {
    JsonNode parsed = JACKSON.readTree(document);
    assertEquals(Set.of(), schema.breaches(parsed), which);
    requireProbabilities(parsed, which);
  }

  /** Whatever a schema may have forgotten to say. */
  private static void requireProbabilities(JsonNode node, String which) {
    node.fields()
        .forEachRemaining(
            member -> {
              if (PROBABILITY.matcher(member.getKey()).matches() && member.getValue().isNumber()) {
                double value = member.getValue().doubleValue();
                assertTrue(value >= 0 && value <= 1, which + ": " + member);
              }
            });
    node.forEach(child -> requireProbabilities(child, which));
  }

  /** The schemas, and the documents held to them. */
  private static final class Documents {
    private final DocumentSchema check = schema("check");
    private final DocumentSchema predict = schema("predict");
    private final DocumentSchema locate = schema("locate");
    private final DocumentSchema next = schema("next");

    void requireSound(Population population, int cases) throws JsonProcessingException {
      Practice practice = new Practice(population, Assumptions.defaults(), SEED);
      for (int number = 0; number < cases; number++) {
        String which = population.name() + " " + number + " of seed " + SEED;
        PracticeCase drawn = practice.caseOf(number);
        // Every other one with something that a person gets wrong.
        Survey survey =
            number % 2 == 0
                ? drawn.survey()
                : Slips.in(drawn.survey(), new Random(SEED + 31L * number + which.hashCode()));
        requireSound(
            new CaseFile(which, drawn.circuit(), survey, drawn.assumptions(), List.of()),
            drawn,
            which);
      }
    }

    private void requireSound(CaseFile caseFile, PracticeCase drawn, String which)
        throws JsonProcessingException {
      Posterior posterior = new Locator().posterior(caseFile.problem());
      Prediction prediction = Prediction.of(caseFile.problem(), drawn.truth().degraded());
      DrawnDocumentsTest.requireSound(check, CheckJson.of(caseFile), which);
      DrawnDocumentsTest.requireSound(predict, PredictJson.of(caseFile, prediction), which);
      AdviceReport advice =
          AdviceReport.of(caseFile.problem(), Situation.START, Minutes.defaults(), posterior);
      DrawnDocumentsTest.requireSound(locate, LocateJson.of(caseFile, advice.report()), which);
      DrawnDocumentsTest.requireSound(next, NextJson.of(caseFile, advice), which);
    }
  }

  /** What a person gets wrong while reading and writing down. */
  private static final class Slips {
    private static final int MOST = 3;

    private Slips() {}

    static Survey in(Survey survey, Random random) {
      Survey changed = survey;
      int slips = 1 + random.nextInt(MOST);
      for (int s = 0; s < slips; s++) {
        changed = one(changed, random);
      }
      return changed;
    }

    private static Survey one(Survey survey, Random random) {
      List<ohmtrail.survey.Test> tests = new ArrayList<>(survey.tests());
      int[] read =
          IntStream.range(0, tests.size())
              .filter(t -> !tests.get(t).readings().isEmpty())
              .toArray();
      if (read.length == 0) {
        return survey;
      }
      int t = read[random.nextInt(read.length)];
      List<Reading> readings = new ArrayList<>(tests.get(t).readings());
      int r = random.nextInt(readings.size());
      Reading reading = readings.get(r);
      double value = Double.isFinite(reading.value()) ? reading.value() : 1;
      switch (random.nextInt(5)) {
        case 0 -> readings.set(r, reading.showing(value * 10));
        case 1 -> readings.set(r, reading.showing(0));
        case 2 -> readings.add(reading.showing(Math.abs(value - 10)));
        case 3 -> readings.add(r, reading.showing(value));
        default -> readings.remove(r);
      }
      tests.set(t, tests.get(t).withReadings(readings));
      return survey.withTests(tests);
    }
  }
}
