package ohmtrail.cli.report;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.net.URISyntaxException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.CodeSource;
import java.security.DigestInputStream;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import ohmtrail.cli.build.Build;

/**
 * What a report was made from and by.
 *
 * @param program version and commit
 * @param java version of the Java that ran it
 * @param command the command that makes it again
 * @param files what was read, and the program, each with its SHA-256
 */
public record Provenance(String program, String java, String command, List<Hashed> files) {
  /**
   * A file and its digest.
   *
   * @param what what it is
   * @param name its name without its folder
   * @param sha256 in hexadecimal digits; a sentence where there is no file
   */
  public record Hashed(String what, String name, String sha256) {}

  /** Copies the list. */
  public Provenance {
    files = List.copyOf(files);
  }

  /**
   * Of a report that is made now.
   *
   * @param command the command that makes it again
   * @param files what the case was read from, the case file first
   * @throws IOException when one of them cannot be read any more
   */
  public static Provenance of(String command, List<Path> files) throws IOException {
    List<Hashed> hashed = new ArrayList<>();
    for (Path file : files) {
      hashed.add(
          new Hashed(hashed.isEmpty() ? "case file" : "table of readings", name(file), of(file)));
    }
    hashed.add(archive());
    return new Provenance(
        Build.current().toString(),
        String.valueOf(System.getProperty("java.version")),
        command,
        hashed);
  }

  private static String name(Path file) {
    return String.valueOf(file.getFileName());
  }

  private static Hashed archive() throws IOException {
    CodeSource source = Provenance.class.getProtectionDomain().getCodeSource();
    try {
      Path place = Path.of(source.getLocation().toURI());
      return Files.isRegularFile(place)
          ? new Hashed("program", name(place), of(place))
          : new Hashed("program", "classes", "run from classes and not from a jar");
    } catch (URISyntaxException e) {
      return new Hashed("program", "unknown", "its place cannot be told");
    }
  }

  private static String of(Path file) throws IOException {
    MessageDigest digest = digest();
    try (InputStream in = new DigestInputStream(Files.newInputStream(file), digest)) {
      in.transferTo(OutputStream.nullOutputStream());
    }
    return HexFormat.of().formatHex(digest.digest());
  }

  /** The digest of bytes that were read. */
  static String sha256(byte[] content) {
    return HexFormat.of().formatHex(digest().digest(content));
  }

  private static MessageDigest digest() {
    try {
      return MessageDigest.getInstance("SHA-256");
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("Every Java has SHA-256", e);
    }
  }
}
