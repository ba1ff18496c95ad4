package ohmtrail.cli.walk;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import ohmtrail.cli.file.WholeFile;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A case in its file while somebody works on it. */
class CaseFolderTest {
  @TempDir Path folder;
  private Path file = Path.of("");

  @BeforeEach
  void nameTheFile() {
    file = folder.resolve("hall.yaml");
  }

  private CaseFolder over(Optional<String> read) {
    return new CaseFolder(file, read, WholeFile::write);
  }

  @Test
  void aNewCaseIsMadeAndReplaced() throws IOException {
    CaseFolder store = over(Optional.empty());

    assertEquals("", store.save("one"));
    assertEquals("", store.save("two"));

    assertEquals("two", Files.readString(file));
    assertEquals(file.toString(), store.name());
  }

  @Test
  void whatWasThereBeforeIsKeptOnce() throws IOException {
    Files.writeString(file, "# by hand");
    CaseFolder store = over(Optional.of("# by hand"));

    store.save("one");
    store.save("two");

    assertEquals("# by hand", Files.readString(folder.resolve("hall.yaml.before")));
    assertEquals("two", Files.readString(file));
  }

  @Test
  void aPersonsOwnFileOfThatNameIsNeverWrittenOver() throws IOException {
    Files.writeString(file, "as read");
    Files.writeString(folder.resolve("hall.yaml.before"), "a person's");

    over(Optional.of("as read")).save("one");

    assertEquals("a person's", Files.readString(folder.resolve("hall.yaml.before")));
    assertEquals("as read", Files.readString(folder.resolve("hall.yaml.before-2")));
    assertEquals("one", Files.readString(file));
  }

  @Test
  void theSameTextIsKeptBeforeItOnce() throws IOException {
    Files.writeString(file, "as read");
    Files.writeString(folder.resolve("hall.yaml.before"), "as read");

    over(Optional.of("as read")).save("one");

    assertFalse(Files.exists(folder.resolve("hall.yaml.before-2")));
  }

  @Test
  void aFileThatSomebodyTakesAwayIsSaidAndTheSessionGoesOnBesideIt() throws IOException {
    CaseFolder store = over(Optional.empty());
    store.save("one");
    Files.delete(file);

    assertTrue(store.save("two").contains("has taken away hall.yaml"));

    assertEquals("two", Files.readString(folder.resolve("hall-2.yaml")));
  }

  @Test
  void aFolderThatIsNoLongerThereIsSaid() throws IOException {
    Path inner = Files.createDirectory(folder.resolve("inner"));
    CaseFolder store =
        new CaseFolder(inner.resolve("hall.yaml"), Optional.empty(), WholeFile::write);
    store.save("one");
    Files.delete(inner.resolve("hall.yaml"));
    Files.delete(inner);

    IOException told = assertThrows(IOException.class, () -> store.save("two"));

    assertTrue(
        String.valueOf(told.getMessage()).contains("there is no directory"), told.getMessage());
  }

  @Test
  void aSessionThatChangesNothingLeavesTheFileAlone() throws IOException {
    Files.writeString(file, "same");

    over(Optional.of("same")).save("same");

    assertFalse(Files.exists(folder.resolve("hall.yaml.before")));
  }

  @Test
  void whatSomebodyElseWroteMeanwhileIsLeftAlone() throws IOException {
    CaseFolder store = over(Optional.empty());
    store.save("one");
    Files.writeString(file, "by somebody else");

    String said = store.save("two");

    assertTrue(said.contains("Somebody else has changed hall.yaml"), said);
    assertTrue(said.contains("hall-2.yaml"), said);
    assertEquals("by somebody else", Files.readString(file));
    assertEquals("two", Files.readString(folder.resolve("hall-2.yaml")));
    assertEquals("", store.save("three"));
    assertEquals("three", Files.readString(folder.resolve("hall-2.yaml")));
  }

  @Test
  void aFileThatSomebodyTookAwayIsNoticedToo() throws IOException {
    CaseFolder store = over(Optional.empty());
    store.save("one");
    Files.delete(file);

    assertFalse(store.save("two").isEmpty());
    assertEquals("two", Files.readString(folder.resolve("hall-2.yaml")));
  }

  @Test
  void aDiskThatIsFullLeavesWhatWasThere() throws IOException {
    Files.writeString(file, "one");
    CaseFolder store =
        new CaseFolder(
            file,
            Optional.of("one"),
            (target, text) -> {
              throw new IOException("No space left on device");
            });

    assertThrows(IOException.class, () -> store.save("two"));
    assertEquals("one", Files.readString(file));
  }
}
