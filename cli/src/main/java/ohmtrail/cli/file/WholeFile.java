package ohmtrail.cli.file;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.AccessDeniedException;
import java.nio.file.AtomicMoveNotSupportedException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;

/**
 * Puts something into a file whole or not at all: it is written beside the target first and takes
 * its place only when it is complete and on the disk. When writing fails, what was there before is
 * still there.
 */
public final class WholeFile {
  /** Links that lead to one another before this gives up. */
  private static final int MOST_LINKS = 40;

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
   * @return what could not be kept as it was, in a sentence; mostly nothing
   * @throws IOException when the target cannot be written; the message is fit for the user
   */
  public static String write(Path target, Content content) throws IOException {
    requireDirectory(target);
    if (Files.isDirectory(target)) {
      throw new IOException(
          "Cannot write (" + target + "): it is a directory.\nMaybe add a file name to it.");
    }
    try {
      Path place = behindLinks(target);
      FileKept before = FileKept.of(place);
      before.requireWritable();
      Unfinished.clear(place);
      Path beside = Unfinished.create(place, before);
      try {
        content.writeTo(beside);
        String lost = before.giveTo(beside);
        force(beside);
        move(beside, place);
        forceFolder(place);
        return lost;
      } finally {
        Files.deleteIfExists(beside);
      }
    } catch (IOException e) {
      throw new IOException(
          "Cannot write (" + target + "): " + reason(e) + ".\nMaybe choose another place.", e);
    }
  }

  /** Writes text as UTF-8. */
  public static String write(Path target, String text) throws IOException {
    return write(target, file -> Files.writeString(file, text, StandardCharsets.UTF_8));
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

  /** A link stays a link: what it leads to is replaced, or made where it is not there yet. */
  private static Path behindLinks(Path target) throws IOException {
    Path place = target.toAbsolutePath();
    for (int link = 0; Files.isSymbolicLink(place); link++) {
      if (link == MOST_LINKS) {
        throw new IOException("its links lead to one another");
      }
      place = place.resolveSibling(Files.readSymbolicLink(place));
    }
    return Files.exists(place, LinkOption.NOFOLLOW_LINKS) ? place.toRealPath() : place;
  }

  /** Down to the disk before it takes the target's place: a flat battery finds one or the other. */
  private static void force(Path file) throws IOException {
    try (FileChannel channel = FileChannel.open(file, StandardOpenOption.WRITE)) {
      channel.force(true);
    }
  }

  /** The new name too is down on the disk, where the system lets a folder be forced there. */
  private static void forceFolder(Path file) {
    Path folder = file.toAbsolutePath().getParent();
    if (folder == null) {
      return;
    }
    try (FileChannel channel = FileChannel.open(folder, StandardOpenOption.READ)) {
      channel.force(true);
    } catch (IOException e) {
      // A system on which a folder is no file keeps its names by other means.
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
