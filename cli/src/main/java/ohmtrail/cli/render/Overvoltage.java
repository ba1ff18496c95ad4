package ohmtrail.cli.render;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import ohmtrail.circuit.Box;
import ohmtrail.cli.casefile.CaseFile;
import ohmtrail.predict.Degradation;
import ohmtrail.predict.Predictor;
import ohmtrail.predict.VoltageProfile;
import ohmtrail.survey.ProbePoints;
import ohmtrail.survey.Survey;
import ohmtrail.survey.Test;

/** What receptacles see above 110 % of nominal, under each set of loads. */
public final class Overvoltage {
  /** Equipment is made for nominal voltage and some way above it (common practice, no source). */
  private static final double MOST_OF_NOMINAL = 1.1;

  private Overvoltage() {}

  /**
   * One line per receptacle, live conductor and test above the bound.
   *
   * @param survey its tests say which loads are on
   * @param degradations ohms supposed or found
   */
  public static List<String> lines(
      CaseFile caseFile, Survey survey, List<Degradation> degradations) {
    Predictor predictor = new Predictor(caseFile.circuit(), survey, caseFile.assumptions());
    List<String> lines = new ArrayList<>();
    for (Test test : survey.tests()) {
      VoltageProfile profile = predictor.profile(test, degradations);
      for (VoltageProfile.Point point : profile.points()) {
        if (caseFile.circuit().box(point.box()).map(Box::hasReceptacle).orElse(false)) {
          addLines(caseFile, test, point, lines);
        }
      }
    }
    return List.copyOf(lines);
  }

  private static void addLines(
      CaseFile caseFile, Test test, VoltageProfile.Point point, List<String> lines) {
    for (Map.Entry<ProbePoints, Double> pair : point.between().entrySet()) {
      double nominal =
          pair.getKey().second().isLive()
              ? caseFile.circuit().supply().greatestVolts()
              : caseFile.circuit().supply().volts();
      if (pair.getKey().first().isLive() && pair.getValue() > MOST_OF_NOMINAL * nominal) {
        lines.add(
            point.box()
                + " "
                + Region.of(caseFile.circuit().supply()).between(pair.getKey())
                + ": "
                + Figures.volts(pair.getValue())
                + ", "
                + Figures.wholeShare(pair.getValue() / nominal)
                + " of nominal, in test "
                + test.name()
                + ".");
      }
    }
  }
}
