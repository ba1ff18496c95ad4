package ohmtrail.cli.casefile;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/** The cases beside these tests: the good ones are read, the bad ones refused word for word. */
class CasesTest {

  private static final Path GOOD = CaseFiles.folder("good");
  private static final Path BAD = CaseFiles.folder("bad");

  @TestFactory
  List<DynamicTest> everyGoodCaseAndEveryExampleIsReadWithoutAWarningAndReadsBackEqual() {
    return Stream.concat(CaseFiles.in(GOOD).stream(), CaseFiles.examples().stream())
        .map(
            file ->
                DynamicTest.dynamicTest(
                    file.getFileName().toString(), () -> assertReadsBackEqual(file)))
        .toList();
  }

  private static void assertReadsBackEqual(Path file) throws CaseFileException {
    CaseFile read = new CaseFileReader().read(file);
    assertEquals(List.of(), read.warnings());
    assertEquals(said(read), said(CaseFiles.read(new CaseFileWriter().write(read))));
  }

  /** What a case says, wherever it stands. */
  private static CaseFile said(CaseFile read) {
    return new CaseFile(
        read.title(), read.circuit(), read.survey(), read.assumptions(), read.warnings());
  }

  @TestFactory
  List<DynamicTest> everyBadCaseIsRefusedWithTheMessagesBesideIt() {
    return CaseFiles.in(BAD).stream()
        .map(
            file ->
                DynamicTest.dynamicTest(file.getFileName().toString(), () -> assertRefused(file)))
        .toList();
  }

  private static void assertRefused(Path file) {
    CaseFileException refused =
        assertThrows(CaseFileException.class, () -> new CaseFileReader().read(file));
    String messages =
        refused.problems().stream()
            .map(problem -> problem.format().replace(BAD + "/", "") + "\n")
            .collect(Collectors.joining());
    assertEquals(CaseFiles.text(expected(file)), messages);
  }

  private static Path expected(Path bad) {
    String name = bad.getFileName().toString();
    return bad.resolveSibling(name.substring(0, name.lastIndexOf('.')) + ".txt");
  }

  @Test
  void everyExpectationBelongsToABadCase() throws IOException {
    try (var files = Files.list(BAD)) {
      List<Path> expectations = files.filter(file -> file.toString().endsWith(".txt")).toList();
      assertTrue(!expectations.isEmpty());
      assertEquals(
          CaseFiles.in(BAD).stream().map(CasesTest::expected).toList(),
          expectations.stream().sorted().toList());
    }
  }
}
