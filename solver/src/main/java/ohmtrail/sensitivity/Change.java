package ohmtrail.sensitivity;

/**
 * What is another one in another conclusion.
 *
 * @param verdict the verdict
 * @param box the box in which the bad joint most probably is
 * @param conductor the conductor on which it is
 * @param ohms whether its ohms lie outside the interval that was stated
 */
public record Change(boolean verdict, boolean box, boolean conductor, boolean ohms) {
  /** Whether anything is. */
  public boolean any() {
    return verdict || box || conductor || ohms;
  }
}
