package ohmtrail.cli.render;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import ohmtrail.circuit.Box;
import ohmtrail.cli.casefile.CaseFile;
import ohmtrail.locate.Diagnosis;
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
   * A receptacle above the bound.
   *
   * @param box the receptacle's box
   * @param between the conductors
   * @param test under whose loads
   * @param volts between them
   * @param ofNominal the same as a share of nominal
   */
  public record Found(
      String box, ProbePoints between, String test, double volts, double ofNominal) {}

  /** One line per receptacle, live conductor and test above the bound. */
  public static List<String> lines(CaseFile caseFile, List<Found> found) {
    Region region = Region.of(caseFile.circuit().supply());
    return found.stream().map(each -> line(region, each)).toList();
  }

  private static String line(Region region, Found found) {
    return found.box()
        + " "
        + region.between(found.between())
        + ": "
        + Figures.volts(found.volts())
        + ", "
        + Figures.wholeShare(found.ofNominal())
        + " of nominal, in test "
        + found.test()
        + ".";
  }

  /**
   * One per receptacle, live conductor and test above the bound, with everything as stated.
   *
   * @param survey its tests say which loads are on
   * @param degradations ohms supposed
   */
  public static List<Found> supposed(
      CaseFile caseFile, Survey survey, List<Degradation> degradations) {
    Predictor predictor = new Predictor(caseFile.circuit(), survey, caseFile.assumptions());
    double[] point = predictor.parameters().nominalPoint();
    return found(caseFile, survey, predictor, degradations, point);
  }

  /** The same by the best explanation: the supply is what it was when the readings were taken. */
  public static List<Found> fitted(CaseFile caseFile, Diagnosis diagnosis) {
    Survey survey = caseFile.survey();
    Predictor predictor = new Predictor(caseFile.circuit(), survey, caseFile.assumptions());
    double[] point = diagnosis.bestPointArray();
    return found(caseFile, survey, predictor, diagnosis.best(), point);
  }

  private static List<Found> found(
      CaseFile caseFile,
      Survey survey,
      Predictor predictor,
      List<Degradation> degradations,
      double[] point) {
    List<Found> found = new ArrayList<>();
    for (Test test : survey.tests()) {
      VoltageProfile profile = predictor.profile(test, degradations, point);
      for (VoltageProfile.Point place : profile.points()) {
        if (caseFile.circuit().box(place.box()).map(Box::hasReceptacle).orElse(false)) {
          add(caseFile, test, place, found);
        }
      }
    }
    return List.copyOf(found);
  }

  private static void add(
      CaseFile caseFile, Test test, VoltageProfile.Point point, List<Found> found) {
    for (Map.Entry<ProbePoints, Double> pair : point.between().entrySet()) {
      double nominal =
          pair.getKey().second().isLive()
              ? caseFile.circuit().supply().greatestVolts()
              : caseFile.circuit().supply().volts();
      if (pair.getKey().first().isLive() && pair.getValue() > MOST_OF_NOMINAL * nominal) {
        found.add(
            new Found(
                point.box(),
                pair.getKey(),
                test.name(),
                pair.getValue(),
                pair.getValue() / nominal));
      }
    }
  }
}
