package ohmtrail.sensitivity;

/** Is told how far a long task is, always by the thread that asked for it. */
@FunctionalInterface
public interface Progress {
  /** Tells nobody. */
  Progress UNTOLD = (done, all) -> {};

  /**
   * So much is done.
   *
   * @param done of {@code all}
   * @param all may grow while values are looked for from which on the conclusion changes
   */
  void tell(int done, int all);
}
