package ohmtrail.cli.install;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;

/** Files of the project that the jar holds. */
final class Kept {
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
        throw new IOException(
            "The resource (" + path + ") must be in the jar.\nMaybe build it again.");
      }
      return new String(stream.readAllBytes(), StandardCharsets.UTF_8);
    }
  }
}
