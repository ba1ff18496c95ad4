package ohmtrail.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Runs of far more boxes than a building has, on a thread whose stack is small: whatever follows
 * the run by recursion overflows it.
 */
class LongRunTest {
  private static final long SMALL_STACK_BYTES = 256 * 1024;

  private final StringWriter out = new StringWriter();
  private final StringWriter err = new StringWriter();
  @TempDir private Path directory;

  @Test
  void checkShowsARunOfSixThousandBoxesOneBelowTheOther() throws Exception {
    assertEquals(0, run("check", chain(6000, "")), err.toString());

    assertTrue(out.toString().contains("6001 boxes, 6000 cables"), out.toString().substring(0, 99));
    assertTrue(out.toString().contains("\n  b5999: receptacle"));
  }

  @Test
  void checkFollowsARunThatIsWrittenFromTheFarEndInward() throws Exception {
    String inward =
        IntStream.range(0, 3000)
            .map(i -> 2999 - i)
            .mapToObj(
                i -> "  - b" + i + ": receptacle 2 ft from " + (i == 0 ? "panel" : "b" + (i - 1)))
            .collect(Collectors.joining("\n"));

    assertEquals(0, run("check", written("run:\n  - panel\n" + inward + "\n")), err.toString());
    assertTrue(out.toString().contains("3001 boxes, 3000 cables"));
  }

  @Test
  void aChartIsDrawnOfARunOfAThreeHundredBoxes() throws Exception {
    String chart = directory.resolve("run.svg").toString();
    String loaded =
        """
        meters:
          m: 10 Mohm, 0.5 % + 2 counts, 0.1 V
        loads:
          heater: 1000 W
        tests:
          - heater at b299:
              - b150 hot-neutral 100.0 V m
        """;

    assertEquals(0, run("predict", chain(300, loaded), "--chart", chart), err.toString());
    assertTrue(Files.size(Path.of(chart)) > 0);
  }

  private String chain(int boxes, String more) throws IOException {
    return written(
        IntStream.range(0, boxes)
            .mapToObj(i -> "  - b" + i + ": receptacle 2 ft")
            .collect(Collectors.joining("\n", "run:\n  - panel\n", "\n" + more)));
  }

  private String written(String rest) throws IOException {
    return Files.writeString(
            directory.resolve("long.yaml"),
            "supply: 120 V 60 Hz\nbreaker: 15 A\ncable: 14 AWG copper\n" + rest)
        .toString();
  }

  private int run(String... arguments) throws InterruptedException {
    int[] exitCode = {-1};
    Thread thread =
        new Thread(
            null,
            () ->
                exitCode[0] =
                    Ohmtrail.run(new PrintWriter(out, true), new PrintWriter(err, true), arguments),
            "small stack",
            SMALL_STACK_BYTES);
    thread.start();
    thread.join();
    return exitCode[0];
  }
}
