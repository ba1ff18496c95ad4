package ohmtrail.cli.walk;

import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import ohmtrail.advise.Advice;
import ohmtrail.advise.Advisor;
import ohmtrail.advise.Situation;
import ohmtrail.cli.casefile.CaseFile;
import ohmtrail.locate.Locator;
import ohmtrail.locate.Posterior;
import ohmtrail.reference.Minutes;
import ohmtrail.survey.LoadInUse;

/**
 * What is believed of a case, and what to do about it.
 *
 * @param caseFile the case
 * @param situation where the person stands
 * @param posterior of its survey
 * @param advice on it
 */
record Assessment(CaseFile caseFile, Situation situation, Posterior posterior, Advice advice) {
  /** Weighs a case. */
  static Assessment of(CaseFile caseFile, Situation situation) {
    Posterior posterior = posterior(caseFile);
    Advice advice =
        new Advisor(caseFile.circuit(), caseFile.assumptions(), Minutes.defaults())
            .next(caseFile.survey(), situation, posterior);
    return new Assessment(caseFile, situation, posterior, advice);
  }

  static Posterior posterior(CaseFile caseFile) {
    return new Locator().posterior(caseFile.problem());
  }

  /** Where somebody stands who comes to a case: what was used before is at hand. */
  static Situation arrival(CaseFile caseFile) {
    Set<String> used =
        caseFile.survey().tests().stream()
            .flatMap(test -> test.loads().stream())
            .map(LoadInUse::load)
            .collect(Collectors.toSet());
    return new Situation(Optional.empty(), used);
  }
}
