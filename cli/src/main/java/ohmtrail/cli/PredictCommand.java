package ohmtrail.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.util.List;
import ohmtrail.cli.casefile.CaseFile;
import ohmtrail.cli.render.json.PredictJson;
import ohmtrail.cli.render.text.PredictText;
import ohmtrail.predict.Degradation;
import ohmtrail.report.Prediction;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Tells what each meter should show. */
@Command(
    name = "predict",
    description =
        "Tells what each meter should show in the tests of a case, beside what was read; the"
            + " voltage drop at each box; and the heat in a joint supposed to be degraded.",
    footer = {
      "  ohmtrail predict kitchen.yaml",
      "  ohmtrail predict kitchen.yaml --degrade hall-2/neutral/incoming=2.4"
    })
final class PredictCommand extends CaseCommand {
  @Option(
      names = "--degrade",
      paramLabel = "JOINT=OHMS",
      description = {
        "Suppose ohms added to a joint; may be given for several joints.",
        "OHMS: 2, 0.5ohm, 3kohm, open. JOINT: box/conductor/role, as `check --json` lists them."
      })
  private List<String> degraded = List.of();

  @Mixin private final ChartOption chart = new ChartOption();

  @Override
  void requireSound() {
    chart.requireKnownEnding();
  }

  @Override
  void answer(CaseFile caseFile, Form form, PrintWriter out) throws IOException {
    List<Degradation> degradations =
        new DegradeOption(spec().commandLine(), caseFile.circuit()).parse(degraded);
    Prediction prediction = Prediction.of(caseFile.problem(), degradations);
    out.print(
        form == Form.JSON
            ? PredictJson.of(caseFile, prediction)
            : PredictText.of(caseFile, prediction));
    chart.draw(caseFile, prediction);
  }
}
