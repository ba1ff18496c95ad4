package ohmtrail.cli;

/** What the process tells its caller. */
final class ExitCode {
  /** There is an answer on standard output. */
  static final int ANSWER = 0;

  /** Something else went wrong: a file that cannot be written, a defect of the program. */
  static final int FAILURE = 1;

  /** The case or the command line is wrong. */
  static final int BAD_CASE = 2;

  private ExitCode() {}
}
