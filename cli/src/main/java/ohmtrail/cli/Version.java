package ohmtrail.cli;

import java.io.IOException;
import java.io.InputStream;
import java.util.Properties;
import picocli.CommandLine.IVersionProvider;

/** The version that the build wrote beside this class. */
final class Version implements IVersionProvider {

  private static final String RESOURCE = "version.properties";

  /**
   * {@return the program's name and version, one line}
   *
   * @throws IOException if the build left the version out of the jar
   */
  @Override
  public String[] getVersion() throws IOException {
    return new String[] {"Ohmtrail " + number()};
  }

  private static String number() throws IOException {
    try (InputStream stream = Version.class.getResourceAsStream(RESOURCE)) {
      if (stream == null) {
        throw new IOException(
            "The resource (" + RESOURCE + ") must be in the jar. Maybe build it again.");
      }
      Properties properties = new Properties();
      properties.load(stream);
      return properties.getProperty("version", "");
    }
  }
}
