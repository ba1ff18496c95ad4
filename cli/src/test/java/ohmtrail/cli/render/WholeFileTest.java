package ohmtrail.cli.render;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
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
  void aLeftoverOfACrashIsNotInTheWay() throws IOException {
    Path target = directory.resolve("chart.svg");
    Path leftover = Files.writeString(directory.resolve(".ohmtrail-0-chart.svg"), "half");

    WholeFile.write(target, "whole");

    assertEquals("whole", Files.readString(target));
    assertEquals("half", Files.readString(leftover));
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
