package ohmtrail.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeFalse;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Starts the program as it is installed: {@code bin/ohmtrail}. */
class ProgramIT {
  private static final Path PROGRAM = Path.of(System.getProperty("ohmtrail.program"));

  @TempDir private Path directory;

  private record Ended(int exitCode, String out, String err) {}

  @BeforeEach
  void aShellIsNeeded() {
    assumeFalse(System.getProperty("os.name").startsWith("Windows"), "a POSIX shell is needed");
  }

  @Test
  void theFirstStartKeepsAnArchiveOfClassesAndTheNextOnesSayTheSame() throws Exception {
    Path cache = directory.resolve("cache");
    Ended first = run(PROGRAM, cache.toString(), "check", example());
    assertEquals(0, first.exitCode(), first.err());
    assertEquals(1, archives(cache));
    Ended second = run(PROGRAM, cache.toString(), "check", example());
    assertEquals(first, second);
    assertEquals(1, archives(cache));
    assertEquals("", second.err());
  }

  @Test
  void anArchiveThatIsDamagedOrOfNobodyKnowsWhatIsPassedOverWithoutAWord() throws Exception {
    Path cache = directory.resolve("cache");
    Ended first = run(PROGRAM, cache.toString(), "--version");
    try (Stream<Path> files = Files.list(cache)) {
      for (Path archive : files.toList()) {
        assertTrue(archive.toFile().setWritable(true) || Files.isWritable(archive));
        Files.writeString(archive, "no archive");
      }
    }
    assertEquals(first, run(PROGRAM, cache.toString(), "--version"));
  }

  @Test
  void withoutAFolderForTheArchiveItStartsAllTheSame() throws Exception {
    Path file = Files.writeString(directory.resolve("file"), "");
    Ended none = run(PROGRAM, "none", "--version");
    assertEquals(0, none.exitCode(), none.err());
    assertEquals(none, run(PROGRAM, file.resolve("under").toString(), "--version"));
    assertEquals("", none.err());
  }

  @Test
  void itIsFoundThroughALinkAndHandsItsExitCodeOn() throws Exception {
    Path link = Files.createSymbolicLink(directory.resolve("a link"), PROGRAM.toAbsolutePath());
    Path cache = directory.resolve("cache");
    assertEquals(0, run(link, cache.toString(), "--version").exitCode());
    Ended wrong = run(link, cache.toString(), "locate", directory.resolve("none").toString());
    assertEquals(2, wrong.exitCode(), wrong.err());
    assertEquals("", wrong.out());
  }

  @Test
  void examplesAndSchemasComeOutOfTheJar() throws Exception {
    Path folder = directory.resolve("mine");
    Ended written = run(PROGRAM, "none", "examples", folder.toString());
    assertEquals(0, written.exitCode(), written.err());
    assertTrue(written.out().lines().count() > 10, written.out());
    Path schema = folder.resolve("schema").resolve("case.schema.json");
    assertEquals(Files.readString(schema), run(PROGRAM, "none", "schema").out());
  }

  private static String example() {
    return Path.of(System.getProperty("ohmtrail.shared"), "cases", "smallest.yaml").toString();
  }

  private static long archives(Path cache) throws IOException {
    try (Stream<Path> files = Files.list(cache)) {
      return files.filter(file -> file.toString().endsWith(".jsa")).count();
    }
  }

  private Ended run(Path program, String cache, String... arguments)
      throws IOException, InterruptedException {
    Path out = Files.createTempFile(directory, "out", ".txt");
    Path err = Files.createTempFile(directory, "err", ".txt");
    List<String> command = new ArrayList<>(List.of(program.toString()));
    command.addAll(List.of(arguments));
    ProcessBuilder process =
        new ProcessBuilder(command).redirectOutput(out.toFile()).redirectError(err.toFile());
    process.environment().put("OHMTRAIL_CACHE", cache);
    process.environment().put("JAVA_HOME", System.getProperty("java.home"));
    int exitCode = process.start().waitFor();
    return new Ended(exitCode, Files.readString(out), Files.readString(err));
  }
}
