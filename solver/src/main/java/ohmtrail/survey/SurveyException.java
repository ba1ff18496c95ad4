package ohmtrail.survey;

/**
 * Thrown when a survey does not fit together or does not fit its circuit; the message names the
 * test, reading or meter.
 */
public final class SurveyException extends RuntimeException {
  private static final long serialVersionUID = 1;

  /**
   * @param message what is wrong, where, and what would be right
   */
  public SurveyException(String message) {
    super(message);
  }
}
