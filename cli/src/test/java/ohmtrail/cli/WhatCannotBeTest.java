package ohmtrail.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * What a circuit cannot have or a survey cannot have read: one message with its place and what was
 * expected. What a circuit can do but nobody wants: said in the answer, and the rest answered.
 */
class WhatCannotBeTest {
  @TempDir private Path directory;
  private final StringWriter out = new StringWriter();
  private final StringWriter err = new StringWriter();

  private int locate(String text, String... options) throws IOException {
    Path file = Files.writeString(directory.resolve("case.yaml"), text);
    String[] arguments = new String[options.length + 2];
    arguments[0] = "locate";
    arguments[1] = file.toString();
    System.arraycopy(options, 0, arguments, 2, options.length);
    return Ohmtrail.run(new PrintWriter(out), new PrintWriter(err), arguments);
  }

  /** One message, at its line and column. */
  private void refused(String text, String place, String expected) throws IOException {
    assertFalse(locate(text) == 0, out.toString());
    String message = err.toString().replace(directory + "/", "");
    assertTrue(message.startsWith("case.yaml:" + place + ": "), message);
    assertTrue(message.contains(expected), message);
    assertEquals(1, message.split("case[.]yaml:", -1).length - 1, message);
  }

  private String answered(String text) throws IOException {
    assertEquals(0, locate(text, "--full"), err.toString());
    String answer = out.toString().replaceAll("\\s+", " ");
    assertTrue(answer.contains("Boxes, the likeliest to hold a bad joint first"), answer);
    return answer;
  }

  private static final String WATER_HEATER =
      """
      supply: 120/240 V
      conductors: leg-1/leg-2/ground
      run:
        - panel
        - tank: receptacle 20 ft
      tests:
        - idle:
            - tank leg-1-leg-2 239.1 V high
      """;

  @Test
  void aNeutralThatATwoWireOutletOf240VoltsHasNotGot() throws IOException {
    refused(
        WATER_HEATER + "      - tank leg-1-neutral 119.6 V high\n",
        "9:9",
        "Conductor (neutral) at tank must be one of those that reach the box: [leg-1, leg-2,"
            + " ground]");
  }

  @Test
  void aLoadOnANeutralThatATwoWireOutletHasNotGot() throws IOException {
    refused(
        WATER_HEATER + "  - 500 W at 120 V at tank leg-1-neutral:\n      - tank dead high\n",
        "9:23",
        "Conductor (neutral) at tank must be one of those that reach the box");
  }

  @Test
  void aLegOfASupplyThatHasButOne() throws IOException {
    refused(
        "run:\n  - panel\n  - a: receptacle 20 ft leg-1/neutral/ground\n",
        "3:25",
        "Conductor (leg-1) must be one of those that the supply has: hot, neutral, ground");
  }

  @Test
  void aReadingOnTheSecondLegOfASupplyThatHasButOne() throws IOException {
    refused(
        """
        run:
          - panel
          - a: receptacle 20 ft
        tests:
          - idle:
              - a leg-2-neutral 120 V high
        """,
        "6:9",
        "Conductor (leg-2) at a must be one of those that reach the box: [hot, neutral, ground]");
  }

  @Test
  void aSwitchStateOfABoxWithoutASwitch() throws IOException {
    refused(
        "run:\n  - panel\n  - a: receptacle 20 ft\ntests:\n  - a open:\n      - a dead\n",
        "5:5",
        "must be in a box with a switch");
  }

  @Test
  void aRingThatDoesNotClose() throws IOException {
    refused(
        """
        supply: 230 V
        run:
          - consumer unit: panel
          - landing: socket-outlet 11 m
          - study: socket-outlet 4 m
          - consumer unti: 13 m
        """,
        "6:5",
        "consumer unit was meant, to close the ring there");
  }

  @Test
  void aRingThatLacksAConductorOnItsWayBack() throws IOException {
    refused(
        """
        supply: 230 V
        run:
          - board: panel
          - landing: socket-outlet 11 m
          - study: socket-outlet 4 m
          - board: 13 m line/neutral
        """,
        "6:5",
        "Ring from study back to board must have the conductors that reach study");
  }

  @Test
  void aResistanceWhileTheBreakerIsOn() throws IOException {
    refused(
        """
        meters: {tester: continuity-tester}
        run:
          - panel
          - a: receptacle 20 ft
        tests:
          - idle:
              - a hot-ground 0.4 ohm tester
        """,
        "7:9",
        "must be read with the breaker off");
  }

  private static final String RUN =
      """
      breaker: 15 A
      cable: 14 AWG copper
      meters: {dmm: "10 Mohm, 0.5 % + 2 counts, up to 600 V", load-meter: 3 kohm}
      run:
        - panel
        - hall: receptacle 30 ft
        - bath: receptacle 12 ft gfci
        - bed: receptacle 14 ft
      loads:
        heater: 1500 W
        charger: 200 W electronic, cut-out 95 V
      tests:
        - heater at bed:
            - hall hot-neutral 117.8 V dmm
            - bed hot-neutral 96.9 V dmm
      """;

  @Test
  void aLoadWithoutAnOperatingPointIsSaidAndTheRestAnswered() throws IOException {
    String answer =
        answered(
            RUN.replace("bed hot-neutral 96.9", "bed hot-neutral 61.0")
                + "  - heater at bed + charger at bed:\n      - bed hot-neutral 61.0 V dmm\n");
    assertTrue(
        answer.contains("charger at bed, test heater at bed + charger at bed: cannot start"));
  }

  @Test
  void aGfciThatWouldHaveTrippedInMidSurveyIsSaidAndTheRestAnswered() throws IOException {
    String answer = answered(RUN + "  - idle:\n      - bed hot-ground 119.2 V load-meter\n");
    assertTrue(answer.contains("What would have tripped in the middle of the readings"), answer);
    assertTrue(answer.contains("GFCI at bath"), answer);
  }

  @Test
  void aReadingThatItsMeterCannotShowIsSaidAndTheRestAnswered() throws IOException {
    String answer = answered(RUN + "  - idle:\n      - hall hot-neutral 612 V dmm\n");
    String said = answer + err.toString().replaceAll("\\s+", " ");
    assertTrue(said.contains("beyond what meter (dmm) shows, up to (600 V)"), said);
  }
}
