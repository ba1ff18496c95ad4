package ohmtrail.cli.casefile;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.core.util.DefaultIndenter;
import com.fasterxml.jackson.core.util.DefaultPrettyPrinter;
import com.fasterxml.jackson.core.util.Separators;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.networknt.schema.JsonSchema;
import com.networknt.schema.JsonSchemaFactory;
import com.networknt.schema.SchemaLocation;
import com.networknt.schema.SpecVersion;
import com.networknt.schema.ValidationMessage;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import ohmtrail.cli.Golden;
import ohmtrail.cli.casefile.words.Keys;
import ohmtrail.cli.casefile.words.Vocabulary;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.snakeyaml.engine.v2.api.Load;
import org.snakeyaml.engine.v2.api.LoadSettings;

/** Holds the schema that editors complete from to the reader. */
class CaseSchemaTest {

  private static final Path SCHEMA =
      Path.of(System.getProperty("ohmtrail.shared"), "schema", "case.schema.json");

  private static final ObjectMapper JSON = new ObjectMapper();

  private static JsonNode schema() {
    try {
      return JSON.readTree(SCHEMA.toFile());
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static Set<ValidationMessage> complaints(String yaml) {
    JsonSchema schema =
        JsonSchemaFactory.getInstance(SpecVersion.VersionFlag.V202012).getSchema(schema());
    Object tree = new Load(LoadSettings.builder().build()).loadFromString(yaml);
    return schema.validate(JSON.valueToTree(tree));
  }

  @Test
  void theSchemaIsOneOfDraft202012() {
    JsonSchema draft =
        JsonSchemaFactory.getInstance(SpecVersion.VersionFlag.V202012)
            .getSchema(SchemaLocation.of("https://json-schema.org/draft/2020-12/schema"));
    assertEquals(Set.of(), draft.validate(schema()));
  }

  @TestFactory
  List<DynamicTest> everyGoodCaseAndEveryExampleAgreesWithTheSchema() {
    return Stream.concat(
            CaseFiles.in(CaseFiles.folder("good")).stream(), CaseFiles.examples().stream())
        .map(
            file ->
                DynamicTest.dynamicTest(
                    file.getFileName().toString(),
                    () -> assertEquals(Set.of(), complaints(CaseFiles.text(file)))))
        .toList();
  }

  @Property(tries = 150)
  void whateverTheWriterWritesAgreesWithTheSchema(@ForAll long seed) {
    String text = new CaseFileWriter().write(new DrawnCase(seed).caseFile());
    assertEquals(Set.of(), complaints(text), "seed " + seed + ":\n" + text);
  }

  @Test
  void theKeysOfTheSchemaAreThoseOfTheReader() {
    JsonNode definitions = schema().get("$defs");
    assertEquals(sorted(Keys.CASE.all()), keys(schema()));
    assertEquals(sorted(Keys.ASSUME.all()), keys(schema().get("properties").get("assume")));
    assertEquals(sorted(Keys.RUN_ENTRY.all()), keys(definitions.get("entry")));
    assertEquals(sorted(Keys.METER.all()), keys(definitions.get("meter")));
    assertEquals(sorted(Keys.LOAD.all()), keys(definitions.get("load")));
    assertEquals(sorted(Keys.TEST.all()), keys(definitions.get("test")));
    assertEquals(sorted(Keys.USE.all()), keys(definitions.get("use")));
    assertEquals(sorted(Keys.READING.all()), keys(definitions.get("reading")));
    assertEquals(sorted(Keys.RECORD.all()), keys(schema().get("properties").get("record")));
    assertEquals(sorted(Keys.METER_RECORD.all()), keys(definitions.get("meterRecord")));
    assertEquals(sorted(Keys.PHOTOGRAPH.all()), keys(definitions.get("photograph")));
  }

  private static Set<String> sorted(Collection<String> keys) {
    return new TreeSet<>(keys);
  }

  /** The keys of a definition, or of the one alternative of it that has keys. */
  private static Set<String> keys(JsonNode definition) {
    Set<String> keys = new TreeSet<>();
    definition.path("properties").fieldNames().forEachRemaining(keys::add);
    definition
        .path("anyOf")
        .forEach(way -> way.path("properties").fieldNames().forEachRemaining(keys::add));
    return keys;
  }

  /** Written anew, as the goldens are, with {@code -Dohmtrail.golden=write}. */
  @Test
  void thePatternsOfTheSchemaAreMadeOfTheWordsOfTheReader() throws IOException {
    JsonNode schema = schema();
    CasePatterns.putInto(schema);
    if (Golden.isWriting()) {
      DefaultIndenter indent = new DefaultIndenter("  ", "\n");
      Files.writeString(
          SCHEMA,
          JSON.writer(
                      new DefaultPrettyPrinter(
                              Separators.createDefaultInstance()
                                  .withObjectFieldValueSpacing(Separators.Spacing.AFTER))
                          .withObjectIndenter(indent)
                          .withArrayIndenter(indent))
                  .writeValueAsString(schema)
              + "\n");
    }
    assertEquals(schema, schema(), "-Dohmtrail.golden=write writes them");
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "cable: 14 AWG|cable: 14 AWGG",
        "cable: 14 AWG|cable: 14 AWG cooper",
        "{kind: receptacle, length: 32 ft, tolerance: 20 %}|recepticle 32 ft",
        "{kind: receptacle, length: 32 ft, tolerance: 20 %}|receptacle 32 ft pushin",
        "{kind: receptacle, length: 32 ft, tolerance: 20 %}|receptacle 32 foots",
        "{at: hall-1, between: hot-neutral, volts: 120.1, meter: dmm}|hall-1 hot-neutrl 120.1 V dmm",
        "between: hot-neutral|between: hot-neutrl"
      })
  void aMisspeltWordIsRefusedByReaderAndSchema(String change) {
    aWrongValueIsRefusedByReaderAndSchema(change);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "receptacle 32 ft",
        "Receptacle, 12 AWG, unknown length",
        "duplex receptacle 12 ft 6 in pigtail backstab",
        "socket 9.5 m 2.5/1.5 mm2 \u00b120 %",
        "recept about 12' 14/2 w/g",
        "outlet ~8 ft on leg 1 leg-1/neutral/ground",
        "junction box 9 ft from the far hall, wire nut",
        "light 12 ft hot/switched/neutral/ground with live companion",
        "receptacle 14 ft gfci 40 min",
        "receptacle 14 ft RCD 100 mA",
        "receptacle I don't know",
        "receptacle from ?",
        "from hall or living room",
        "after hall and sofa, not next to door, last",
        "plan 3 m 4.5 m perhaps elsewhere",
        "plan 3 4.5 m straight 4 m to garden door",
        "went dark, beside hall"
      })
  void whatTheReaderTakesForAnEntryTheSchemaTakes(String entry) {
    assertTrue(entry.matches(CasePatterns.all().get("/$defs/entry/anyOf/0")), entry);
  }

  @Test
  void theWordsOfTheSchemaAreThoseOfTheReader() {
    JsonNode entry = schema().at("/$defs/entry/anyOf/2/properties");
    assertEquals(sorted(Vocabulary.KINDS.keySet()), words(entry.get("kind")));
    assertEquals(sorted(Vocabulary.WIRINGS.keySet()), words(entry.get("wiring")));
    assertEquals(sorted(Vocabulary.COMPANIONS.keySet()), words(entry.get("companion")));
    for (String key : List.of("joints", "terminals", "splices")) {
      assertEquals(sorted(Vocabulary.JOINTS.keySet()), words(entry.get(key)), key);
    }
    Set<String> usual = sorted(Vocabulary.JOINTS.keySet());
    usual.add(Vocabulary.UNKNOWN);
    assertEquals(usual, words(schema().at("/properties/joints")));
  }

  private static Set<String> words(JsonNode definition) {
    Set<String> words = new TreeSet<>();
    definition.get("enum").forEach(word -> words.add(word.asText()));
    return words;
  }

  @Test
  void everyKeyOfTheSchemaIsDescribed() {
    List<String> undescribed = new ArrayList<>();
    collectUndescribed(schema(), "", undescribed);
    assertEquals(List.of(), undescribed);
  }

  private static void collectUndescribed(JsonNode node, String path, List<String> undescribed) {
    for (Map.Entry<String, JsonNode> property : node.path("properties").properties()) {
      JsonNode value = property.getValue();
      if (!value.has("description") && !value.has("$ref")) {
        undescribed.add(path + "/" + property.getKey());
      }
    }
    for (Map.Entry<String, JsonNode> child : node.properties()) {
      collectUndescribed(child.getValue(), path + "/" + child.getKey(), undescribed);
    }
    for (JsonNode item : node.isArray() ? node : List.<JsonNode>of()) {
      collectUndescribed(item, path + "/-", undescribed);
    }
  }

  private static final String GOOD =
      """
      breaker: 15 A
      cable: 14 AWG
      joints: push-in
      run:
        - panel
        - hall-1: {kind: receptacle, length: 32 ft, tolerance: 20 %}
      meters:
        dmm: {resistance: 10 Mohm, accuracy: 1 % + 2 counts, resolution: 0.1 V}
      loads:
        heater: {power: 1500 W, voltage: 120 V}
      tests:
        - name: first
          loads: [{load: heater, at: hall-1}]
          readings:
            - {at: hall-1, between: hot-neutral, volts: 120.1, meter: dmm}
      assume: {supply-drift: 0.5 V, source-ohms: 0.1 ohm, weight-screw: 2}
      """;

  @Test
  void theCaseThatTheMistakesBelowAreMadeInIsGood() throws CaseFileException {
    assertEquals(1, CaseFiles.read(GOOD).survey().readingCount());
    assertEquals(Set.of(), complaints(GOOD));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "joints: ",
        "kind: ",
        "length: ",
        "tolerance: ",
        "resistance: ",
        "accuracy: ",
        "resolution: ",
        "power: ",
        "voltage: ",
        "name: ",
        "load: ",
        "at: ",
        "between: ",
        "volts: ",
        "meter: ",
        "supply-drift: ",
        "source-ohms: ",
        "weight-screw: "
      })
  void aMisspeltKeyIsRefusedByReaderAndSchema(String key) {
    String bad = GOOD.replaceFirst("(?<![a-z])" + key, "x" + key);
    List<String> problems = CaseFiles.problems(bad);
    assertTrue(
        problems.toString().contains("(x" + key.strip().replace(":", "") + ")"), bad + problems);
    assertFalse(complaints(bad).isEmpty(), bad);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "breaker: 15 A|breaker: 15 V",
        "cable: 14 AWG|cable: 14",
        "cable: 14 AWG|cable: steel",
        "joints: push-in|joints: glue",
        "- panel|- hall",
        "kind: receptacle|kind: lamp",
        "32 ft|32",
        "32 ft|1.5.5 m",
        "20 %|20 V",
        "10 Mohm|10",
        "10 Mohm|10 V",
        "1 % + 2 counts|1",
        "0.1 V|0.1",
        "1500 W|1500",
        "voltage: 120 V|voltage: 120 W",
        "120.1|12O.1",
        "120.1|121.3 A",
        "between: hot-neutral|between: [hot]",
        "0.5 V|0.5 A",
        "0.1 ohm|0.1",
        "weight-screw: 2|weight-screw: 2 %",
        "meters:|meters: [dmm]\\nx-meters:",
        "run:|run: []\\nx-run:"
      })
  void aWrongValueIsRefusedByReaderAndSchema(String change) {
    String[] parts = change.replace("\\n", "\n").split("\\|", -1);
    assertTrue(GOOD.contains(parts[0]), change);
    String bad = GOOD.replace(parts[0], parts[1]);
    assertFalse(CaseFiles.problems(bad).isEmpty(), bad);
    assertFalse(complaints(bad).isEmpty(), bad);
  }
}
