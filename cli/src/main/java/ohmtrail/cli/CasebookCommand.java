package ohmtrail.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.List;
import ohmtrail.cli.casebook.ClosedCases;
import ohmtrail.cli.file.WholeFile;
import ohmtrail.cli.render.json.CasebookJson;
import ohmtrail.cli.render.text.CasebookText;
import ohmtrail.cli.terminal.Progress;
import ohmtrail.cli.terminal.Waiting;
import ohmtrail.report.casebook.Casebook;
import ohmtrail.report.casebook.FailureRates;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;

/** Learns from a firm's closed cases. */
@Command(
    name = "casebook",
    description =
        "Goes through a folder of cases that say what was found: how often the first box was"
            + " right, the minutes saved, and how often each kind of joint fails.",
    footer = {"  ohmtrail casebook cases", "  ohmtrail casebook cases --write rates.yaml"})
final class CasebookCommand extends AnsweringCommand {
  @Parameters(paramLabel = "DIR", description = "The folder; those in it are gone through too.")
  private Path folder = Path.of("");

  @Option(
      names = "--strength",
      paramLabel = "FAILURES",
      description = "How many failures seen each of today's weights counts for (${DEFAULT-VALUE}).")
  private double strength = FailureRates.USUAL_STRENGTH;

  @Option(
      names = "--seed",
      paramLabel = "NUMBER",
      description = "Of the draws that the intervals are made of (${DEFAULT-VALUE}).")
  private long seed = 1;

  @Option(
      names = "--write",
      paramLabel = "FILE",
      description = "Also write the weights as an assume block into FILE, to put into cases.")
  private @Nullable Path block;

  @Override
  void requireSound() {
    if (!(strength > 0 && Double.isFinite(strength))) {
      throw new ParameterException(
          spec().commandLine(), "Strength (" + strength + ") must be positive.");
    }
  }

  /** It knows how far it is. */
  @Override
  Waiting waiting() {
    return new Waiting(Progress.nowhere(), spec().name());
  }

  @Override
  void answer(Form form, PrintWriter out) throws IOException {
    List<Path> files = ClosedCases.files(folder);
    Progress progress = progress();
    ClosedCases cases =
        ClosedCases.read(
            files,
            done -> {
              synchronized (progress) {
                progress.tell("casebook", done, files.size());
              }
            });
    progress.end();
    PrintWriter messages = messages();
    cases.passedOver().forEach(file -> Messages.say("passed over: " + file.reason(), messages));
    Casebook book = Casebook.of(cases.closed(), strength, seed);
    if (form == Form.JSON) {
      CasebookJson document = new CasebookJson(book, cases.unstated());
      cases.passedOver().forEach(file -> document.passedOver(file.file(), file.reason()));
      out.print(document);
    } else {
      out.print(CasebookText.of(book, cases.unstated(), cases.passedOver().size()));
    }
    if (block != null) {
      WholeFile.write(block, CasebookText.assume(book));
    }
  }
}
