package ohmtrail.cli.walk;

import java.util.Optional;
import ohmtrail.cli.casefile.CaseFile;

/** A state of a conversation: what it asks, and what follows an answer. Immutable. */
public interface Dialogue {
  /** What is asked, in a few words. */
  String question();

  /** What follows an answer, which may be anything at all. */
  Reply answer(String line);

  /** The case as far as it has come; empty before there is one. */
  Optional<CaseFile> caseFile();

  /** What is said when it ends here, whoever ends it; wrapped already. */
  String closing();
}
