package ohmtrail.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.Map;
import java.util.Optional;
import ohmtrail.cli.casefile.CaseFile;
import ohmtrail.cli.casefile.CaseText;
import ohmtrail.cli.file.WholeFile;
import ohmtrail.cli.walk.CaseFolder;
import ohmtrail.cli.walk.SettledFeeders;
import ohmtrail.map.MapReport;

/** Puts what is settled of a map into the file that the case was read from. */
final class MapWriting {
  private final CaseFile caseFile;
  private final PrintWriter messages;

  /**
   * @param messages takes what was written and what was not
   */
  MapWriting(CaseFile caseFile, PrintWriter messages) {
    this.caseFile = caseFile;
    this.messages = messages;
  }

  /**
   * Writes it; what was there before is kept beside it.
   *
   * @throws IOException when it cannot be written, or the case was read from no file
   */
  void write(MapReport report) throws IOException {
    Path file =
        caseFile.files().stream()
            .findFirst()
            .orElseThrow(
                () ->
                    new IOException(
                        "What is settled can be written into a file only.\n"
                            + "Maybe name the case file in place of (-)."));
    Map<String, String> feeders = SettledFeeders.of(report);
    if (feeders.isEmpty()) {
      Messages.say("Nothing more is settled than the case says: it is left as it is.", messages);
      return;
    }
    Optional<String> before = CaseFolder.textOf(file);
    CaseText text = CaseText.of(file.toString(), before.orElse(""));
    String after =
        text.settling(feeders)
            .orElseThrow(
                () ->
                    new IOException(
                        "What is settled cannot be put into the text of ("
                            + file
                            + ") as it is written.\nMaybe write the entries of the boxes on lines of"
                            + " their own, and one by one."));
    String said = new CaseFolder(file, before, WholeFile::write).save(after);
    Messages.say(
        "Put into " + file + ": what feeds " + String.join(", ", feeders.keySet()) + ".", messages);
    if (!said.isEmpty()) {
      Messages.say(said, messages);
    }
  }
}
