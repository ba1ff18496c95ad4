package ohmtrail.cli;

import java.io.IOException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import ohmtrail.cli.casefile.CaseFile;
import ohmtrail.cli.casefile.CaseFileWriter;
import ohmtrail.cli.file.WholeFile;
import ohmtrail.cli.render.text.TruthText;
import ohmtrail.practice.Practice;
import ohmtrail.practice.PracticeCase;

/** Drawn cases as case files in a directory, the truth of each in a file beside it. */
final class PracticeFiles {
  private final Path directory;

  private PracticeFiles(Path directory) {
    this.directory = directory;
  }

  /**
   * Files in a directory, which is made where it is not there.
   *
   * @throws IOException when it cannot be
   */
  static PracticeFiles in(Path directory) throws IOException {
    try {
      Files.createDirectories(directory);
    } catch (FileAlreadyExistsException e) {
      throw new IOException(
          "Cannot write into ("
              + directory
              + "): it is a file.\nMaybe name a directory, or none that is there.",
          e);
    } catch (IOException e) {
      throw new IOException(
          "Cannot make the directory (" + directory + ").\nMaybe choose another place.", e);
    }
    return new PracticeFiles(directory);
  }

  /**
   * Writes the first cases of a series.
   *
   * @throws IOException when one cannot be written
   */
  void write(Practice practice, long seed, int cases) throws IOException {
    String population = practice.population().name();
    for (int number = 0; number < cases; number++) {
      String name = String.format(Locale.ROOT, "%s-%04d", population, number);
      PracticeCase drawn = practice.caseOf(number);
      CaseFile caseFile =
          new CaseFile(name, drawn.circuit(), drawn.survey(), drawn.assumptions(), List.of());
      WholeFile.write(directory.resolve(name + ".yaml"), new CaseFileWriter().write(caseFile));
      WholeFile.write(
          directory.resolve(name + ".truth.yaml"), TruthText.of(drawn, population, seed, number));
    }
  }
}
