package ohmtrail.cli.render;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.AccessDeniedException;
import java.nio.file.AtomicMoveNotSupportedException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;

/**
 * Puts something into a file whole or not at all: it is written beside the target first and takes
 * its place only when it is complete. When writing fails, what was there before is still there.
 */
public final class WholeFile {
  /** Files that crashes may have left beside the target before this gives up. */
  private static final int MOST_LEFTOVERS = 100;

  private WholeFile() {}

  /** Writes the content into a file. */
  @FunctionalInterface
  public interface Content {
    /**
     * Writes.
     *
     * @param file an empty file whose name ends like the target's
     * @throws IOException when it cannot be written
     */
    void writeTo(Path file) throws IOException;
  }

  /**
   * Writes.
   *
   * @param target the file to make or replace
   * @param content writes into the file it is given
   * @throws IOException when the target cannot be written; the message is fit for the user
   */
  public static void write(Path target, Content content) throws IOException {
    requireDirectory(target);
    if (Files.isDirectory(target)) {
      throw new IOException(
          "Cannot write (" + target + "): it is a directory.\nMaybe add a file name to it.");
    }
    try {
      // A link stays a link: what it points to is replaced.
      Path place = Files.exists(target) ? target.toRealPath() : target.toAbsolutePath();
      Path beside = createBeside(place);
      try {
        content.writeTo(beside);
        force(beside);
        move(beside, place);
      } finally {
        Files.deleteIfExists(beside);
      }
    } catch (IOException e) {
      throw new IOException(
          "Cannot write (" + target + "): " + reason(e) + ".\nMaybe choose another place.", e);
    }
  }

  /** Writes text as UTF-8. */
  public static void write(Path target, String text) throws IOException {
    write(target, file -> Files.writeString(file, text, StandardCharsets.UTF_8));
  }

  private static void requireDirectory(Path target) throws IOException {
    Path parent = target.toAbsolutePath().getParent();
    if (parent == null || target.getFileName() == null || !Files.isDirectory(parent)) {
      throw new IOException(
          "Cannot write ("
              + target
              + "): there is no directory ("
              + parent
              + ").\nMaybe make the directory first.");
    }
  }

  /** Not a temporary file of the system's: those are readable by their owner alone. */
  private static Path createBeside(Path target) throws IOException {
    for (int number = 0; number < MOST_LEFTOVERS; number++) {
      Path beside = target.resolveSibling(".ohmtrail-" + number + "-" + target.getFileName());
      if (!Files.exists(beside)) {
        return Files.createFile(beside);
      }
    }
    throw new IOException("too many unfinished files (.ohmtrail-...) lie beside it");
  }

  /** Down to the disk before it takes the target's place: a flat battery finds one or the other. */
  private static void force(Path file) throws IOException {
    try (FileChannel channel = FileChannel.open(file, StandardOpenOption.WRITE)) {
      channel.force(true);
    }
  }

  private static String reason(IOException e) {
    if (e instanceof AccessDeniedException) {
      return "permission denied";
    }
    if (e instanceof FileSystemException failure) {
      return failure.getReason() == null ? "no file can be made there" : failure.getReason();
    }
    return e.getMessage() == null ? "the disk failed" : e.getMessage();
  }

  private static void move(Path from, Path to) throws IOException {
    try {
      Files.move(from, to, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
    } catch (AtomicMoveNotSupportedException e) {
      Files.move(from, to, StandardCopyOption.REPLACE_EXISTING);
    }
  }
}
