package ohmtrail.cli.render;

import java.util.ArrayList;
import java.util.List;
import ohmtrail.cli.casefile.CaseFile;
import ohmtrail.predict.Degradation;
import ohmtrail.predict.LoadPoint;
import ohmtrail.predict.Predictor;
import ohmtrail.survey.Survey;
import ohmtrail.survey.Test;
import ohmtrail.survey.load.Load;

/** Where the loads of each test settle. */
public final class LoadFindings {
  private LoadFindings() {}

  /**
   * A load in a test.
   *
   * @param test the test's name
   * @param point where it settles
   */
  public record Found(String test, LoadPoint point) {}

  /**
   * Every load of every test.
   *
   * @param survey its tests say which loads are on
   * @param degradations ohms supposed or found
   */
  public static List<Found> found(
      CaseFile caseFile, Survey survey, List<Degradation> degradations) {
    Predictor predictor = new Predictor(caseFile.circuit(), survey, caseFile.assumptions());
    List<Found> found = new ArrayList<>();
    for (Test test : survey.tests()) {
      predictor
          .loadPoints(test, degradations, predictor.parameters().nominalPoint())
          .forEach(point -> found.add(new Found(test.name(), point)));
    }
    return List.copyOf(found);
  }

  /** One line per load that does not run. */
  public static List<String> cannotStart(
      CaseFile caseFile, Survey survey, List<Degradation> degradations) {
    return found(caseFile, survey, degradations).stream()
        .filter(found -> !found.point().runs())
        .map(found -> line(survey.load(found.point().use().load()), found))
        .toList();
  }

  private static String line(Load load, Found found) {
    double least = load.leastVoltsShare() * load.ratedVolts();
    return load.name()
        + " at "
        + found.point().use().box()
        + ", test "
        + found.test()
        + ": cannot start. Idle it sees "
        + Figures.volts(found.point().volts())
        + "; with it on, the voltage does not stay above the "
        + Figures.volts(least)
        + " that it needs.";
  }
}
