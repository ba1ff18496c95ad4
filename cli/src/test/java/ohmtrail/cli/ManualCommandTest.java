package ohmtrail.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Man pages and completion, as a package installs them. */
class ManualCommandTest {
  private static final Path EXAMPLE =
      Path.of(System.getProperty("ohmtrail.shared"), "cases", "smallest.yaml").toAbsolutePath();

  @TempDir private Path directory;

  private static String run(String... arguments) {
    StringWriter out = new StringWriter();
    StringWriter err = new StringWriter();
    assertEquals(
        0,
        Ohmtrail.run(new PrintWriter(out, true), new PrintWriter(err, true), arguments),
        err.toString());
    return out.toString();
  }

  @BeforeEach
  void written() {
    run("manual", directory.toString());
  }

  @Test
  void everyCommandThatHelpShowsHasItsPageAndNoOther() throws IOException {
    String help = run("--help");
    List<String> commands =
        help.lines()
            .dropWhile(line -> !line.startsWith("Commands:"))
            .skip(1)
            .takeWhile(line -> !line.startsWith("Exit codes:"))
            .filter(line -> line.matches("  [a-z]+ .*"))
            .map(line -> line.strip().split(" ", -1)[0])
            .toList();
    assertTrue(commands.contains("locate"), help);
    try (Stream<Path> pages = Files.list(directory.resolve("man1"))) {
      assertEquals(
          Stream.concat(
                  Stream.of("ohmtrail.1"), commands.stream().map(name -> "ohmtrail-" + name + ".1"))
              .sorted()
              .toList(),
          pages.map(page -> page.getFileName().toString()).sorted().toList());
    }
  }

  @Test
  void aPageSaysWhatTheHelpSays() throws IOException {
    String page = Files.readString(directory.resolve("man1/ohmtrail-locate.1"));
    for (String part :
        List.of(
            ".TH \"OHMTRAIL\\-LOCATE\" \"1\"",
            ".SH \"SYNOPSIS\"",
            "\\-\\-chart=FILE",
            "which box to open first",
            ".SH \"EXIT STATUS\"",
            "ohmtrail locate kitchen.yaml",
            "licensed electrician")) {
      assertTrue(page.contains(part), part + " in " + page);
    }
    assertFalse(page.contains("${"), page);
  }

  /** The formatter itself finds nothing wrong; where there is none, that is not looked at. */
  @Test
  void theFormatterTakesThePages() throws Exception {
    assumeTrue(Files.isExecutable(Path.of("/usr/bin/groff")), "groff");
    Process groff =
        new ProcessBuilder(
                "groff", "-ww", "-man", "-Tutf8", directory.resolve("man1/ohmtrail.1").toString())
            .redirectOutput(ProcessBuilder.Redirect.DISCARD)
            .start();
    String said = new String(groff.getErrorStream().readAllBytes(), StandardCharsets.UTF_8);
    assertEquals(0, groff.waitFor());
    assertEquals("", said);
  }

  /**
   * Types a line into bash and asks what it would complete; "ohmtrail" is a stand-in that lists.
   */
  private String completed(String... words) throws Exception {
    Path program = directory.resolve("ohmtrail");
    Files.writeString(
        program,
        "#!/bin/sh\n[ \"$1\" = names ] && printf '%s\\n' \"$2 of\" window/hot/contact door\n");
    assertTrue(program.toFile().setExecutable(true));
    StringBuilder script =
        new StringBuilder("shopt -s progcomp\n. " + directory + "/ohmtrail.bash\n");
    script.append("COMP_WORDS=(");
    for (String word : words) {
      script.append('\'').append(word).append("' ");
    }
    script.append(")\nCOMP_CWORD=").append(words.length - 1);
    script.append("\n_ohmtrail\nprintf '%s\\n' \"${COMPREPLY[@]}\"\n");
    Process bash =
        new ProcessBuilder("bash", "-c", script.toString()).redirectErrorStream(true).start();
    String said = new String(bash.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    bash.waitFor();
    return said;
  }

  @Test
  void bashCompletesCommandsOptionsAndNamesOfTheCase() throws Exception {
    assumeTrue(Files.isExecutable(Path.of("/bin/bash")), "bash");
    String program = directory.resolve("ohmtrail").toString();
    assertEquals("locate\n", completed(program, "loc"));
    assertTrue(completed(program, "locate", "--ch").contains("--chart\n"));
    String boxes = completed(program, "next", EXAMPLE.toString(), "--at", "do");
    assertEquals("door\n", boxes);
    String joints = completed(program, "predict", EXAMPLE.toString(), "--degrade", "win");
    assertEquals("window/hot/contact\n", joints);
  }

  @Test
  void theNamesOfACaseAreListed() {
    assertTrue(run("names", "boxes", EXAMPLE.toString()).startsWith("panel\ndoor\n"));
    assertTrue(run("names", "joints", EXAMPLE.toString()).contains("window/neutral/contact\n"));
    assertEquals("1500 W at window\n", run("names", "tests", EXAMPLE.toString()));
  }
}
