package ohmtrail.practice.search;

import ohmtrail.advise.Choice;
import ohmtrail.advise.Situation;
import ohmtrail.survey.Survey;

/** Somebody who searches: one for each game. */
@FunctionalInterface
public interface Searcher {
  /**
   * Decides the next step.
   *
   * @param survey everything read so far, and what was opened in vain
   * @param situation where the searcher stands
   */
  Choice next(Survey survey, Situation situation);
}
