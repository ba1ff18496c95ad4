package ohmtrail.cli.file;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileAttribute;
import java.nio.file.attribute.PosixFileAttributeView;
import java.nio.file.attribute.PosixFileAttributes;
import java.nio.file.attribute.PosixFilePermission;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * Who may do what with a file that is about to be replaced, for the new one to have the same.
 *
 * @param file the file
 * @param attributes its owner, group and mode; empty where it is not there or the system knows none
 * @param names how many names it has: hard links
 */
record FileKept(Path file, Optional<PosixFileAttributes> attributes, int names) {
  private static final Set<PosixFilePermission> WRITING =
      Set.of(
          PosixFilePermission.OWNER_WRITE,
          PosixFilePermission.GROUP_WRITE,
          PosixFilePermission.OTHERS_WRITE);

  static FileKept of(Path file) throws IOException {
    if (!Files.exists(file) || !knowsModes(file)) {
      return new FileKept(file, Optional.empty(), 1);
    }
    return new FileKept(
        file, Optional.of(Files.readAttributes(file, PosixFileAttributes.class)), names(file));
  }

  private static boolean knowsModes(Path file) {
    return Files.getFileAttributeView(file, PosixFileAttributeView.class) != null;
  }

  private static int names(Path file) throws IOException {
    try {
      return Files.getAttribute(file, "unix:nlink") instanceof Integer names ? names : 1;
    } catch (UnsupportedOperationException | IllegalArgumentException e) {
      return 1;
    }
  }

  /** Its mode, for the new file to be made with; nobody reads it meanwhile who may not. */
  FileAttribute<?>[] mode() {
    return attributes
        .map(
            kept ->
                new FileAttribute<?>[] {PosixFilePermissions.asFileAttribute(kept.permissions())})
        .orElse(new FileAttribute<?>[0]);
  }

  /**
   * A file that nobody may write is not replaced either.
   *
   * @throws IOException where it is one
   */
  void requireWritable() throws IOException {
    boolean readOnly =
        attributes.isPresent()
            ? attributes.get().permissions().stream().noneMatch(WRITING::contains)
            : Files.exists(file) && !Files.isWritable(file);
    if (readOnly) {
      throw new IOException("it is read-only");
    }
  }

  /**
   * Gives another file its mode, owner and group.
   *
   * @return what cannot be kept, in sentences; mostly nothing
   */
  String giveTo(Path other) throws IOException {
    List<String> lost = new ArrayList<>();
    if (attributes.isPresent()) {
      PosixFileAttributeView view = Files.getFileAttributeView(other, PosixFileAttributeView.class);
      if (!giveOwner(view, attributes.get())) {
        lost.add(
            file.getFileName()
                + " belonged to "
                + attributes.get().owner().getName()
                + ", group "
                + attributes.get().group().getName()
                + ", and does no longer.");
      }
      view.setPermissions(attributes.get().permissions());
    }
    if (names > 1) {
      lost.add(
          file.getFileName()
              + " had another name too (a hard link): under that one is still what was there"
              + " before.");
    }
    return String.join(" ", lost);
  }

  private static boolean giveOwner(PosixFileAttributeView view, PosixFileAttributes kept)
      throws IOException {
    PosixFileAttributes now = view.readAttributes();
    try {
      if (!now.group().equals(kept.group())) {
        view.setGroup(kept.group());
      }
      if (!now.owner().equals(kept.owner())) {
        view.setOwner(kept.owner());
      }
      return true;
    } catch (IOException e) {
      return false;
    }
  }
}
