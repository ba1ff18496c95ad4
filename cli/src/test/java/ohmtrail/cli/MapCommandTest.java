package ohmtrail.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.core.JsonProcessingException;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import ohmtrail.circuit.Cable;
import ohmtrail.cli.casefile.CaseFile;
import ohmtrail.cli.casefile.CaseFileException;
import ohmtrail.cli.casefile.CaseFileReader;
import ohmtrail.cli.chart.ChartFile;
import ohmtrail.cli.chart.MapChart;
import ohmtrail.cli.render.json.DocumentSchema;
import ohmtrail.cli.render.json.MapJson;
import ohmtrail.cli.render.map.MapScreen;
import ohmtrail.cli.render.map.MapText;
import ohmtrail.map.BoxFeeders;
import ohmtrail.map.EstimatedCable;
import ohmtrail.map.MapLocator;
import ohmtrail.map.MapReport;
import ohmtrail.map.known.RunMap;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * What {@code map} makes of the example cases whose run nobody knows, from the file to the page.
 */
class MapCommandTest {
  private static final int LINES = 24;
  private static final int COLUMNS = 60;

  private static final Map<String, MapReport> REPORTS = new HashMap<>();

  static Stream<ExampleCase> examples() throws IOException {
    return ExampleCase.unmapped();
  }

  private static MapReport report(ExampleCase example) {
    return REPORTS.computeIfAbsent(
        example.name(),
        name -> new MapLocator().map(example.caseFile().mapProblem().orElseThrow()));
  }

  private record Run(int code, String out, String err) {}

  private static Run run(String... arguments) {
    StringWriter out = new StringWriter();
    StringWriter err = new StringWriter();
    int code = Ohmtrail.run(new PrintWriter(out), new PrintWriter(err), arguments);
    return new Run(code, out.toString(), err.toString());
  }

  @Test
  void aSoundOneOneWithABadJointAndOneWithAHiddenSpliceAreThere() throws IOException {
    assertEquals(3, examples().count());
    assertEquals(1, examples().filter(each -> !each.degraded().isEmpty()).count());
    assertEquals(1, examples().filter(each -> hidden(each).size() == 1).count());
  }

  /** The boxes of the true run that the case does not have. */
  private static Set<String> hidden(ExampleCase example) {
    Set<String> hidden = boxes(example.wired());
    hidden.removeAll(boxes(example.caseFile().circuit()));
    return hidden;
  }

  private static Set<String> boxes(ohmtrail.circuit.Circuit circuit) {
    return circuit.boxes().stream().map(box -> box.name()).collect(Collectors.toSet());
  }

  @ParameterizedTest
  @MethodSource("examples")
  void theMostProbableMapIsTheOneThatTheReadingsWereDrawnFrom(ExampleCase example) {
    Set<Set<String>> found =
        report(example).likeliest().map().feeds().stream()
            .map(feed -> Set.of(seen(feed.feeder(), example), seen(feed.box(), example)))
            .collect(Collectors.toSet());
    Set<Set<String>> wired =
        example.wired().cables().stream()
            .map(cable -> Set.of(cable.from(), cable.to()))
            .collect(Collectors.toSet());
    assertEquals(wired, found);
  }

  private static String seen(String box, ExampleCase example) {
    return RunMap.isHidden(box) ? hidden(example).iterator().next() : box;
  }

  /** A 90 % interval holds the truth of most cables of a handful. */
  @ParameterizedTest
  @MethodSource("examples")
  void theLengthsAreAboutThoseOfTheCables(ExampleCase example) {
    List<EstimatedCable> measured =
        report(example).cables().stream().filter(EstimatedCable::isMeasured).toList();
    assertFalse(measured.isEmpty());
    for (EstimatedCable cable : measured) {
      double metres = wired(example, seen(cable.box(), example)).lengthMetres().orElseThrow();
      assertTrue(cable.metres().value() < 1.6 * metres, cable + " for " + metres);
      assertTrue(cable.metres().value() > metres / 1.6, cable + " for " + metres);
    }
  }

  private static Cable wired(ExampleCase example, String box) {
    return example.wired().cables().stream()
        .filter(cable -> cable.to().equals(box))
        .findFirst()
        .orElseThrow();
  }

  @Test
  void theBadJointIsFoundOnTheWayThatItLiesOn() throws IOException {
    ExampleCase degraded =
        examples().filter(each -> !each.degraded().isEmpty()).findFirst().orElseThrow();
    var stretch = report(degraded).badJoint().stretches().get(0);
    assertEquals("fireplace/neutral/incoming", degraded.degraded().get(0).joint());
    assertEquals("sofa", stretch.feeder());
    assertEquals("fireplace", stretch.box());
    assertTrue(stretch.probability() > 0.9, stretch.toString());
    String screen = MapScreen.of(degraded.caseFile(), report(degraded), COLUMNS);
    assertTrue(screen.contains("Leave this breaker off but for readings"), screen);
  }

  @ParameterizedTest
  @MethodSource("examples")
  void theAnswerFitsAPhoneAndNamesEveryBox(ExampleCase example) {
    MapReport report = report(example);
    String screen = MapScreen.of(example.caseFile(), report, COLUMNS);
    List<String> lines = screen.lines().toList();
    assertTrue(lines.size() <= LINES, lines.size() + " lines:\n" + screen);
    assertTrue(lines.stream().allMatch(line -> line.length() <= COLUMNS), screen);
    report.boxes().forEach(box -> assertTrue(screen.contains(box.box()), box + "\n" + screen));
    String full = MapText.of(example.caseFile(), report);
    assertTrue(full.lines().allMatch(line -> line.length() <= 80), full);
    report.boxes().forEach(box -> assertTrue(full.contains(box.likeliest().feeder()), full));
  }

  @ParameterizedTest
  @MethodSource("examples")
  void theDocumentKeepsToItsSchema(ExampleCase example) throws JsonProcessingException {
    String json = MapJson.of(example.caseFile(), report(example));
    assertEquals(Set.of(), DocumentSchema.named("map").breaches(json));
  }

  @ParameterizedTest
  @MethodSource("examples")
  void theChartDashesWhatIsOpenAndNoNameStandsOnAnother(ExampleCase example) {
    MapReport report = report(example);
    MapChart chart = MapChart.of(example.caseFile().title(), report);
    String svg = ChartFile.svgElement(chart);
    long open = report.boxes().stream().filter(box -> !box.isSettled()).count();
    long dashed = svg.lines().filter(line -> line.contains("stroke-dasharray")).count();
    // One dashed sample stands in the legend.
    assertEquals(open + 1, dashed, svg);
    Set<String> rows = new HashSet<>();
    for (BoxFeeders box : report.boxes()) {
      List<String> names =
          svg.lines()
              .filter(line -> line.contains("<text") && line.contains(">" + box.box() + "  "))
              .toList();
      assertEquals(1, names.size(), box.box() + "\n" + svg);
      assertTrue(rows.add(names.get(0).replaceAll(".* y=\"([0-9.]+)\".*", "$1")), svg);
    }
  }

  @Test
  void whatIsSettledGoesIntoTheFileAndTheRestOfItStays(@TempDir Path folder)
      throws IOException, CaseFileException {
    ExampleCase example = ExampleCase.named("family-room-unmapped");
    Path file = folder.resolve("room.yaml");
    Files.writeString(file, example.text());
    Run written = run("map", file.toString(), "--write");
    assertEquals(0, written.code(), written.err());
    String after = Files.readString(file);
    List<String> changed =
        after.lines().filter(line -> !example.text().lines().toList().contains(line)).toList();
    assertEquals(6, changed.size(), after);
    assertTrue(after.startsWith(example.text().lines().findFirst().orElseThrow()), after);
    assertEquals(example.text(), Files.readString(folder.resolve("room.yaml.before")));
    CaseFile read = new CaseFileReader().read(file);
    assertTrue(read.unknown().isEmpty());
    assertEquals(example.caseFile().survey(), read.survey());
    assertEquals(0, run("locate", file.toString()).code());
    Run again = run("map", file.toString());
    assertEquals(2, again.code());
    assertTrue(again.err().contains("it says it of every one"), again.err());
  }

  @Test
  void whatHidesIsNotWrittenAndWhatItFeedsStaysOpen(@TempDir Path folder)
      throws IOException, CaseFileException {
    ExampleCase example = ExampleCase.named("annexe-splice-230");
    Path file = folder.resolve("annexe.yaml");
    Files.writeString(file, example.text());
    assertEquals(0, run("map", file.toString(), "--write").code());
    CaseFile read = new CaseFileReader().read(file);
    assertEquals(1, read.unknown().orElseThrow().mayHide());
    assertFalse(read.circuit().box("hidden box 1").isPresent());
    report(example).boxes().stream()
        .filter(box -> RunMap.isHidden(box.likeliest().feeder()))
        .forEach(
            box ->
                assertTrue(read.unknown().get().outlet(box.box()).orElseThrow().fedBy().isEmpty()));
  }

  @Test
  void commandsThatNeedTheOrderNameTheOneThatFindsIt() throws IOException {
    String file = examples().findFirst().orElseThrow().file().toString();
    for (String command : List.of("locate", "next", "predict")) {
      Run refused = run(command, file);
      assertEquals(2, refused.code(), command);
      assertTrue(refused.err().contains("`ohmtrail map`"), refused.err());
      assertEquals("", refused.out());
    }
  }

  @Test
  void whatContradictsItselfHasNoMap(@TempDir Path folder) throws IOException {
    Path file = folder.resolve("none.yaml");
    Files.writeString(file, "boxes:\n  - a: after b\n  - b: after a\n");
    Run refused = run("map", file.toString());
    assertEquals(2, refused.code(), refused.out());
    assertFalse(refused.err().isBlank());
  }
}
