package ohmtrail.cli.walk;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import ohmtrail.cli.casefile.CaseFile;
import ohmtrail.cli.casefile.TypedAnswer;
import ohmtrail.cli.casefile.TypedComplaint;
import ohmtrail.cli.render.text.Page;
import ohmtrail.survey.Complaint;

/**
 * What is complained of, asked for a case that does not say it, before the search begins; and where
 * it is noticed, for one that says no more than what.
 *
 * @param width columns of what is said
 * @param taken the case as it is
 * @param heard a complaint that says nothing of the place; empty where there is none yet
 */
record Hearing(int width, CaseFile taken, Optional<Complaint> heard) implements Dialogue {

  /**
   * What is said first: the search itself for a case that says what is complained of, and where, or
   * of which nobody knows what feeds what yet.
   */
  static Reply begin(CaseFile caseFile, int width) {
    if (caseFile.unknown().isPresent()) {
      return NewRun.search(caseFile, width);
    }
    CaseFile equipped = Equipment.of(caseFile);
    List<Complaint> said = equipped.survey().complaints();
    if (said.isEmpty()) {
      return asking(new Hearing(width, equipped, Optional.empty()));
    }
    return said.size() == 1 && isBare(said.get(0))
        ? asking(new Hearing(width, equipped, Optional.of(said.get(0))))
        : NewRun.search(caseFile, width);
  }

  private static boolean isBare(Complaint complaint) {
    return complaint.boxes().isEmpty() && complaint.load().isEmpty();
  }

  private static Reply asking(Hearing hearing) {
    return Reply.on(
        hearing.said(
            hearing.heard.isEmpty()
                ? "This case does not say what is complained of, which tells as much as a reading."
                : "This case says that it " + hearing.heard.get().text() + ", and not where."),
        hearing);
  }

  @Override
  public String question() {
    return heard.isEmpty() ? NewRun.Asked.COMPLAINT.words() : NewRun.Asked.WHERE.words();
  }

  @Override
  public Optional<CaseFile> caseFile() {
    return Optional.of(taken);
  }

  @Override
  public String closing() {
    return "";
  }

  @Override
  public Reply answer(String line) {
    String typed = line.strip();
    if (typed.isEmpty() || (TypedAnswer.isUnknown(typed) && !typed.equals("?"))) {
      return NewRun.search(taken, width);
    }
    return switch (typed.toLowerCase(Locale.ROOT)) {
      case "quit", "q", "exit" -> Reply.end("", this);
      case "help", "h", "?" ->
          Reply.on(said("Enter alone goes on without an answer, quit ends."), this);
      case "undo", "u", "back" -> Reply.on(said("There is nothing to take back."), this);
      default -> heard(typed);
    };
  }

  private Reply heard(String typed) {
    TypedComplaint line = TypedComplaint.of(taken, inFull(typed));
    if (line.complaint().isEmpty()) {
      return Reply.on(said(String.join("\n", line.wrong())), this);
    }
    Complaint complaint = line.complaint().get();
    CaseFile more = taken.with(taken.survey().withComplaints(List.of(complaint)));
    return isBare(complaint)
        ? Reply.on("", new Hearing(width, more, Optional.of(complaint)))
        : Reply.keep(more, this, () -> NewRun.search(more, width));
  }

  /** Where it is noticed, behind what is complained of. */
  private String inFull(String typed) {
    boolean bare = !typed.matches("(?i)(at|with)\\b.*");
    return heard.map(what -> what.symptom().word() + (bare ? " at " : " ") + typed).orElse(typed);
  }

  private String said(String sentences) {
    return new Page(width).paragraphs(sentences).toString();
  }
}
