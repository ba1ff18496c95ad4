package ohmtrail.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.util.List;
import java.util.Optional;
import ohmtrail.cli.casefile.CaseFile;
import ohmtrail.cli.render.json.LocateJson;
import ohmtrail.cli.render.text.LocateText;
import ohmtrail.locate.Diagnosis;
import ohmtrail.locate.Locator;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;

/** Finds the bad joint. */
@Command(
    name = "locate",
    description =
        "Finds the joint that has gone bad: in which box, on which conductor, how many ohms, how"
            + " sure, and which box to open first.",
    footer = {
      "  ohmtrail locate kitchen.yaml",
      "  ohmtrail locate kitchen.yaml --chart kitchen.svg"
    })
final class LocateCommand extends CaseCommand {
  @Mixin private final ChartOption chart = new ChartOption();

  @Override
  void requireSound() {
    chart.requireKnownEnding();
  }

  @Override
  void answer(CaseFile caseFile, Form form, PrintWriter out) throws IOException {
    Diagnosis diagnosis =
        new Locator(caseFile.circuit(), caseFile.assumptions()).locate(caseFile.survey());
    out.print(
        form == Form.JSON
            ? LocateJson.of(caseFile, diagnosis)
            : LocateText.of(caseFile, diagnosis));
    chart.draw(caseFile, Optional.of(diagnosis), List.of());
  }
}
