package ohmtrail.cli.file;

import java.io.IOException;
import java.nio.file.DirectoryStream;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Files that are being written beside what they are to replace: {@code .ohmtrail-PROCESS-N-NAME}.
 * What a process left that was ended half-way is cleared away by the next one.
 */
final class Unfinished {
  private static final String START = ".ohmtrail-";

  /** Files of one process beside one target; it needs one at a time. */
  private static final int MOST = 1000;

  /** On a disk that others share the process may run elsewhere; no file takes so long to write. */
  private static final Duration STALE = Duration.ofMinutes(1);

  private Unfinished() {}

  /** Makes an empty one for a target, with the mode that the target has. */
  static Path create(Path target, FileKept before) throws IOException {
    for (int number = 0; number < MOST; number++) {
      String name =
          START + ProcessHandle.current().pid() + "-" + number + "-" + target.getFileName();
      try {
        return Files.createFile(target.resolveSibling(name), before.mode());
      } catch (FileAlreadyExistsException e) {
        // Of an earlier process of the same number: the next one.
      }
    }
    throw new IOException("too many unfinished files (" + START + "...) lie beside it");
  }

  /** Clears away what processes left beside a target that run no longer. */
  static void clear(Path target) {
    Path folder = target.toAbsolutePath().getParent();
    Pattern left =
        Pattern.compile(
            Pattern.quote(START)
                + "([0-9]{1,18})-([0-9]+-)?"
                + Pattern.quote(String.valueOf(target.getFileName())));
    if (folder == null) {
      return;
    }
    try (DirectoryStream<Path> beside =
        Files.newDirectoryStream(
            folder, each -> String.valueOf(each.getFileName()).startsWith(START))) {
      for (Path each : beside) {
        Matcher name = left.matcher(String.valueOf(each.getFileName()));
        if (name.matches() && isLeft(each, Long.parseLong(name.group(1)))) {
          Files.deleteIfExists(each);
        }
      }
    } catch (IOException | RuntimeException e) {
      // It is in nobody's way: a later save clears it.
    }
  }

  private static boolean isLeft(Path file, long process) throws IOException {
    Optional<ProcessHandle> writer = ProcessHandle.of(process);
    Instant stale = Instant.now().minus(STALE);
    boolean old = Files.getLastModifiedTime(file).toInstant().isBefore(stale);
    return old && (writer.isEmpty() || process == ProcessHandle.current().pid());
  }
}
