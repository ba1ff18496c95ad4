package ohmtrail.cli.walk;

import java.io.IOException;
import java.io.PrintWriter;
import java.time.LocalDateTime;
import java.util.Optional;
import java.util.function.Supplier;
import ohmtrail.cli.casefile.CaseFile;
import ohmtrail.cli.casefile.CaseText;
import ohmtrail.cli.terminal.Lines;

/** Begins a search where a case is, or with the run where there is none yet. */
public final class Walk {
  private Walk() {}

  /**
   * Leads a search to its end.
   *
   * @param caseFile the case; empty where its file is not there
   * @param text of the case, as it was written
   * @param title what a new case is called
   * @param clock says when an answer comes
   * @return whether the case as it ended is in its file
   * @throws IOException when no answer can be read
   */
  public static boolean run(
      Optional<CaseFile> caseFile,
      CaseText text,
      String title,
      Lines lines,
      PrintWriter out,
      CaseStore store,
      Supplier<LocalDateTime> clock)
      throws IOException {
    Reply begun =
        caseFile
            .map(each -> begin(each, text, title, lines.width()))
            .orElseGet(() -> NewRun.begin(title, lines.width()));
    return new Session(lines, out, store, text, AnswerTimes.since(caseFile, clock))
        .run(begun.says(), begun.next());
  }

  /** A case that was left before all of it was said goes on there. */
  private static Reply begin(CaseFile caseFile, CaseText text, String title, int width) {
    return NewRun.isUnfinished(caseFile)
        ? NewRun.resume(title, text.written().orElseThrow(), caseFile.unknown().isPresent(), width)
        : Hearing.begin(caseFile, width);
  }
}
