package ohmtrail.cli.install;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import ohmtrail.cli.file.WholeFile;

/** The example cases, each with its truth beside it, and the schema that their editors read. */
public final class Examples {
  private static final String FOLDER = "cases";
  private static final String ENDING = ".yaml";
  private static final String TRUTH = ".truth.yaml";

  private Examples() {}

  /** What they are called, in the order of the alphabet. */
  public static List<String> names() {
    return Kept.names(FOLDER, TRUTH);
  }

  /**
   * Writes them into a folder, which is made where it is not there: {@code cases} and {@code
   * schema} below it. A file that is there already and says something else is left alone, and then
   * nothing is written at all.
   *
   * @return the cases written, in the order of {@link #names}
   * @throws IOException when a file is in the way or cannot be written
   */
  public static List<Path> write(Path folder) throws IOException {
    Map<Path, String> files = new LinkedHashMap<>();
    List<String> names = names();
    for (String name : names) {
      for (String ending : List.of(ENDING, TRUTH)) {
        String path = FOLDER + "/" + name + ending;
        files.put(folder.resolve(path), Kept.text(path));
      }
    }
    files.put(
        folder.resolve("schema").resolve(Schemas.fileName(Schemas.CASE)),
        Schemas.text(Schemas.CASE));
    for (Map.Entry<Path, String> file : files.entrySet()) {
      requireFree(file.getKey(), file.getValue());
    }
    for (Map.Entry<Path, String> file : files.entrySet()) {
      Files.createDirectories(file.getKey().getParent());
      WholeFile.write(file.getKey(), file.getValue());
    }
    return names.stream().map(name -> folder.resolve(FOLDER).resolve(name + ENDING)).toList();
  }

  private static void requireFree(Path file, String text) throws IOException {
    boolean same =
        Files.isRegularFile(file)
            && Arrays.equals(Files.readAllBytes(file), text.getBytes(StandardCharsets.UTF_8));
    if (Files.exists(file) && !same) {
      throw new IOException(
          "File ("
              + file
              + ") is there already and is not that example; nothing was written.\nMaybe name another folder.");
    }
  }
}
