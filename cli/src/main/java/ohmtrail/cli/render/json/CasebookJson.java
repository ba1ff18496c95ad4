package ohmtrail.cli.render.json;

import ohmtrail.report.casebook.Casebook;
import ohmtrail.report.casebook.FailureRates;

/** A casebook as a document; whoever knows the files adds those that were passed over. */
public final class CasebookJson {
  private final JsonWriter json = Parts.begin("casebook");

  /**
   * Begins with what was learned.
   *
   * @param unstated cases that do not say where the joint was found
   */
  public CasebookJson(Casebook book, int unstated) {
    json.member("cases", book.cases())
        .member("unstated", unstated)
        .member("firstRight", book.firstRight())
        .member("firstTwoRight", book.firstTwoRight());
    json.object("firstRightShare")
        .member("low", book.low(), Parts.PROBABILITY)
        .member("high", book.high(), Parts.PROBABILITY)
        .member("coverage", FailureRates.COVERAGE)
        .end();
    json.member("meanOpenings", book.meanOpenings())
        .member("minutesSaved", book.minutesSaved())
        .member("priorStrength", book.rates().strength());
    json.array("rates");
    for (FailureRates.Rate rate : book.rates().rates()) {
      json.object()
          .member("kind", rate.kind().word())
          .member("assumption", rate.kind().weight().key())
          .member("joints", rate.joints())
          .member("failures", rate.failures())
          .member("assumed", rate.assumed())
          .member("mean", rate.mean())
          .member("low", rate.low())
          .member("high", rate.high())
          .end();
    }
    json.end().array("passedOver");
  }

  /** Adds a file that was passed over. */
  public CasebookJson passedOver(String file, String reason) {
    json.object().member("file", file).member("reason", reason).end();
    return this;
  }

  @Override
  public String toString() {
    return json.end().end().toString();
  }
}
