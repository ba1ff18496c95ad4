package ohmtrail.cli.walk;

import java.io.IOException;
import java.io.PrintWriter;
import java.util.Optional;
import ohmtrail.cli.casefile.CaseFile;
import ohmtrail.cli.casefile.CaseText;
import ohmtrail.cli.names.Shown;
import ohmtrail.cli.render.text.Page;
import ohmtrail.cli.terminal.Lines;

/** Leads a dialogue from answer to answer and keeps the case after each. */
public final class Session {
  private static final String PROMPT = "> ";

  private final Lines lines;
  private final PrintWriter out;
  private final Optional<CaseStore> store;
  private final CaseText text;
  private final AnswerTimes times;
  private boolean unsaved;

  /** Answers come from there, what is said goes there; no case is kept. */
  public Session(Lines lines, PrintWriter out) {
    this(lines, out, Optional.empty(), CaseText.unwritten(), AnswerTimes.NONE);
  }

  /**
   * Keeps the case there, its text going on from what was written.
   *
   * @param times takes down when each answer came
   */
  public Session(Lines lines, PrintWriter out, CaseStore store, CaseText text, AnswerTimes times) {
    this(lines, out, Optional.of(store), text, times);
  }

  private Session(
      Lines lines, PrintWriter out, Optional<CaseStore> store, CaseText text, AnswerTimes times) {
    this.lines = lines;
    this.out = out;
    this.store = store;
    this.text = text;
    this.times = times;
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
      Reply reply = taken(now.answer(line.get()));
      now = reply.next();
      save(now);
      out.print(reply.says());
      out.flush();
      if (reply.over()) {
        return close(now);
      }
    }
  }

  /** Keeps what there is to keep, one answer after the other, before it is thought about. */
  private Reply taken(Reply first) {
    Reply reply = first;
    while (true) {
      if (store.isPresent() && reply.setAside().isPresent()) {
        setAside(store.get(), reply.setAside().get());
      }
      if (reply.kept().isEmpty()) {
        return reply;
      }
      Reply.Kept kept = reply.kept().get();
      store.ifPresent(file -> save(file, kept.caseFile()));
      reply = kept.thought().get();
    }
  }

  private void setAside(CaseStore kept, CaseFile caseFile) {
    try {
      say(
          "What was read before is kept in "
              + kept.setAside(text.saying(times.stamped(caseFile)))
              + ".");
    } catch (IOException e) {
      say("What was read before cannot be kept: " + String.valueOf(e.getMessage()));
    }
  }

  private void save(Dialogue dialogue) {
    Optional<CaseFile> caseFile = dialogue.caseFile();
    if (store.isPresent() && caseFile.isPresent()) {
      save(store.get(), caseFile.get());
    }
  }

  private void save(CaseStore kept, CaseFile caseFile) {
    try {
      String said = kept.save(text.saying(times.stamped(caseFile)));
      if (unsaved) {
        say("Saved again, in " + kept.name() + ".");
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

  /** Whoever ends it: where the case is, or the case itself where it could not be saved. */
  private boolean close(Dialogue last) {
    out.print(last.closing());
    Optional<CaseFile> caseFile = last.caseFile();
    if (store.isEmpty()) {
      out.flush();
      return true;
    }
    out.println();
    if (caseFile.isEmpty()) {
      say("There is no case yet; nothing was written.");
    } else if (unsaved) {
      say("Not saved. This is the case; copy it into a file:");
      out.println();
      out.print(text.saying(times.stamped(caseFile.get())));
    } else {
      say("The case is in " + store.get().name() + ".");
    }
    out.flush();
    return !unsaved;
  }

  private void say(String words) {
    Page page = new Page(lines.width());
    Shown.lines(words).lines().forEach(page::paragraph);
    out.print(page);
    out.flush();
  }
}
