package ohmtrail.survey.load;

/** Thrown when a load has figures that no load has; the message names it. */
public final class LoadException extends RuntimeException {
  private static final long serialVersionUID = 1;

  /**
   * @param message what is wrong, and what would be right
   */
  public LoadException(String message) {
    super(message);
  }
}
