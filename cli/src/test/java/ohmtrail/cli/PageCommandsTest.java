package ohmtrail.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Every command that a page shows in a block runs as it stands there; a case that the page makes up
 * (kitchen.yaml) is an example case under that name. Long scores are cut to one case each, what
 * talks with a person is only asked for its help.
 */
class PageCommandsTest {
  private static final Path TOP =
      Path.of(System.getProperty("ohmtrail.shared")).toAbsolutePath().normalize().getParent();

  private static final Pattern COMMAND = Pattern.compile("(?m)^ {4}ohmtrail ((?:.*\\\\\\n)*.*)$");
  private static final Pattern WORD = Pattern.compile("\"([^\"]*)\"|(\\S+)");
  private static final List<String> CONVERSATIONS = List.of("walk", "practice");

  @TempDir private Path directory;

  static Stream<String> commands() throws IOException {
    List<String> commands = new ArrayList<>();
    List<Path> pages = new ArrayList<>(List.of(TOP.resolve("README.md")));
    try (Stream<Path> files = Files.list(TOP.resolve("docs"))) {
      files.filter(file -> file.toString().endsWith(".md")).sorted().forEach(pages::add);
    }
    for (Path page : pages) {
      Matcher found = COMMAND.matcher(Files.readString(page));
      while (found.find()) {
        commands.add(found.group(1).replace("\\\n", " ").replaceFirst("\\s+# .*", ""));
      }
    }
    assertTrue(commands.size() > 10, commands.toString());
    return commands.stream();
  }

  @ParameterizedTest
  @MethodSource("commands")
  void aCommandOnAPageRuns(String command) throws IOException {
    StringWriter out = new StringWriter();
    StringWriter err = new StringWriter();

    int code =
        Ohmtrail.run(new PrintWriter(out, true), new PrintWriter(err, true), arguments(command));

    assertEquals(0, code, err.toString());
    assertTrue(out.toString().length() > 0, command);
  }

  private String[] arguments(String command) throws IOException {
    List<String> words = new ArrayList<>();
    Matcher found = WORD.matcher(command);
    while (found.find()) {
      words.add(found.group(1) == null ? here(found.group(2)) : found.group(1));
    }
    int cases = words.indexOf("--cases");
    if (cases >= 0) {
      words.set(cases + 1, "1");
    }
    int oracle = words.indexOf("--oracle");
    if (oracle >= 0) {
      words.set(oracle + 1, "1");
    }
    return CONVERSATIONS.contains(words.get(0))
        ? new String[] {words.get(0), "--help"}
        : words.toArray(String[]::new);
  }

  /** A word of the command with its files where the test can have them. */
  private String here(String word) throws IOException {
    if (word.startsWith("shared/")) {
      return TOP.resolve(word).toString();
    }
    if (word.endsWith(".yaml")) {
      Path file = directory.resolve(word);
      Files.copy(TOP.resolve("shared/cases/living-room-neutral.yaml"), file);
      return file.toString();
    }
    boolean file = word.matches("([\\w-]+/)*[\\w-]+\\.(svg|png|csv|html|pdf)");
    return file ? directory.resolve(word.substring(word.lastIndexOf('/') + 1)).toString() : word;
  }
}
