package ohmtrail.cli.casefile;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class CaseFileReaderTest {

  @Test
  void aShortCaseIsRead(@TempDir Path folder) throws IOException, CaseFileException {
    Path file = folder.resolve("case.yaml");
    Files.writeString(
        file,
        """
        title: Back bedroom
        supply: 120 V 60 Hz
        breaker: 15 A
        cable: 14 AWG copper
        run:
          - panel
          - hall-1: receptacle 32 ft push-in
          - closet: junction 9.5 m
          - bed-1: receptacle 14 ft pigtail from hall-1
        loads:
          heater: 1500 W
        tests:
          - idle:
              - bed-1 hot-neutral 121.3 V high
          - heater at bed-1:
              - bed-1 hot-neutral 118.6 V low
        """);
    CaseFile read = new CaseFileReader().read(file);
    assertEquals(4, read.circuit().boxes().size());
    assertEquals("hall-1", read.circuit().pathTo("bed-1").get(0).to());
    assertEquals(2, read.survey().readingCount());
  }
}
