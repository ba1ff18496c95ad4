package ohmtrail.cli;

import java.io.PrintWriter;
import ohmtrail.cli.casefile.CaseFile;
import ohmtrail.cli.render.json.LocateJson;
import ohmtrail.cli.render.text.LocateText;
import ohmtrail.locate.Diagnosis;
import ohmtrail.locate.Locator;
import picocli.CommandLine.Command;

/** Finds the bad joint. */
@Command(
    name = "locate",
    description =
        "Finds the joint that has gone bad: in which box, on which conductor, how many ohms, how"
            + " sure, and which box to open first.",
    footer = {"  ohmtrail locate kitchen.yaml"})
final class LocateCommand extends CaseCommand {
  @Override
  void answer(CaseFile caseFile, Form form, PrintWriter out) {
    Diagnosis diagnosis =
        new Locator(caseFile.circuit(), caseFile.assumptions()).locate(caseFile.survey());
    out.print(
        form == Form.JSON
            ? LocateJson.of(caseFile, diagnosis)
            : LocateText.of(caseFile, diagnosis));
  }
}
