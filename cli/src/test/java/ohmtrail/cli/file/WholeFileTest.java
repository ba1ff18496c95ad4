package ohmtrail.cli.file;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.nio.file.attribute.PosixFilePermissions;
import java.time.Instant;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class WholeFileTest {
  @TempDir private Path directory;

  @Test
  void theFileHoldsWhatWasWritten() throws IOException {
    Path target = directory.resolve("chart.svg");

    WholeFile.write(target, "<svg/>\n");

    assertEquals("<svg/>\n", Files.readString(target));
    assertNothingElse(target);
  }

  @Test
  void anExistingFileIsReplaced() throws IOException {
    Path target = Files.writeString(directory.resolve("chart.svg"), "old and longer");

    WholeFile.write(target, "new");

    assertEquals("new", Files.readString(target));
    assertNothingElse(target);
  }

  @Test
  void anExistingFileIsStillThereWhenTheDiskFailsHalfWay() throws IOException {
    Path target = Files.writeString(directory.resolve("chart.svg"), "old");

    IOException failure =
        assertThrows(IOException.class, () -> WholeFile.write(target, WholeFileTest::failHalfWay));

    assertEquals("old", Files.readString(target));
    assertTrue(failure.getMessage().contains("(" + target + ")"), failure.getMessage());
    assertTrue(failure.getMessage().contains("No space left on device"), failure.getMessage());
    assertNothingElse(target);
  }

  @Test
  void noFileIsMadeWhenTheDiskFailsHalfWay() throws IOException {
    Path target = directory.resolve("chart.svg");

    assertThrows(IOException.class, () -> WholeFile.write(target, WholeFileTest::failHalfWay));

    assertFalse(Files.exists(target));
    assertNothingElse(target);
  }

  @Test
  void nothingIsLeftBehindByADefectOfTheWriter() throws IOException {
    Path target = directory.resolve("chart.svg");

    assertThrows(
        IllegalStateException.class,
        () ->
            WholeFile.write(
                target,
                file -> {
                  throw new IllegalStateException("defect");
                }));

    assertNothingElse(target);
  }

  @Test
  void aMissingDirectoryIsNamed() {
    Path target = directory.resolve("no").resolve("chart.svg");

    IOException failure = assertThrows(IOException.class, () -> WholeFile.write(target, "x"));

    assertTrue(failure.getMessage().contains("(" + target.getParent() + ")"), failure.getMessage());
    assertFalse(Files.exists(target.getParent()));
  }

  @Test
  void aDirectoryIsNoTarget() throws IOException {
    Path target = Files.createDirectory(directory.resolve("chart.svg"));

    IOException failure = assertThrows(IOException.class, () -> WholeFile.write(target, "x"));

    assertTrue(failure.getMessage().contains("it is a directory"), failure.getMessage());
    assertTrue(Files.isDirectory(target));
  }

  @Test
  void theWriterIsHandedAFileWithTheEndingOfTheTarget() throws IOException {
    Path target = directory.resolve("chart.png");

    WholeFile.write(
        target,
        file -> {
          assertTrue(file.toString().endsWith("chart.png"), file.toString());
          assertEquals(directory, file.getParent());
          Files.writeString(file, "png");
        });

    assertEquals("png", Files.readString(target));
  }

  @Test
  void aLinkStaysALinkAndItsTargetIsReplaced() throws IOException {
    Path real = Files.writeString(directory.resolve("real.svg"), "old");
    Path link = Files.createSymbolicLink(directory.resolve("link.svg"), real);

    WholeFile.write(link, "new");

    assertTrue(Files.isSymbolicLink(link));
    assertEquals("new", Files.readString(real));
  }

  @Test
  void aLinkToAFileThatIsNotThereYetStaysALink() throws IOException {
    Path real = directory.resolve("real.svg");
    Path link = Files.createSymbolicLink(directory.resolve("link.svg"), Path.of("real.svg"));

    WholeFile.write(link, "new");

    assertTrue(Files.isSymbolicLink(link));
    assertEquals("new", Files.readString(real));
  }

  @Test
  void linksThatLeadToOneAnotherAreSaid() throws IOException {
    Path one = directory.resolve("one.svg");
    Files.createSymbolicLink(one, Path.of("other.svg"));
    Files.createSymbolicLink(directory.resolve("other.svg"), Path.of("one.svg"));

    IOException told = assertThrows(IOException.class, () -> WholeFile.write(one, "new"));

    assertTrue(told.getMessage().contains("links lead to one another"), told.getMessage());
  }

  @Test
  void theModeOfAFileStaysAsItWas() throws IOException {
    for (String mode : List.of("rw-------", "rw-rw-r--", "rwxr-x---")) {
      Path target = Files.writeString(directory.resolve(mode + ".svg"), "old");
      Files.setPosixFilePermissions(target, PosixFilePermissions.fromString(mode));

      assertEquals("", WholeFile.write(target, "new"));

      assertEquals(mode, PosixFilePermissions.toString(Files.getPosixFilePermissions(target)));
      assertEquals("new", Files.readString(target));
    }
  }

  @Test
  void aFileThatIsReadOnlyIsNotReplaced() throws IOException {
    Path target = Files.writeString(directory.resolve("chart.svg"), "old");
    Files.setPosixFilePermissions(target, PosixFilePermissions.fromString("r--r--r--"));

    IOException told = assertThrows(IOException.class, () -> WholeFile.write(target, "new"));

    assertTrue(told.getMessage().contains("it is read-only"), told.getMessage());
    assertEquals("old", Files.readString(target));
    assertNothingElse(target);
  }

  @Test
  void anotherNameOfAFileKeepsWhatWasThereAndThatIsSaid() throws IOException {
    Path target = Files.writeString(directory.resolve("chart.svg"), "old");
    Path other = Files.createLink(directory.resolve("other.svg"), target);

    String said = WholeFile.write(target, "new");

    assertTrue(said.contains("hard link"), said);
    assertEquals("old", Files.readString(other));
    assertEquals("new", Files.readString(target));
  }

  @Test
  void aThousandLeftoversOfKilledProcessesAreInNobodysWayAndAreClearedAway() throws IOException {
    Path target = directory.resolve("chart.svg");
    FileTime old = FileTime.from(Instant.now().minusSeconds(3600));
    for (int process = 0; process < 1000; process++) {
      String name = ".ohmtrail-" + (4_000_000_000L + process) + "-0-chart.svg";
      Files.setLastModifiedTime(Files.writeString(directory.resolve(name), "half"), old);
    }
    Path ofAnother = Files.writeString(directory.resolve(".ohmtrail-4000000000-0-b.svg"), "half");
    Path young = Files.writeString(directory.resolve(".ohmtrail-4000000000-1-chart.svg"), "half");

    WholeFile.write(target, "whole");

    assertEquals("whole", Files.readString(target));
    try (Stream<Path> left = Files.list(directory)) {
      assertEquals(Set.of(target, ofAnother, young), left.collect(Collectors.toUnmodifiableSet()));
    }
  }

  private static void failHalfWay(Path file) throws IOException {
    Files.writeString(file, "half");
    throw new IOException("No space left on device");
  }

  private void assertNothingElse(Path target) throws IOException {
    try (Stream<Path> entries = Files.list(directory)) {
      List<Path> others = entries.filter(entry -> !entry.equals(target)).toList();
      assertEquals(List.of(), others);
    }
  }
}
