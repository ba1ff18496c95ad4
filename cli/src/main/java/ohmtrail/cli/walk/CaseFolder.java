package ohmtrail.cli.walk;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.Optional;
import ohmtrail.cli.file.WholeFile;

/**
 * A case in a file, replaced whole each time. Where somebody else has changed the file meanwhile it
 * is left alone, and the case goes on in another one beside it. What was there before the first
 * change is kept in a file that ends in {@code .before}, or in {@code .before-2} and so on: none
 * that is there is written over.
 */
public final class CaseFolder implements CaseStore {
  /** Files of one case beside each other before this gives up. */
  private static final int MOST_BESIDE = 1000;

  private final Writing writing;
  private Path file;

  /** What this or its predecessor left in the file; empty for a file that was not there. */
  private Optional<String> known;

  private boolean copied;

  /** Puts text into a file, whole or not at all. */
  @FunctionalInterface
  public interface Writing {
    /**
     * Writes.
     *
     * @return what could not be kept as it was, in sentences; mostly nothing
     * @throws IOException when it cannot be written
     */
    String write(Path file, String text) throws IOException;
  }

  /**
   * Over a file.
   *
   * @param file need not be there yet
   * @param read what it held when the case was read; empty when it was not there
   * @param writing writes it; {@link WholeFile} but in tests
   */
  public CaseFolder(Path file, Optional<String> read, Writing writing) {
    this.file = file;
    this.known = read;
    this.writing = writing;
    this.copied = read.isEmpty();
  }

  /** What a file holds; empty when it is not there. */
  public static Optional<String> textOf(Path file) throws IOException {
    try {
      return Optional.of(new String(Files.readAllBytes(file), StandardCharsets.UTF_8));
    } catch (NoSuchFileException e) {
      return Optional.empty();
    }
  }

  @Override
  public String save(String text) throws IOException {
    if (known.equals(Optional.of(text))) {
      return "";
    }
    String said;
    if (!textOf(file).equals(known)) {
      Path other = beside("");
      String changed = Files.exists(file) ? "has changed " : "has taken away ";
      said =
          "Somebody else "
              + changed
              + file.getFileName()
              + " meanwhile: it is left as it is now, and this session goes on in "
              + other.getFileName()
              + ". "
              + writing.write(other, text);
      file = other;
    } else {
      if (!copied) {
        keepBefore(known.orElse(""));
      }
      said = writing.write(file, text);
    }
    known = Optional.of(text);
    copied = true;
    return said.strip();
  }

  /** What was there before, in a file of its own; one that says the same will do. */
  private void keepBefore(String text) throws IOException {
    for (int number = 1; number < MOST_BESIDE; number++) {
      String ending = number == 1 ? ".before" : ".before-" + number;
      Path before = file.resolveSibling(file.getFileName() + ending);
      Optional<String> there = textOf(before);
      if (there.isEmpty()) {
        writing.write(before, text);
      }
      if (there.isEmpty() || there.get().equals(text)) {
        copied = true;
        return;
      }
    }
    throw tooMany(file.getFileName() + ".before");
  }

  @Override
  public String setAside(String text) throws IOException {
    Path other = beside("-before-remaking");
    writing.write(other, text);
    return String.valueOf(other.getFileName());
  }

  @Override
  public String name() {
    return file.toString();
  }

  /** A file that is not there: kitchen-2.yaml beside kitchen.yaml. */
  private Path beside(String suffix) throws IOException {
    String name = String.valueOf(file.getFileName()).replaceFirst("\\.ya?ml$", "");
    for (int number = suffix.isEmpty() ? 2 : 1; number < MOST_BESIDE; number++) {
      Path other = file.resolveSibling(name + suffix + "-" + number + ".yaml");
      if (!Files.exists(other)) {
        return other;
      }
    }
    throw tooMany(name);
  }

  private static IOException tooMany(String name) {
    return new IOException(
        "Too many files (" + name + "-...) lie beside it.\nMaybe clear some of them away.");
  }
}
