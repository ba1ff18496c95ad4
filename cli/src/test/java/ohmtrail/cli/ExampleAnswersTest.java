package ohmtrail.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import ohmtrail.cli.render.json.DocumentSchema;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** The whole program on the example cases against files that were read and found right. */
class ExampleAnswersTest {
  /**
   * Of a number in a document: the end of a fit depends on the last bits of the exponential, which
   * differ from one processor to another, and the fit stops within 1e-4 of its end.
   */
  private static final double RELATIVE_TOLERANCE = 1e-3;

  /** The same for numbers near zero: residuals, pulls, small probabilities. */
  private static final double ABSOLUTE_TOLERANCE = 1e-3;

  private static final ObjectMapper JACKSON = new ObjectMapper();

  static Stream<ExampleCase> examples() throws IOException {
    return ExampleCase.all();
  }

  @ParameterizedTest
  @MethodSource("examples")
  void theAnswerReadsAsItDid(ExampleCase example) {
    Golden.assertMatches(
        "cases/" + example + ".locate.txt", run("locate", example.file().toString(), "--full"));
  }

  @ParameterizedTest
  @MethodSource("examples")
  void theCaseIsUnderstoodAsItWas(ExampleCase example) {
    Golden.assertMatches(
        "cases/" + example + ".check.txt", run("check", example.file().toString()));
  }

  @ParameterizedTest
  @MethodSource("examples")
  void thePredictionReadsAsItDid(ExampleCase example) {
    Golden.assertMatches(
        "cases/" + example + ".predict.txt", run("predict", example.file().toString()));
  }

  @ParameterizedTest
  @MethodSource("examples")
  void theDocumentHoldsWhatItDidAndKeepsToTheSchema(ExampleCase example) throws IOException {
    String document = run("locate", example.file().toString(), "--json");

    String name = "cases/" + example + ".locate.json";
    if (Golden.isWriting()) {
      Golden.write(name, Golden.kept(name, document));
    }
    assertAlike(
        JACKSON.readTree(Golden.read(name)), JACKSON.readTree(Golden.kept(name, document)), name);
    assertEquals(Set.of(), DocumentSchema.named("locate").breaches(document));
  }

  private static void assertAlike(JsonNode expected, JsonNode actual, String where) {
    assertEquals(expected.getNodeType(), actual.getNodeType(), where);
    if (expected.isNumber()) {
      double tolerance =
          Math.max(ABSOLUTE_TOLERANCE, RELATIVE_TOLERANCE * Math.abs(expected.asDouble()));
      assertEquals(expected.asDouble(), actual.asDouble(), tolerance, where);
    } else if (expected.isObject()) {
      assertEquals(names(expected), names(actual), where);
      names(expected)
          .forEach(name -> assertAlike(expected.get(name), actual.get(name), where + "/" + name));
    } else if (expected.isArray()) {
      assertEquals(expected.size(), actual.size(), where);
      IntStream.range(0, expected.size())
          .forEach(i -> assertAlike(expected.get(i), actual.get(i), where + "/" + i));
    } else {
      assertEquals(expected, actual, where);
    }
  }

  private static Set<String> names(JsonNode node) {
    Set<String> names = new TreeSet<>();
    node.fieldNames().forEachRemaining(names::add);
    return names;
  }

  private static String run(String... arguments) {
    StringWriter out = new StringWriter();
    StringWriter err = new StringWriter();

    int exitCode = Ohmtrail.run(new PrintWriter(out), new PrintWriter(err), arguments);

    assertEquals(0, exitCode, err.toString());
    assertEquals("", err.toString());
    return out.toString();
  }
}
