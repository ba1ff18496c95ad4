package ohmtrail.cli.render.json;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.networknt.schema.JsonSchema;
import com.networknt.schema.JsonSchemaFactory;
import com.networknt.schema.SpecVersion;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Set;
import java.util.TreeSet;

/** The schema of a document. */
public final class DocumentSchema {
  private static final ObjectMapper JACKSON = new ObjectMapper();

  private final JsonSchema schema;

  private DocumentSchema(JsonSchema schema) {
    this.schema = schema;
  }

  /** Reads that of a document from the project's shared folder. */
  public static DocumentSchema named(String document) {
    Path file = Path.of(System.getProperty("ohmtrail.shared"), "schema", document + ".schema.json");
    try {
      return new DocumentSchema(
          JsonSchemaFactory.getInstance(SpecVersion.VersionFlag.V202012)
              .getSchema(Files.readString(file)));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** What a document breaks; empty when it keeps to the schema. */
  public Set<String> breaches(JsonNode document) {
    Set<String> breaches = new TreeSet<>();
    schema.validate(document).forEach(breach -> breaches.add(breach.getMessage()));
    return breaches;
  }

  /** What a document breaks; empty when it keeps to the schema. */
  public Set<String> breaches(String document) throws JsonProcessingException {
    return breaches(JACKSON.readTree(document));
  }
}
