package ohmtrail.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Starts the one runnable jar as a process of its own, as its user does. */
class RunnableJarIT {

  private static final String HALF_A_GIGABYTE = "-Xmx512m";

  @TempDir private Path directory;

  /** What a process left behind. */
  private record Ended(int exitCode, String out, String err) {}

  @Test
  void theJarRunsAndSaysItsVersion() throws IOException, InterruptedException {
    Ended ended = run("--version");

    assertEquals(0, ended.exitCode(), ended.err());
    String version = "Ohmtrail " + System.getProperty("ohmtrail.version") + " (commit ";
    assertTrue(ended.out().startsWith(version), ended.out());
  }

  @Test
  void theAnswerGoesToStandardOutputAndNothingElseDoes() throws IOException, InterruptedException {
    Ended ended = run("locate", example().toString());

    assertEquals(0, ended.exitCode(), ended.err());
    assertTrue(ended.out().startsWith("Leave this breaker off"), ended.out());
    assertTrue(ended.out().contains("\n\nOpen "), ended.out());
    assertEquals("", ended.err());
  }

  @Test
  void aBadCaseIsToldOnStandardErrorWithItsPlace() throws IOException, InterruptedException {
    Path bad = Files.writeString(directory.resolve("bad.yaml"), "run: 3\n");

    Ended ended = run("locate", bad.toString());

    assertEquals(2, ended.exitCode(), ended.err());
    assertEquals("", ended.out());
    assertTrue(ended.err().contains("bad.yaml:1:"), ended.err());
    assertFalse(ended.err().contains("\tat "), ended.err());
  }

  @Test
  void theOutputIsUtf8WhateverTheMachineIsSetTo() throws IOException, InterruptedException {
    Path named =
        Files.writeString(
            directory.resolve("named.yaml"),
            Files.readString(example()).replaceFirst("title: .*", "title: Küche 3 Ω"));

    Ended ended = run("check", named.toString());

    assertEquals(0, ended.exitCode(), ended.err());
    assertTrue(ended.out().contains("Küche 3 Ω"), ended.out());
  }

  @Test
  void aChartIsDrawnWithoutADisplay() throws IOException, InterruptedException {
    Path chart = directory.resolve("chart.png");

    Ended ended = run("locate", example().toString(), "--chart", chart.toString());

    assertEquals(0, ended.exitCode(), ended.err());
    assertTrue(Files.size(chart) > 0);
  }

  @Test
  void aThousandBoxesArePredictedWithinHalfAGigabyte() throws IOException, InterruptedException {
    Ended ended = runWithin(HALF_A_GIGABYTE, "predict", chain(1000));

    assertEquals(0, ended.exitCode(), ended.err());
    assertTrue(ended.out().contains("b999 "), ended.out());
  }

  @Test
  void fiftyThousandBoxesAreCheckedWithinHalfAGigabyte() throws IOException, InterruptedException {
    // The panel is one of them, and a case may have no more.
    Ended ended = runWithin(HALF_A_GIGABYTE, "check", chain(49_999));

    assertEquals(0, ended.exitCode(), ended.err());
    assertTrue(ended.out().contains("50000 boxes, 49999 cables"));
  }

  private String chain(int boxes) throws IOException {
    String run =
        IntStream.range(0, boxes)
            .mapToObj(i -> "  - b" + i + ": receptacle 2 ft")
            .collect(Collectors.joining("\n"));
    return Files.writeString(
            directory.resolve("chain.yaml"), "supply: 120 V\nrun:\n  - panel\n" + run + "\n")
        .toString();
  }

  private static Path example() {
    return Path.of(System.getProperty("ohmtrail.shared"), "cases", "living-room-neutral.yaml");
  }

  private Ended run(String... arguments) throws IOException, InterruptedException {
    return runWithin("-Xmx2g", arguments);
  }

  /** Output into files, so that neither stream can stall the process. */
  private Ended runWithin(String heap, String... arguments)
      throws IOException, InterruptedException {
    Path out = directory.resolve("out");
    Path err = directory.resolve("err");
    List<String> command = new ArrayList<>();
    command.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
    command.addAll(List.of(heap, "-Dfile.encoding=US-ASCII", "-jar"));
    command.add(System.getProperty("ohmtrail.jar"));
    command.addAll(List.of(arguments));
    int exitCode =
        new ProcessBuilder(command)
            .redirectOutput(out.toFile())
            .redirectError(err.toFile())
            .start()
            .waitFor();
    return new Ended(exitCode, Files.readString(out), Files.readString(err));
  }
}
