package ohmtrail.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import ohmtrail.cli.render.json.DocumentSchema;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The command {@code next} as it is called. */
class NextCommandTest {
  private static final ObjectMapper JACKSON = new ObjectMapper();

  private static final String RUN =
      """
      title: Upstairs hall
      breaker: 15 A
      cable: 14 AWG
      joints: push-in
      run:
        - panel
        - hall-1: receptacle 30 ft
        - hall-2: receptacle 12 ft
        - hall-3: receptacle 12 ft
        - hall-4: receptacle 12 ft
        - hall-5: receptacle 12 ft
      """;

  /** 2.4 ohm in the neutral between hall-2 and hall-3, say the readings. */
  private static final String READ =
      RUN
          + """
      loads:
        heater: 1500 W
      tests:
        - idle:
            - hall-5 hot-neutral 121.0 V high
        - heater at hall-3:
            - hall-3 hot-neutral 93.5 V high
        - heater at hall-2:
            - hall-2 hot-neutral 117.1 V high
      """;

  @TempDir Path folder;

  private final StringWriter out = new StringWriter();
  private final StringWriter err = new StringWriter();
  private Path file = Path.of("");

  @BeforeEach
  void nameTheFile() {
    file = folder.resolve("hall.yaml");
  }

  private int next(String text, String... options) throws IOException {
    Files.writeString(file, text);
    String[] arguments = new String[options.length + 3];
    arguments[0] = "next";
    arguments[1] = file.toString();
    arguments[2] = "--full";
    System.arraycopy(options, 0, arguments, 3, options.length);
    return Ohmtrail.run(new PrintWriter(out), new PrintWriter(err), arguments);
  }

  private String flat() {
    return out.toString().replaceAll("\\s+", " ");
  }

  @Test
  void withNothingReadAReadingComesFirstAndSaysWhatItWouldMean() throws IOException {
    assertEquals(0, next(RUN), err.toString());

    assertTrue(flat().contains("A reading comes first"), flat());
    assertTrue(flat().contains("1. At hall-"), flat());
    assertTrue(flat().matches(".*(below|above|less than|more than) [0-9.]+ V \\(.*"), flat());
  }

  @Test
  void aHotJointIsToldOfBeforeAnythingElse() throws IOException {
    assertEquals(0, next(READ), err.toString());

    assertTrue(out.toString().startsWith("Leave this breaker off"), out.toString());
    assertTrue(flat().contains("NBSIR 76-1011"), flat());
  }

  /** Where two ends of a section are as likely, the last bits must not name one each. */
  @ParameterizedTest
  @ValueSource(strings = {"living-room-neutral", "smallest", "guest-room-ghost", "upstairs-tee"})
  void headlineAndFirstChoiceNameTheSameBox(String example) throws IOException {
    String text = Files.readString(ExampleCase.named(example).file());
    assertEquals(0, next(text), err.toString());

    Matcher choice = Pattern.compile("1\\. Open ([\\w-]+),").matcher(flat());
    assertTrue(choice.find(), flat());
    assertTrue(flat().contains("Open " + choice.group(1) + " first"), flat());
  }

  @Test
  void whatMustNotBeDoneIsToldWithItsReason() throws IOException {
    assertEquals(0, next(READ), err.toString());

    assertTrue(flat().contains("Not to be done - heater at hall-5, read at"), flat());
    assertTrue(flat().contains("can make a terminal glow before it is off again"), flat());
    assertTrue(flat().contains("A load of up to"), flat());
  }

  @Test
  void theAnswerEndsWithCautions() throws IOException {
    assertEquals(0, next(RUN), err.toString());

    assertTrue(flat().contains("Cautions"), flat());
    assertTrue(
        flat().stripTrailing().endsWith("where they say otherwise, do as they say."), flat());
  }

  @Test
  void theDocumentHoldsWhatTheTextSays() throws IOException {
    assertEquals(0, next(READ, "--json"), err.toString());

    JsonNode document = JACKSON.readTree(out.toString());
    assertEquals("next", document.get("document").asText());
    assertTrue(document.get("danger").asText().startsWith("Leave this breaker off"));
    JsonNode best = document.get("choices").get(0);
    assertTrue(List.of("read", "open").contains(best.get("do").asText()));
    // A reading that the answer hangs on comes first, whatever it takes; the others in order.
    double before = 0;
    for (JsonNode choice : document.get("choices")) {
      double expected = choice.get("expectedMinutes").asDouble();
      assertTrue(expected >= before, document.get("choices").toString());
      before = choice.equals(best) ? 0 : expected;
      double sum = 0;
      for (JsonNode outcome : choice.get("outcomes")) {
        sum += outcome.get("probability").asDouble();
      }
      assertTrue(choice.get("outcomes").isEmpty() || Math.abs(sum - 1) < 1e-4, choice.toString());
    }
    List<String> harms = document.at("/ruledOut").findValuesAsText("harm");
    assertTrue(harms.contains("heat"), harms::toString);
    assertTrue(harms.contains("touch"), harms::toString);
    assertFalse(document.get("cautions").isEmpty());
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "smallest",
        "workshop-healthy",
        "kitchen-multiwire",
        "laundry-gfci-hot",
        "garage-loop-230"
      })
  void everyDocumentKeepsToItsSchema(String example) throws IOException {
    String text = Files.readString(ExampleCase.named(example).file());
    assertEquals(0, next(text, "--json"), err.toString());

    assertEquals(Set.of(), DocumentSchema.named("next").breaches(out.toString()));
  }

  /** A wall heater behind 0.9 ohm: with its switch closed the contact glows before it is read. */
  @Test
  void whatIsWiredInBehindAHotJointIsSwitchedOffForAReading() throws IOException {
    String text = Files.readString(ExampleCase.named("bath-heater-switch").file());
    assertEquals(0, next(text), err.toString());
    String said = out.toString().replaceAll("\\s+", " ");
    assertTrue(said.contains("nothing plugged in, every switch closed"), said);
    assertTrue(said.contains("Instead: the switch at bath-switch open"), said);
    String advised = said.substring(0, said.indexOf("Not to be done"));
    assertFalse(advised.contains("nothing plugged in"), advised);
  }

  @Test
  void aBoxOutOfReachIsNotReadAt() throws IOException {
    assertEquals(0, next(RUN, "--out-of-reach", "hall-3", "--json"), err.toString());

    JACKSON
        .readTree(out.toString())
        .get("choices")
        .findValues("at")
        .forEach(at -> assertFalse(at.asText().equals("hall-3"), "asked for hall-3"));
  }

  @Test
  void minutesOfTheCallDecide() throws IOException {
    assertEquals(
        0, next(RUN, "--minutes", "open-box=0.2", "--minutes", "open-panel=0.2"), err.toString());

    assertTrue(flat().contains("Opening a box beats any reading"), flat());
  }

  @Test
  void aBoxThatIsNotThereIsRefusedWithTheNearestName() throws IOException {
    assertEquals(2, next(RUN, "--at", "hal-2"));

    assertTrue(err.toString().contains("Box (hal-2)"), err.toString());
    assertTrue(err.toString().contains("Maybe hall-2 was meant"), err.toString());
  }

  @Test
  void aStepThatIsNoneIsRefusedWithTheNearestName() throws IOException {
    assertEquals(2, next(RUN, "--minutes", "openbox=4"));

    assertTrue(err.toString().contains("Maybe open-box was meant"), err.toString());
  }

  @Test
  void minutesThatCannotBeAreRefused() throws IOException {
    assertEquals(2, next(RUN, "--minutes", "open-box=-4"));

    assertTrue(err.toString().contains("Minutes (-4.0) of open-box"), err.toString());
  }

  private static final String EVERY_METER =
      """
      meters:
        high: 10 Mohm
        loop: loop-tester
        ohms: ohmmeter
        clamp: clamp
      """;

  @Test
  void aLoopTesterIsAskedForWhereItTellsMostForItsMinutes() throws IOException {
    assertEquals(0, next(RUN + EVERY_METER), err.toString());

    assertTrue(flat().contains("1. At hall-"), flat());
    assertTrue(flat().contains("with the meter loop, nothing on"), flat());
    assertTrue(flat().matches(".*(below|above) [0-9.]+ ohm \\(.*"), flat());
  }

  @Test
  void anOhmmeterAloneIsAskedForWithTheBreakerOffAndItsCaution() throws IOException {
    String text = RUN + "meters:\n  ohms: ohmmeter\n";
    assertEquals(0, next(text), err.toString());

    assertTrue(
        flat()
            .contains(
                "the breaker off and proved dead, everything unplugged or disconnected, hot and"
                    + " neutral linked at hall-5"),
        flat());
    assertTrue(flat().contains("An ohmmeter or continuity tester goes on a dead circuit only"));
    assertFalse(flat().contains("These readings are taken on live parts"), flat());
  }

  @Test
  void theDocumentNamesLinksAndUnits() throws IOException {
    assertEquals(0, next(RUN + "meters:\n  ohms: ohmmeter\n", "--json"), err.toString());

    JsonNode document = JACKSON.readTree(out.toString());
    assertEquals(Set.of(), DocumentSchema.named("next").breaches(out.toString()));
    JsonNode read = document.get("choices").get(0);
    assertEquals("ohm", read.get("outcomes").get(0).get("unit").asText());
    assertEquals(
        "hall-5 hot-neutral",
        read.get("tests").get(0).get("links").get(0).asText(),
        read.toString());
  }
}
