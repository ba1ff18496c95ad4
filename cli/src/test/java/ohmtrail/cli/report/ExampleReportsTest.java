package ohmtrail.cli.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import ohmtrail.cli.render.json.DocumentSchema;
import org.junit.jupiter.api.Test;

/** The reports that are shipped as examples keep to their standards. */
class ExampleReportsTest {
  private static final Path EXAMPLES =
      Path.of(System.getProperty("ohmtrail.shared")).resolve("../docs/examples");

  @Test
  void everyExampleKeepsToItsStandard() throws IOException {
    List<Path> files;
    try (Stream<Path> listed = Files.list(EXAMPLES)) {
      files = listed.sorted().toList();
    }
    int held = 0;
    for (Path file : files) {
      String name = String.valueOf(file.getFileName());
      if (name.endsWith(".html")) {
        String html = Files.readString(file);
        assertEquals(List.of(), Reports.htmlErrors(html), name);
        assertEquals(List.of(), CaseReportTest.active(html), name);
        held++;
      } else if (name.endsWith(".pdf")) {
        assertEquals(List.of(), Reports.pdfViolations(Files.readAllBytes(file)), name);
        held++;
      } else if (name.endsWith(".json")) {
        assertEquals(
            Set.of(),
            DocumentSchema.named("sensitivity")
                .breaches(new ObjectMapper().readTree(file.toFile())),
            name);
        held++;
      }
    }
    assertTrue(held >= 5, held + " examples");
  }
}
