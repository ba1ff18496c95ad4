package ohmtrail.cli.walk;

import java.util.Optional;
import ohmtrail.cli.casefile.CaseFile;

/**
 * What follows an answer.
 *
 * @param says what to print; wrapped already, perhaps nothing
 * @param next the state after it
 * @param over whether the conversation ends there
 * @param setAside a case to keep in a file of its own: what was read before a joint was made anew
 */
public record Reply(String says, Dialogue next, boolean over, Optional<CaseFile> setAside) {
  /** The conversation goes on. */
  public static Reply on(String says, Dialogue next) {
    return new Reply(says, next, false, Optional.empty());
  }

  /** It ends. */
  public static Reply end(String says, Dialogue last) {
    return new Reply(says, last, true, Optional.empty());
  }
}
