package ohmtrail.cli.casefile;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.URISyntaxException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Objects;
import java.util.stream.Stream;

/** The cases that stand beside these tests, and short ways to read a text as a case. */
final class CaseFiles {

  private CaseFiles() {}

  static Path folder(String name) {
    try {
      return Path.of(Objects.requireNonNull(CaseFiles.class.getResource("/cases/" + name)).toURI());
    } catch (URISyntaxException e) {
      throw new IllegalStateException(e);
    }
  }

  /** The case files of a folder, sorted. */
  static List<Path> in(Path folder) {
    try (Stream<Path> files = Files.list(folder)) {
      return files.filter(file -> file.toString().endsWith(".yaml")).sorted().toList();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** The example cases of the project, without the truths that they were drawn from. */
  static List<Path> examples() {
    return in(Path.of(System.getProperty("ohmtrail.shared"), "cases")).stream()
        .filter(file -> !file.toString().endsWith(".truth.yaml"))
        .toList();
  }

  static String text(Path file) {
    try {
      return Files.readString(file);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  static Path temporaryFolder() {
    try {
      return Files.createTempDirectory("cases");
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** Removes a folder and the files in it. */
  static void remove(Path folder) throws IOException {
    List<Path> files;
    try (Stream<Path> listed = Files.list(folder)) {
      files = listed.toList();
    }
    for (Path file : files) {
      Files.delete(file);
    }
    Files.delete(folder);
  }

  /** Reads a text as a case file that stands in a folder of its own. */
  static CaseFile read(String text) throws CaseFileException {
    Path folder = temporaryFolder();
    try {
      try {
        return new CaseFileReader().read(Files.writeString(folder.resolve("case.yaml"), text));
      } finally {
        remove(folder);
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** The problems of a text, as {@code line:column: message}. */
  static List<String> problems(String text) {
    try {
      read(text);
      return List.of();
    } catch (CaseFileException e) {
      return e.problems().stream()
          .map(problem -> problem.line() + ":" + problem.column() + ": " + problem.message())
          .toList();
    }
  }
}
