package ohmtrail.cli.walk;

import java.io.IOException;
import java.io.PrintWriter;
import java.util.Optional;
import ohmtrail.cli.casefile.CaseFile;
import ohmtrail.cli.casefile.CaseFileWriter;
import ohmtrail.cli.render.text.Page;

/** Leads a dialogue from answer to answer and keeps the case after each. */
public final class Session {
  private static final String PROMPT = "> ";

  private final Lines lines;
  private final PrintWriter out;
  private final CaseStore store;
  private boolean unsaved;

  /** Answers come from there, what is said goes there, the case is kept there. */
  public Session(Lines lines, PrintWriter out, CaseStore store) {
    this.lines = lines;
    this.out = out;
    this.store = store;
  }

  /**
   * Leads it to its end.
   *
   * @param opening what is said first; wrapped already
   * @return whether the case as it ended is in its file
   * @throws IOException when nothing can be read any more
   */
  public boolean run(String opening, Dialogue first) throws IOException {
    Dialogue now = first;
    out.print(opening);
    while (true) {
      out.println();
      say(now.question());
      Optional<String> line = lines.read(PROMPT);
      if (line.isEmpty()) {
        save(now);
        say("The input has ended.");
        return close(now);
      }
      Reply reply = now.answer(line.get());
      reply.setAside().ifPresent(this::setAside);
      now = reply.next();
      save(now);
      out.print(reply.says());
      out.flush();
      if (reply.over()) {
        return close(now);
      }
    }
  }

  private void setAside(CaseFile caseFile) {
    try {
      say("What was read before is kept in " + store.setAside(text(caseFile)) + ".");
    } catch (IOException e) {
      say("What was read before cannot be kept: " + String.valueOf(e.getMessage()));
    }
  }

  private void save(Dialogue dialogue) {
    Optional<CaseFile> caseFile = dialogue.caseFile();
    if (caseFile.isEmpty()) {
      return;
    }
    try {
      String said = store.save(text(caseFile.get()));
      if (unsaved) {
        say("Saved again, in " + store.name() + ".");
      }
      unsaved = false;
      if (!said.isEmpty()) {
        say(said);
      }
    } catch (IOException e) {
      if (!unsaved) {
        say(
            "NOT SAVED. "
                + String.valueOf(e.getMessage()).replace('\n', ' ')
                + " The session goes on, and nothing of it is lost while it runs: every step tries"
                + " again.");
      }
      unsaved = true;
    }
  }

  private static String text(CaseFile caseFile) {
    return new CaseFileWriter().write(caseFile);
  }

  /** Whoever ends it: where the case is, or the case itself where it could not be saved. */
  private boolean close(Dialogue last) {
    out.print(last.closing());
    Optional<CaseFile> caseFile = last.caseFile();
    out.println();
    if (caseFile.isEmpty()) {
      say("There is no case yet; nothing was written.");
    } else if (unsaved) {
      say("Not saved. This is the case; copy it into a file:");
      out.println();
      out.print(text(caseFile.get()));
    } else {
      say("The case is in " + store.name() + ".");
    }
    out.flush();
    return !unsaved;
  }

  private void say(String words) {
    Page page = new Page(lines.width());
    words.lines().forEach(page::paragraph);
    out.print(page);
    out.flush();
  }
}
