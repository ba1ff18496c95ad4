package ohmtrail.cli.render.json;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.util.Locale;
import java.util.OptionalDouble;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** What is written against what another library reads. */
class JsonWriterTest {
  /** Five digits are written. */
  private static final double RELATIVE_TOLERANCE = 0.5e-4;

  private static final ObjectMapper JACKSON = new ObjectMapper();

  @Test
  void membersStandInTheOrderTheyWereTold() {
    String json =
        new JsonWriter()
            .object()
            .member("z", "last")
            .member("a", 1.5)
            .member("yes", true)
            .member("missing", OptionalDouble.empty())
            .array("list")
            .value("x")
            .value(2)
            .end()
            .array("none")
            .end()
            .object("empty")
            .end()
            .end()
            .toString();

    assertEquals(
        """
        {
          "z": "last",
          "a": 1.5,
          "yes": true,
          "missing": null,
          "list": [
            "x",
            2
          ],
          "none": [],
          "empty": {}
        }
        """,
        json);
  }

  @Property
  void anyTextReadsBackAsItself(@ForAll String text) throws JsonProcessingException {
    String json = new JsonWriter().object().member(text, text).end().toString();

    JsonNode read = JACKSON.readTree(json);
    assertEquals(text, read.fieldNames().next());
    assertEquals(text, read.get(text).asText());
  }

  @Property
  void anyNumberReadsBackToFiveDigits(@ForAll @DoubleRange(min = -1e300, max = 1e300) double number)
      throws JsonProcessingException {
    String json = new JsonWriter().object().member("n", number).end().toString();

    double read = JACKSON.readTree(json).get("n").asDouble();
    assertEquals(number, read, RELATIVE_TOLERANCE * Math.abs(number), json);
  }

  @ParameterizedTest
  @CsvSource({
    "0, 0",
    "-0.0, 0",
    "120, 120",
    "120.10000000000001, 120.1",
    "1e-10, 1E-10",
    "0.00012345678, 0.00012346",
    "1e7, 10000000",
    "123456789, 123460000",
    "1e300, 1E+300"
  })
  void numbersAreShort(double number, String written) {
    assertEquals(
        "[\n  " + written + "\n]\n", new JsonWriter().array().value(number).end().toString());
  }

  @ParameterizedTest
  @CsvSource({"0.871249, 0.87125", "5.3e-27, 0", "-0.000001, 0", "1, 1", "0.999999, 1"})
  void aProbabilityHasFiveDecimals(double number, String written) {
    String json = new JsonWriter().object().member("p", number, 5).end().toString();

    assertEquals("{\n  \"p\": " + written + "\n}\n", json);
  }

  @ParameterizedTest
  @ValueSource(doubles = {Double.NaN, Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY})
  void whatIsNoNumberIsRefused(double number) {
    JsonWriter json = new JsonWriter().object();

    assertThrows(IllegalArgumentException.class, () -> json.member("n", number));
    assertThrows(IllegalArgumentException.class, () -> json.member("n", number, 3));
  }

  @Test
  void anUnfinishedDocumentIsRefused() {
    JsonWriter json = new JsonWriter().object().array("open");

    assertThrows(IllegalStateException.class, json::toString);
  }

  @Test
  void theLocaleOfTheMachineIsOfNoConcern() {
    Locale before = Locale.getDefault();
    try {
      Locale.setDefault(Locale.GERMANY);
      assertEquals("[\n  1.5\n]\n", new JsonWriter().array().value(1.5).end().toString());
    } finally {
      Locale.setDefault(before);
    }
  }
}
