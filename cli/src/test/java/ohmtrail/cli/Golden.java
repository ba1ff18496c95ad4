package ohmtrail.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import ohmtrail.cli.build.Build;

/**
 * Outputs kept as files in {@code src/test/resources/golden}. After a change that is meant, write
 * them anew with {@code mvn -pl solver,cli test -Dohmtrail.golden=write} and read the difference
 * before it is committed.
 */
public final class Golden {
  private static final Path DIRECTORY =
      Path.of(System.getProperty("basedir", "."), "src", "test", "resources", "golden");

  private static final String WITH_EVERY_ASSUMPTION = "cases/smallest.";

  /** The lines of the list in a text. */
  private static final Pattern ASSUMPTIONS = Pattern.compile("(?<=\nAssumptions\n)(?:  .*\n)+");

  /** One in a document that the case did not set. */
  private static final Pattern USUAL =
      Pattern.compile(",?\\s*\\{\\s*\"key\"[^{}]*\"overridden\": false\\s*\\}");

  private static final Pattern LEADING_COMMA = Pattern.compile("\\[\\s*,");

  private Golden() {}

  /** Holds an output against the file of that name. */
  public static void assertMatches(String name, String written) {
    String actual = kept(name, written);
    Path file = DIRECTORY.resolve(name);
    try {
      if (isWriting()) {
        Files.createDirectories(file.getParent());
        Files.writeString(file, actual);
        return;
      }
      assertTrue(Files.exists(file), "There is no " + file);
      assertEquals(Files.readString(file), actual, name);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** Whether the files are to be written and not held against. */
  public static boolean isWriting() {
    return "write".equals(System.getProperty("ohmtrail.golden"));
  }

  /**
   * What is kept of an output: not the version and the commit of the program that wrote it, and the
   * whole list of assumptions of one case alone. Of every other only what the case set itself.
   */
  static String kept(String name, String output) {
    Build build = Build.current();
    String ofAnyBuild =
        output
            .replace("\"version\": \"" + build.version() + "\"", "\"version\": \"any\"")
            .replace("\"commit\": \"" + build.commit() + "\"", "\"commit\": \"any\"");
    return name.startsWith(WITH_EVERY_ASSUMPTION) ? ofAnyBuild : withoutUsual(ofAnyBuild);
  }

  private static String withoutUsual(String output) {
    String inText =
        ASSUMPTIONS
            .matcher(output)
            .replaceAll(list -> Matcher.quoteReplacement(setByTheCase(list.group())));
    return LEADING_COMMA.matcher(USUAL.matcher(inText).replaceAll("")).replaceAll("[");
  }

  private static String setByTheCase(String list) {
    return list.lines()
        .filter(line -> line.contains("* set by the case"))
        .map(line -> line + "\n")
        .collect(Collectors.joining());
  }

  /** The text of the file of that name. */
  static String read(String name) throws IOException {
    return Files.readString(DIRECTORY.resolve(name));
  }

  /** The file of that name. */
  static void write(String name, String content) throws IOException {
    Path file = DIRECTORY.resolve(name);
    Files.createDirectories(file.getParent());
    Files.writeString(file, content);
  }
}
