package ohmtrail.cli.build;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.Properties;
import java.util.regex.Pattern;

/**
 * What ties an answer to the program that gave it.
 *
 * @param version as in the project file
 * @param commit the first digits of the commit; {@value #UNKNOWN} where the build had no repository
 *     to ask
 */
public record Build(String version, String commit) {
  /** The commit of a build outside a repository. */
  public static final String UNKNOWN = "unknown";

  private static final String RESOURCE = "/ohmtrail/cli/version.properties";
  private static final Pattern HASH = Pattern.compile("[0-9a-f]{7,40}");

  /**
   * {@return what the build wrote beside the classes of the program that runs}
   *
   * @throws UncheckedIOException if it was left out
   */
  public static Build current() {
    return Loaded.CURRENT;
  }

  /** Reads what a build wrote: {@code version} and {@code commit}. */
  public static Build of(Properties properties) {
    String hash = properties.getProperty("commit", "");
    return new Build(
        properties.getProperty("version", UNKNOWN), HASH.matcher(hash).matches() ? hash : UNKNOWN);
  }

  /** The line that {@code --version} writes. */
  @Override
  public String toString() {
    return "Ohmtrail " + version + " (commit " + commit + ")";
  }

  /** Read when first asked for, once. */
  private static final class Loaded {
    static final Build CURRENT = read();

    private static Build read() {
      try (InputStream stream = Build.class.getResourceAsStream(RESOURCE)) {
        if (stream == null) {
          throw new IOException(
              "The resource (" + RESOURCE + ") must be in the jar. Maybe build it again.");
        }
        Properties properties = new Properties();
        properties.load(stream);
        return of(properties);
      } catch (IOException e) {
        throw new UncheckedIOException(e);
      }
    }
  }
}
