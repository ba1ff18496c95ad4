package ohmtrail.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import ohmtrail.cli.build.Build;

/**
 * Outputs kept as files in {@code src/test/resources/golden}. After a change that is meant, write
 * them anew with {@code mvn -pl solver,cli test -Dohmtrail.golden=write} and read the difference
 * before it is committed.
 */
public final class Golden {
  private static final Path DIRECTORY =
      Path.of(System.getProperty("basedir", "."), "src", "test", "resources", "golden");

  private Golden() {}

  /** Holds an output against the file of that name. */
  public static void assertMatches(String name, String written) {
    String actual = ofAnyBuild(written);
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

  /** A document without the version and the commit of the program that wrote it. */
  static String ofAnyBuild(String document) {
    Build build = Build.current();
    return document
        .replace("\"version\": \"" + build.version() + "\"", "\"version\": \"any\"")
        .replace("\"commit\": \"" + build.commit() + "\"", "\"commit\": \"any\"");
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
