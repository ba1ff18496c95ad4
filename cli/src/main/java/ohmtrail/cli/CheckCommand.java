package ohmtrail.cli;

import java.io.PrintWriter;
import ohmtrail.cli.casefile.CaseFile;
import ohmtrail.cli.render.json.CheckJson;
import ohmtrail.cli.render.screen.CaseLines;
import ohmtrail.cli.render.text.CheckText;
import picocli.CommandLine.Command;

/** Tells how a case is understood and what is missing in it. */
@Command(
    name = "check",
    description =
        "Reads a case and shows how it is understood: the circuit as a tree, the meters, loads and"
            + " tests, and which readings would help.",
    footer = "  ohmtrail check kitchen.yaml")
final class CheckCommand extends CaseCommand {
  @Override
  boolean takesUnknownRun() {
    return true;
  }

  @Override
  void answer(CaseFile caseFile, Form form, PrintWriter out) {
    out.print(form == Form.JSON ? CheckJson.of(caseFile) : CheckText.of(caseFile));
  }

  @Override
  String line(CaseFile caseFile) {
    return CaseLines.checked(caseFile);
  }

  @Override
  String document(CaseFile caseFile) {
    return CheckJson.of(caseFile);
  }
}
