package ohmtrail.cli.walk;

import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import ohmtrail.advise.Advice;
import ohmtrail.advise.AdviceReport;
import ohmtrail.advise.Situation;
import ohmtrail.cli.casefile.CaseFile;
import ohmtrail.locate.Posterior;
import ohmtrail.reference.Minutes;
import ohmtrail.report.Report;
import ohmtrail.survey.LoadInUse;

/**
 * What is believed of a case, and what to do about it.
 *
 * @param caseFile the case
 * @param situation where the person stands
 * @param posterior of its survey
 * @param reported the answer as it stands, and advice on it
 */
record Assessment(
    CaseFile caseFile, Situation situation, Posterior posterior, AdviceReport reported) {
  /** Weighs a case. */
  static Assessment of(CaseFile caseFile, Situation situation) {
    Posterior posterior = posterior(caseFile);
    return new Assessment(
        caseFile,
        situation,
        posterior,
        AdviceReport.of(caseFile.problem(), situation, Minutes.defaults(), posterior));
  }

  /** What to do. */
  Advice advice() {
    return reported.advice();
  }

  /** The answer as it stands. */
  Report report() {
    return reported.report();
  }

  static Posterior posterior(CaseFile caseFile) {
    return AdviceReport.posterior(caseFile.problem());
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
