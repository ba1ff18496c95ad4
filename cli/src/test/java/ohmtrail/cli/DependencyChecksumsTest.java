package ohmtrail.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.File;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/**
 * Every library on the class path, of the program and of its tests, is the one that was looked at
 * when its checksum was written down: what a repository hands out under the same name and version
 * later is not taken. With {@code -Dohmtrail.golden=write} the list is written anew; then its
 * difference is to be read. Plugins of the build are not on the class path and not covered.
 */
class DependencyChecksumsTest {
  private static final Path LIST =
      Path.of(System.getProperty("basedir", "."), "src", "test", "dependency-checksums.txt");

  /** Where a build keeps what it fetched. */
  private static final String REPOSITORY = File.separator + "repository" + File.separator;

  @Test
  void everyLibraryHasTheChecksumThatWasWrittenDown() throws Exception {
    Map<String, String> found = new TreeMap<>();
    for (String entry : classPath().split(File.pathSeparator, -1)) {
      Path jar = Path.of(entry);
      if (entry.contains(REPOSITORY) && entry.endsWith(".jar") && Files.isRegularFile(jar)) {
        found.put(String.valueOf(jar.getFileName()), sha256(jar));
      }
    }
    assertTrue(found.size() > 10, "the class path names few libraries: " + classPath());
    Map<String, String> written = new TreeMap<>();
    if (Golden.isWriting()) {
      Files.writeString(
          LIST,
          found.entrySet().stream()
              .map(each -> each.getValue() + "  " + each.getKey() + "\n")
              .collect(Collectors.joining()));
    }
    try (Stream<String> lines = Files.lines(LIST)) {
      lines.forEach(line -> written.put(line.substring(66), line.substring(0, 64)));
    }
    written.keySet().retainAll(found.keySet());
    assertEquals(written, found, "-Dohmtrail.golden=write writes the list anew");
  }

  /** Surefire hides the class path in a jar and says it apart. */
  private static String classPath() {
    return System.getProperty(
        "surefire.test.class.path", System.getProperty("java.class.path", ""));
  }

  private static String sha256(Path file) throws IOException, NoSuchAlgorithmException {
    byte[] digest = MessageDigest.getInstance("SHA-256").digest(Files.readAllBytes(file));
    return HexFormat.of().formatHex(digest);
  }
}
