package ohmtrail.cli.walk;

import java.io.IOException;

/** Where a case is kept. */
public interface CaseStore {
  /**
   * Keeps a case.
   *
   * @param text the case, as a case file
   * @return what has to be said about it; mostly nothing
   * @throws IOException when it cannot be kept; the message is fit for the user
   */
  String save(String text) throws IOException;

  /**
   * Keeps a case beside it, in a file of its own.
   *
   * @return the name of that file
   * @throws IOException when it cannot be kept
   */
  String setAside(String text) throws IOException;

  /** What the file is called now. */
  String name();
}
