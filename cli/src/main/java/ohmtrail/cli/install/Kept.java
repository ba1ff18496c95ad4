package ohmtrail.cli.install;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.net.URI;
import java.net.URISyntaxException;
import java.net.URL;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileSystem;
import java.nio.file.FileSystems;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;

/** Files of the project that the jar holds. */
final class Kept {
  private static final String JAR = "jar";

  private Kept() {}

  /**
   * The text of one.
   *
   * @param path below the folder of this package
   * @throws IOException when the build left it out
   */
  static String text(String path) throws IOException {
    try (InputStream stream = Kept.class.getResourceAsStream(path)) {
      if (stream == null) {
        throw missing(path);
      }
      return new String(stream.readAllBytes(), StandardCharsets.UTF_8);
    }
  }

  /**
   * The names of the files of a folder that end so, without the ending, in the order of the
   * alphabet.
   *
   * @throws UncheckedIOException when the build left the folder out
   */
  static List<String> names(String folder, String ending) {
    try {
      URL place = Kept.class.getResource(folder);
      if (place == null) {
        throw missing(folder);
      }
      URI uri = place.toURI();
      if (!JAR.equals(uri.getScheme())) {
        return names(Path.of(uri), ending);
      }
      try (FileSystem jar = FileSystems.newFileSystem(uri, Map.of())) {
        String path = uri.getSchemeSpecificPart();
        return names(jar.getPath(path.substring(path.lastIndexOf("!/") + 1)), ending);
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    } catch (URISyntaxException e) {
      throw new IllegalStateException("A resource must have a URI", e);
    }
  }

  private static List<String> names(Path folder, String ending) throws IOException {
    try (Stream<Path> files = Files.list(folder)) {
      return files
          .map(file -> String.valueOf(file.getFileName()))
          .filter(name -> name.endsWith(ending))
          .map(name -> name.substring(0, name.length() - ending.length()))
          .sorted()
          .toList();
    }
  }

  private static IOException missing(String path) {
    return new IOException(
        "The resource (" + path + ") must be in the jar.\nMaybe build it again.");
  }
}
