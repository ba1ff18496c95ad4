package ohmtrail.cli;

import java.io.IOException;
import java.io.PrintWriter;
import ohmtrail.circuit.CircuitException;
import ohmtrail.cli.casefile.CaseFile;
import ohmtrail.cli.casefile.CaseFileException;
import ohmtrail.cli.render.json.MapJson;
import ohmtrail.cli.render.map.MapScreen;
import ohmtrail.cli.render.map.MapText;
import ohmtrail.cli.render.map.MapWords;
import ohmtrail.cli.terminal.Progress;
import ohmtrail.cli.terminal.Waiting;
import ohmtrail.map.MapLocator;
import ohmtrail.map.MapReport;
import ohmtrail.map.known.MapProblem;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;

/** Finds which box feeds which. */
@Command(
    name = "map",
    description =
        "Finds which box feeds which, where nobody knows: the most probable map as a tree, how sure"
            + " each feeder is, how long the cables are, what reads alike, what is not on this"
            + " circuit, and where a joint may be bad whichever map is right.",
    footer = {
      "  ohmtrail map lounge.yaml",
      "  ohmtrail map lounge.yaml --chart lounge.svg",
      "  ohmtrail map lounge.yaml --write"
    })
final class MapCommand extends CaseCommand {
  private static final int WHOLE = 1000;

  @Mixin private final FullOption full = new FullOption();

  @Mixin private final ChartOption chart = new ChartOption();

  @Option(
      names = "--write",
      description =
          "Also put every feeder that is settled into the case file; the rest of its text stays.")
  private boolean write;

  @Override
  void requireSound() {
    chart.requireKnownEnding();
    if (namedFiles() > 1) {
      chart.requireNone(namedFiles());
      if (write) {
        throw new ParameterException(spec().commandLine(), "Option --write takes one case.");
      }
    }
  }

  @Override
  boolean takesUnknownRun() {
    return true;
  }

  /** It tells how far it is itself. */
  @Override
  Waiting waiting() {
    return new Waiting(Progress.nowhere(), spec().name());
  }

  @Override
  void answer(CaseFile caseFile, Form form, PrintWriter out) throws IOException, CaseFileException {
    MapReport report = mapped(caseFile);
    out.print(form == Form.JSON ? MapJson.of(caseFile, report) : text(caseFile, report));
    chart.draw(caseFile, report);
    if (write) {
      new MapWriting(caseFile, messages()).write(report);
    }
  }

  @Override
  String line(CaseFile caseFile) throws CaseFileException {
    return new MapWords(mapped(caseFile)).headline();
  }

  @Override
  String document(CaseFile caseFile) throws CaseFileException {
    return MapJson.of(caseFile, mapped(caseFile));
  }

  private String text(CaseFile caseFile, MapReport report) {
    return full.isFull()
        ? MapText.of(caseFile, report)
        : MapScreen.of(caseFile, report, full.columns());
  }

  private MapReport mapped(CaseFile caseFile) throws CaseFileException {
    MapProblem problem =
        caseFile
            .mapProblem()
            .orElseThrow(
                () ->
                    refusal(
                        caseFile,
                        "The case must leave open what feeds some box; it says it of every one.\n"
                            + "Maybe `ohmtrail locate` was meant, or some boxes belong under"
                            + " (boxes)."));
    Progress progress = progress();
    try {
      return new MapLocator()
          .map(problem, share -> progress.tell("map", (int) (WHOLE * share), WHOLE));
    } catch (CircuitException none) {
      throw refusal(caseFile, String.valueOf(none.getMessage()));
    } finally {
      progress.end();
    }
  }
}
