package ohmtrail.cli.render;

import java.util.List;
import ohmtrail.circuit.Supply;
import ohmtrail.cli.render.words.Figures;
import ohmtrail.cli.render.words.Region;
import ohmtrail.predict.LoadPoint;
import ohmtrail.reference.VoltageDropGuidance;
import ohmtrail.report.Overvoltage;
import ohmtrail.report.TestState;
import ohmtrail.report.VoltageDrop;
import ohmtrail.survey.Survey;
import ohmtrail.survey.load.Load;

/** What stands out in the tests of an answer, in words. */
public final class TestFindings {
  private TestFindings() {}

  /** One line per load that does not run. */
  public static List<String> cannotStart(Survey survey, List<TestState> tests) {
    return tests.stream()
        .flatMap(
            test ->
                test.loads().stream()
                    .filter(point -> !point.runs())
                    .map(point -> line(survey.load(point.use().load()), test, point)))
        .toList();
  }

  private static String line(Load load, TestState test, LoadPoint point) {
    double least = load.leastVoltsShare() * load.ratedVolts();
    return load.name()
        + " at "
        + point.use().box()
        + ", test "
        + test.test().name()
        + ": cannot start. Idle it sees "
        + Figures.volts(point.volts())
        + "; with it on, the voltage does not stay above the "
        + Figures.volts(least)
        + " that it needs.";
  }

  /** One line per receptacle, live conductor and test above the bound. */
  public static List<String> overvoltages(Supply supply, List<TestState> tests) {
    Region region = Region.of(supply);
    return tests.stream()
        .flatMap(test -> test.overvoltages().stream())
        .map(each -> line(region, each))
        .toList();
  }

  private static String line(Region region, Overvoltage found) {
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

  /** Which figure of the advice a drop is above, in words; empty when it is within both. */
  public static String against(VoltageDropGuidance guidance, VoltageDrop drop) {
    if (drop.fraction() > guidance.totalFraction()) {
      return "above " + Figures.wholeShare(guidance.totalFraction());
    }
    return drop.fraction() > guidance.branchFraction()
        ? "above " + Figures.wholeShare(guidance.branchFraction())
        : "";
  }
}
