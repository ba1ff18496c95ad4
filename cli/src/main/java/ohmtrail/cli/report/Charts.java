package ohmtrail.cli.report;

import java.util.ArrayList;
import java.util.List;
import ohmtrail.cli.chart.ChartFile;
import ohmtrail.cli.chart.ProfileChart;
import ohmtrail.cli.render.words.JointWords;
import ohmtrail.cli.render.words.OhmsWords;
import ohmtrail.cli.report.document.Block;
import ohmtrail.cli.report.document.Document.Section;
import ohmtrail.cli.report.picture.LikelihoodPicture;
import ohmtrail.locate.Suspect;

/** The voltages along the run, and what the readings say of the ohms. */
final class Charts {
  private Charts() {}

  static Section of(ReportInputs inputs) {
    List<Block> blocks = new ArrayList<>();
    ProfileChart profile = ProfileChart.of(inputs.caseFile().title(), inputs.report());
    blocks.add(
        new Block.Drawing(
            "Voltages along the run: what a sound circuit would show, what the answer shows, every"
                + " reading with the accuracy of its meter",
            profile.description(),
            ChartFile.picture(profile)));
    likelihood(inputs, blocks);
    return new Section("charts", "Charts", true, blocks);
  }

  private static void likelihood(ReportInputs inputs, List<Block> blocks) {
    if (inputs.likelihood().isEmpty() || inputs.diagnosis().suspects().isEmpty()) {
      return;
    }
    Suspect suspect = inputs.diagnosis().suspects().get(0);
    LikelihoodPicture.of(inputs.likelihood().get(), suspect.ohms())
        .ifPresent(
            picture ->
                blocks.add(
                    new Block.Drawing(
                        "What the readings say of the ohms of "
                            + new JointWords(inputs.caseFile().circuit()).suspect(suspect, ""),
                        "A curve over the ohms with one peak; " + OhmsWords.of(suspect.ohms()),
                        picture)));
  }
}
