package ohmtrail.survey;

import java.util.List;

/**
 * One moment: which loads were on, and what was read.
 *
 * @param name unique in its survey
 * @param loads the loads on; empty for an idle circuit
 * @param readings what was read then; may be empty
 */
public record Test(String name, List<LoadInUse> loads, List<Reading> readings) {
  /** Copies the lists. */
  public Test {
    if (name.isBlank()) {
      throw new SurveyException("Test name (" + name + ") must not be blank");
    }
    loads = List.copyOf(loads);
    readings = List.copyOf(readings);
  }
}
