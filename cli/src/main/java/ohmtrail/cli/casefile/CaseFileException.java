package ohmtrail.cli.casefile;

import java.util.List;
import java.util.stream.Collectors;

/** Thrown when a case file cannot be read; tells everything that is wrong with it. */
public final class CaseFileException extends Exception {
  private static final long serialVersionUID = 1;

  private final transient List<Problem> problems;

  /**
   * @param problems what is wrong, at least one, in the order to be told
   */
  public CaseFileException(List<Problem> problems) {
    super(problems.stream().map(Problem::format).collect(Collectors.joining("\n")));
    this.problems = List.copyOf(problems);
  }

  /** What is wrong: the case file's problems by line, then those of the table beside it. */
  public List<Problem> problems() {
    return problems;
  }
}
