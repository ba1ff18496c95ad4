package ohmtrail.cli;

import java.io.PrintWriter;
import ohmtrail.cli.casefile.CaseFile;
import ohmtrail.cli.render.json.SensitivityJson;
import ohmtrail.cli.render.text.SensitivityText;
import ohmtrail.cli.terminal.Progress;
import ohmtrail.cli.terminal.Waiting;
import ohmtrail.sensitivity.Sensitivity;
import ohmtrail.slip.AveragedLocator;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;

/** Says how far an answer hangs on what it was given. */
@Command(
    name = "sensitivity",
    description =
        "Says how far the answer hangs on what it was given: every assumption over its range, alone"
            + " and all together, every reading left out, every rival with what excludes it.",
    footer = {"  ohmtrail sensitivity kitchen.yaml", "  ohmtrail sensitivity kitchen.yaml --json"})
final class SensitivityCommand extends CaseCommand {
  @Mixin private final SensitivityOption option = new SensitivityOption();

  @Override
  void requireSound() {
    option.requireSound();
  }

  /** It tells how far it is. */
  @Override
  Waiting waiting() {
    return new Waiting(Progress.nowhere(), spec().name());
  }

  @Override
  void answer(CaseFile caseFile, Form form, PrintWriter out) {
    Sensitivity sensitivity =
        option.of(caseFile.problem(), new AveragedLocator().locate(caseFile.problem()), progress());
    out.print(
        form == Form.JSON
            ? SensitivityJson.of(caseFile, sensitivity)
            : SensitivityText.of(caseFile, sensitivity));
  }
}
