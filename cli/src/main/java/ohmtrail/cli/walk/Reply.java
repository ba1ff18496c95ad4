package ohmtrail.cli.walk;

import java.util.Optional;
import java.util.function.Supplier;
import ohmtrail.cli.casefile.CaseFile;

/**
 * What follows an answer.
 *
 * @param says what to print; wrapped already, perhaps nothing
 * @param next the state after it
 * @param over whether the conversation ends there
 * @param setAside a case to keep in a file of its own: what was read before a joint was made anew
 * @param kept what there is to keep before any of it is thought about, and what follows then; empty
 *     where nothing more follows
 */
public record Reply(
    String says, Dialogue next, boolean over, Optional<CaseFile> setAside, Optional<Kept> kept) {

  /**
   * An answer taken in.
   *
   * @param caseFile the case with it
   * @param thought what follows once it has been thought about, which may take a while
   */
  public record Kept(CaseFile caseFile, Supplier<Reply> thought) {}

  /** The conversation goes on. */
  public static Reply on(String says, Dialogue next) {
    return new Reply(says, next, false, Optional.empty(), Optional.empty());
  }

  /** It ends. */
  public static Reply end(String says, Dialogue last) {
    return new Reply(says, last, true, Optional.empty(), Optional.empty());
  }

  /**
   * An answer is taken in and kept before it is thought about.
   *
   * @param last the state that it was given in
   */
  static Reply keep(CaseFile caseFile, Dialogue last, Supplier<Reply> thought) {
    Kept kept = new Kept(caseFile, thought);
    return new Reply("", last, false, Optional.empty(), Optional.of(kept));
  }

  /** The same, a case set aside. */
  Reply settingAside(CaseFile caseFile) {
    return new Reply(says, next, over, Optional.of(caseFile), kept);
  }

  /** The same, something said before it. */
  Reply saying(String before) {
    return new Reply(before + says, next, over, setAside, kept);
  }
}
