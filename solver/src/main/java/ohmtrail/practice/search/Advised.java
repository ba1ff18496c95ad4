package ohmtrail.practice.search;

import ohmtrail.advise.Advisor;
import ohmtrail.advise.Choice;
import ohmtrail.advise.Situation;
import ohmtrail.survey.Survey;

/** Follows the advice, whatever it is. */
public final class Advised implements Searcher {
  private final Advisor advisor;

  /** Asks that advisor. */
  public Advised(Advisor advisor) {
    this.advisor = advisor;
  }

  @Override
  public Choice next(Survey survey, Situation situation) {
    return advisor.next(survey, situation).best().choice();
  }
}
