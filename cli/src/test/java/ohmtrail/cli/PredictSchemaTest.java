package ohmtrail.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.networknt.schema.JsonSchema;
import com.networknt.schema.JsonSchemaFactory;
import com.networknt.schema.SchemaLocation;
import com.networknt.schema.SpecVersion;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Holds every prediction of the examples to the schema of the document. */
class PredictSchemaTest {
  private static final ObjectMapper JACKSON = new ObjectMapper();

  private static JsonSchema schema() throws IOException {
    Path file = Path.of(System.getProperty("ohmtrail.shared"), "schema", "predict.schema.json");
    return JsonSchemaFactory.getInstance(SpecVersion.VersionFlag.V202012)
        .getSchema(Files.readString(file));
  }

  static Stream<ExampleCase> examples() throws IOException {
    return ExampleCase.all();
  }

  private static JsonNode predict(String... arguments) throws IOException {
    StringWriter out = new StringWriter();
    StringWriter err = new StringWriter();
    assertEquals(
        0, Ohmtrail.run(new PrintWriter(out), new PrintWriter(err), arguments), err.toString());
    return JACKSON.readTree(out.toString());
  }

  @ParameterizedTest
  @MethodSource("examples")
  void everyPredictionKeepsToTheSchema(ExampleCase example) throws IOException {
    String joint = example.caseFile().circuit().joints().get(0).id();
    String file = example.file().toString();
    assertEquals(Set.of(), schema().validate(predict("predict", file, "--json")));
    for (String ohms : List.of("0.4", "open")) {
      assertEquals(
          Set.of(),
          schema().validate(predict("predict", file, "--json", "--degrade", joint + "=" + ohms)));
    }
  }

  @Test
  void theSchemaIsOneOfDraft202012() throws IOException {
    JsonSchema draft =
        JsonSchemaFactory.getInstance(SpecVersion.VersionFlag.V202012)
            .getSchema(SchemaLocation.of("https://json-schema.org/draft/2020-12/schema"));
    assertEquals(Set.of(), draft.validate(schema().getSchemaNode()));
  }

  @Test
  void whatLacksAMemberOrHasAnUnknownOneBreaksIt() throws IOException {
    String file = ExampleCase.named("smallest").file().toString();
    ObjectNode lacking = (ObjectNode) predict("predict", file, "--json");
    lacking.remove("tests");
    assertFalse(schema().validate(lacking).isEmpty());
    ObjectNode strange = (ObjectNode) predict("predict", file, "--json");
    ((ObjectNode) strange.get("tests").get(0)).put("colour", "red");
    assertFalse(schema().validate(strange).isEmpty());
  }
}
