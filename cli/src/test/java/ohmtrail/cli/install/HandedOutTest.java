package ohmtrail.cli.install;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Properties;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import ohmtrail.cli.build.Build;
import ohmtrail.cli.casefile.CaseFile;
import ohmtrail.cli.casefile.CaseFileReader;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What the program hands out is what the project keeps. */
class HandedOutTest {
  private static final Path SHARED = Path.of(System.getProperty("ohmtrail.shared"));
  private static final String MODELINE = "# yaml-language-server: $schema=";

  @TempDir private Path directory;

  @Test
  void everySchemaOfTheProjectIsHandedOutAsItIsAndNamesItself() throws IOException {
    assertEquals(names("schema", ".schema.json"), new TreeSet<>(Schemas.names()));
    for (String name : Schemas.names()) {
      String text = Schemas.text(name);
      assertEquals(
          Files.readString(SHARED.resolve("schema").resolve(Schemas.fileName(name))), text);
      assertEquals(
          "urn:ohmtrail:schema:" + name, new ObjectMapper().readTree(text).get("$id").asText());
    }
  }

  @Test
  void everyExampleIsHandedOutAndCanBeRead() throws Exception {
    Set<String> kept = names("cases", ".yaml");
    kept.removeIf(name -> name.endsWith(".truth"));
    assertEquals(kept, new TreeSet<>(Examples.names()));

    List<Path> written = Examples.write(directory.resolve("new folder"));

    assertEquals(Examples.names().size(), written.size());
    for (Path file : written) {
      CaseFile example = new CaseFileReader().read(file);
      assertFalse(example.circuit().boxes().isEmpty(), file.toString());
    }
  }

  @Test
  void anEditorFindsTheSchemaFromTheFirstLineOfEachExample() throws IOException {
    for (Path file : Examples.write(directory)) {
      String first = Files.readAllLines(file).get(0);
      assertTrue(first.startsWith(MODELINE), first);
      Path schema = file.resolveSibling(first.substring(MODELINE.length())).normalize();
      assertEquals(Schemas.text(Schemas.CASE), Files.readString(schema));
    }
  }

  @Test
  void whatAPersonHasChangedStays() throws IOException {
    Examples.write(directory);
    Examples.write(directory);
    Path changed = directory.resolve("cases/smallest.yaml");
    Files.writeString(changed, "mine");
    Path missing = directory.resolve("cases/attic-lamps.yaml");
    Files.delete(missing);

    IOException refused = assertThrows(IOException.class, () -> Examples.write(directory));

    assertTrue(refused.getMessage().contains("smallest.yaml"), refused.getMessage());
    assertEquals("mine", Files.readString(changed));
    assertFalse(Files.exists(missing));
  }

  @Test
  void aBuildWithoutARepositoryHasAnUnknownCommit() {
    Properties properties = new Properties();
    properties.setProperty("version", "1.2.3");
    for (String commit : List.of("", "unknown", "${ohmtrail.commit}")) {
      properties.setProperty("commit", commit);
      assertEquals("unknown", Build.of(properties).commit());
    }
    properties.setProperty("commit", "0123456789ab");
    assertEquals("Ohmtrail 1.2.3 (commit 0123456789ab)", Build.of(properties).toString());
  }

  private static Set<String> names(String folder, String ending) throws IOException {
    try (Stream<Path> files = Files.list(SHARED.resolve(folder))) {
      return files
          .map(file -> file.getFileName().toString())
          .filter(name -> name.endsWith(ending))
          .map(name -> name.substring(0, name.length() - ending.length()))
          .collect(Collectors.toCollection(TreeSet::new));
    }
  }
}
