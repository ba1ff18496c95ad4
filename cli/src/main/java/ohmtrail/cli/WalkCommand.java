package ohmtrail.cli;

import java.io.BufferedReader;
import java.io.FileDescriptor;
import java.io.FileInputStream;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.util.Objects;
import java.util.Optional;
import java.util.concurrent.Callable;
import ohmtrail.cli.casefile.CaseFile;
import ohmtrail.cli.casefile.CaseFileException;
import ohmtrail.cli.casefile.CaseFileReader;
import ohmtrail.cli.casefile.CaseText;
import ohmtrail.cli.file.WholeFile;
import ohmtrail.cli.terminal.Lines;
import ohmtrail.cli.terminal.PlainLines;
import ohmtrail.cli.terminal.TerminalLines;
import ohmtrail.cli.walk.CaseFolder;
import ohmtrail.cli.walk.Walk;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Leads a search step by step. */
@Command(
    name = "walk",
    mixinStandardHelpOptions = true,
    versionProvider = Version.class,
    sortOptions = false,
    description =
        "Leads you to the bad joint step by step: says what to read next, takes what the meter"
            + " shows, doubts what cannot be, and keeps the case after every answer. Where the file"
            + " is not there yet it asks for the run first.",
    optionListHeading = "%nOptions:%n",
    parameterListHeading = "%nParameters:%n",
    exitCodeListHeading = "%nExit codes:%n",
    exitCodeList = {
      "0:the case as it ended is in its file",
      "1:it could not be saved",
      "2:the case or the command line is wrong"
    },
    footerHeading = "%nExample:%n",
    footer = {"  ohmtrail walk kitchen.yaml", "  (help lists what can be typed)"})
final class WalkCommand implements Callable<Integer> {
  @Spec private @Nullable CommandSpec spec;

  @Parameters(paramLabel = "CASE", description = "The case file; made where it is not there.")
  private Path file = Path.of("");

  @Override
  public Integer call() throws IOException, CaseFileException {
    Optional<String> text = CaseFolder.textOf(file);
    Optional<CaseFile> caseFile =
        text.isPresent() ? Optional.of(new CaseFileReader().read(file)) : Optional.empty();
    CommandSpec called = Objects.requireNonNull(spec);
    PrintWriter out = called.commandLine().getOut();
    PrintWriter err = called.commandLine().getErr();
    caseFile.ifPresent(
        each ->
            each.warnings().forEach(problem -> Messages.say("warning: " + problem.format(), err)));
    CaseFolder store = new CaseFolder(file, text, WholeFile::write);
    try (Lines lines = lines(out)) {
      boolean saved =
          Walk.run(caseFile, written(text), title(), lines, out, store, LocalDateTime::now);
      return saved ? ExitCode.ANSWER : ExitCode.FAILURE;
    }
  }

  private CaseText written(Optional<String> text) {
    return text.map(each -> CaseText.of(file.toString(), each)).orElseGet(CaseText::unwritten);
  }

  private String title() {
    return String.valueOf(file.getFileName()).replaceFirst("\\.ya?ml$", "");
  }

  /** Of the terminal; plain ones where there is none. */
  static Lines lines(PrintWriter out) throws IOException {
    return TerminalLines.open()
        .orElseGet(
            () ->
                new PlainLines(
                    new BufferedReader(
                        new InputStreamReader(
                            new FileInputStream(FileDescriptor.in), StandardCharsets.UTF_8)),
                    out));
  }
}
