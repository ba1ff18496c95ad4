package ohmtrail.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;

import java.io.IOException;
import java.math.BigDecimal;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import ohmtrail.cli.casefile.CaseFile;
import ohmtrail.cli.casefile.CaseFileReader;
import ohmtrail.locate.Diagnosis;
import ohmtrail.locate.Locator;
import ohmtrail.locate.Suspect;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The same case, written otherwise, has the same answer. */
class SameCaseOtherwiseTest {
  /** Where a fit stops, as probability: it starts from other places when things come in order. */
  private static final double WHERE_A_FIT_STOPS = 2e-3;

  private static final double SAME_SUMS = 1e-9;
  private static final Pattern FEET = Pattern.compile("([0-9.]+) ft");
  private static final Pattern ENTRY = Pattern.compile("  - ([^:]+): (.*)");
  private static final BigDecimal METRES_PER_FOOT = new BigDecimal("0.3048");

  @TempDir private Path directory;

  private Diagnosis locate(String text) throws Exception {
    Path file = Files.writeString(directory.resolve("case.yaml"), text);
    CaseFile caseFile = new CaseFileReader().read(file);
    return new Locator().locate(caseFile.problem());
  }

  private static Map<String, Double> byBox(Diagnosis diagnosis) {
    Map<String, Double> byBox = new TreeMap<>();
    diagnosis.boxes().forEach(box -> byBox.put(box.box(), box.probability()));
    byBox.put("(no bad joint)", diagnosis.healthyProbability());
    return byBox;
  }

  private static Map<String, Double> byJoint(Diagnosis diagnosis) {
    Map<String, Double> byJoint = new TreeMap<>();
    for (Suspect suspect : diagnosis.suspects()) {
      for (int j = 0; j < suspect.joints().size(); j++) {
        byJoint.put(suspect.joints().get(j).id(), suspect.jointProbabilities().get(j));
      }
    }
    return byJoint;
  }

  private static void assertAlike(
      Map<String, Double> expected, Map<String, Double> actual, double tolerance) {
    assertEquals(expected.keySet(), actual.keySet());
    expected.forEach(
        (what, probability) ->
            assertEquals(probability, actual.getOrDefault(what, Double.NaN), tolerance, what));
  }

  @ParameterizedTest
  @ValueSource(strings = {"upstairs-tee", "kitchen-multiwire", "bath-heater-switch"})
  void metresOrFeetGiveTheSameAnswer(String name) throws Exception {
    String inFeet = ExampleCase.named(name).text();
    String inMetres =
        FEET.matcher(inFeet)
            .replaceAll(
                length ->
                    new BigDecimal(length.group(1))
                            .multiply(METRES_PER_FOOT)
                            .stripTrailingZeros()
                            .toPlainString()
                        + " m");
    assertNotEquals(inFeet, inMetres);
    assertAlike(byJoint(locate(inFeet)), byJoint(locate(inMetres)), SAME_SUMS);
  }

  @ParameterizedTest
  @ValueSource(strings = {"kitchen-multiwire", "bakehouse-leg", "boat-shed-neutral"})
  void swappingTheNamesOfTheLegsSwapsTheAnswer(String name) throws Exception {
    String text = ExampleCase.named(name).text();
    Map<String, Double> swapped = new TreeMap<>();
    byJoint(locate(swapLegs(text))).forEach((id, share) -> swapped.put(swapLegs(id), share));
    assertAlike(byJoint(locate(text)), swapped, WHERE_A_FIT_STOPS);
  }

  private static String swapLegs(String text) {
    return text.replace("leg-1", "leg-x").replace("leg-2", "leg-1").replace("leg-x", "leg-2");
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "upstairs-tee",
        "kitchen-multiwire",
        "landing-ring-230",
        "bedroom-continuity-230",
        "bedroom-switch-leg-230"
      })
  void theOrderOfBoxesTestsAndReadingsInTheFileDoesNotMatter(String name) throws Exception {
    String text = ExampleCase.named(name).text();
    String shuffled = shuffled(text, new Random(name.hashCode()));
    assertNotEquals(text, shuffled);
    assertAlike(byBox(locate(text)), byBox(locate(shuffled)), WHERE_A_FIT_STOPS);
  }

  @Test
  void shufflingMovesEveryKindOfLine() throws IOException {
    String shuffled = shuffled(ExampleCase.named("upstairs-tee").text(), new Random(3));
    List<String> lines = shuffled.lines().toList();
    List<String> before = ExampleCase.named("upstairs-tee").text().lines().toList();
    assertEquals(
        before.stream().filter(line -> line.contains(" V ")).sorted().toList(),
        lines.stream().filter(line -> line.contains(" V ")).sorted().toList());
    assertNotEquals(
        before.stream().filter(line -> line.startsWith("  - ")).map(String::strip).toList(),
        lines.stream().filter(line -> line.startsWith("  - ")).map(String::strip).toList());
  }

  /** Entries of the run, each with its box upstream; tests; readings of each test. */
  private static String shuffled(String text, Random random) {
    List<String> lines = text.lines().toList();
    int run = lines.indexOf("run:");
    int end = run + 2;
    while (lines.get(end).startsWith("  ")) {
      end++;
    }
    int tests = lines.indexOf("tests:");
    List<String> out = new ArrayList<>(lines.subList(0, run + 2));
    out.addAll(entries(lines.subList(run + 1, end), random));
    out.addAll(lines.subList(end, tests + 1));
    out.addAll(tests(lines.subList(tests + 1, lines.size()), random));
    return String.join("\n", out) + "\n";
  }

  private static List<String> entries(List<String> run, Random random) {
    List<String> entries = new ArrayList<>();
    String previous = run.get(0).replace("  - ", "").replace(": panel", "");
    for (String line : run.subList(1, run.size())) {
      Matcher entry = ENTRY.matcher(line);
      if (!entry.matches()) {
        throw new IllegalArgumentException(line);
      }
      boolean says = entry.group(2).contains(" from ");
      entries.add(line + (says ? "" : " from " + previous));
      previous = entry.group(1);
    }
    Collections.shuffle(entries, random);
    return entries;
  }

  private static List<String> tests(List<String> lines, Random random) {
    List<List<String>> tests = new ArrayList<>();
    for (String line : lines) {
      if (line.startsWith("  - ")) {
        tests.add(new ArrayList<>(List.of(line)));
      } else {
        tests.get(tests.size() - 1).add(line);
      }
    }
    for (List<String> test : tests) {
      Collections.shuffle(test.subList(1, test.size()), random);
    }
    Collections.shuffle(tests, random);
    return tests.stream().flatMap(List::stream).collect(Collectors.toList());
  }
}
