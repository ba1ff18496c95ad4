package ohmtrail.locate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.math.BigDecimal;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import ohmtrail.circuit.Box;
import ohmtrail.circuit.Cable;
import ohmtrail.circuit.Circuit;
import ohmtrail.circuit.Joint;
import ohmtrail.circuit.JointKind;
import ohmtrail.circuit.Supply;
import ohmtrail.predict.Degradation;
import ohmtrail.predict.Evaluation;
import ohmtrail.predict.Parameters;
import ohmtrail.predict.Predictor;
import ohmtrail.predict.Solved;
import ohmtrail.predict.SurveyModel;
import ohmtrail.problem.Problem;
import ohmtrail.reference.Assumption;
import ohmtrail.reference.Assumptions;
import ohmtrail.reference.Conductor;
import ohmtrail.reference.ConductorMaterial;
import ohmtrail.reference.ConductorSize;
import ohmtrail.survey.Accuracy;
import ohmtrail.survey.LoadInUse;
import ohmtrail.survey.Meter;
import ohmtrail.survey.ProbePoints;
import ohmtrail.survey.Reading;
import ohmtrail.survey.Survey;
import ohmtrail.survey.load.HeatingElement;
import org.junit.jupiter.api.Test;

/**
 * The worked example of docs/method.md: every number in its tables, as printed there, against the
 * solver.
 */
class WorkedExampleTest {
  private static final Path PAGE =
      Path.of(System.getProperty("ohmtrail.shared", "../shared"), "..", "docs", "method.md");

  /** A row of a table: the symbol in code marks, then the number and its unit. */
  private static final Pattern ROW = Pattern.compile("\\| `([^`]+)` \\| (-?[0-9.]+)[^|]*\\|.*");

  private static final Conductor COPPER_14 =
      new Conductor(ConductorSize.parse("14 AWG").orElseThrow(), ConductorMaterial.COPPER);
  private static final String JOINT = "A/neutral/outgoing";
  private static final double TRIED_OHMS = 0.068;

  private static final Circuit CIRCUIT =
      new Circuit(
          Supply.NORTH_AMERICA_120,
          15,
          List.of(
              Box.panel("panel"),
              Box.feedThrough("A", JointKind.SCREW),
              Box.feedThrough("B", JointKind.SCREW)),
          List.of(Cable.of("panel", "A", 10, COPPER_14), Cable.of("A", "B", 10, COPPER_14)));

  private static final Survey SURVEY =
      new Survey(
          List.of(new Meter("meter", 10e6, 0, new Accuracy(0, 2), 0.1)),
          List.of(new HeatingElement("heater", 1500, 120)),
          List.of(
              new ohmtrail.survey.Test(
                  "heater at B",
                  List.of(new LoadInUse("heater", "B")),
                  List.of(
                      new Reading("A", ProbePoints.HOT_NEUTRAL, "meter", 117.2),
                      new Reading("B", ProbePoints.HOT_NEUTRAL, "meter", 114.2)))));

  /** All but the supply voltage as good as known. */
  private static final List<String> KNOWN_EXACTLY =
      List.of(
          "source-ohms-spread",
          "load-power-tolerance",
          "meter-ohms-tolerance",
          "length-tolerance",
          "healthy-joint-spread",
          "capacitance-spread");

  /** What the example leaves aside: as improbable as the method lets it be. */
  private static final List<String> LEFT_ASIDE =
      List.of("wrong-reading", "strained-share", "further-fault", "unstable-share");

  private static Assumptions assumptions() {
    Assumptions assumptions = Assumptions.defaults().with(Assumption.SUPPLY_DRIFT, 1e-6);
    for (String key : KNOWN_EXACTLY) {
      assumptions = assumptions.with(Assumption.byKey(key).orElseThrow(), 1e-4);
    }
    for (String key : LEFT_ASIDE) {
      if (Assumption.byKey(key).isPresent()) {
        assumptions = assumptions.with(Assumption.byKey(key).get(), 1e-9);
      }
    }
    return assumptions;
  }

  @Test
  void cableAndLoadAreAsTheTableSays() throws IOException {
    Printed printed = Printed.read();
    printed.assertPrinted("rho", 1e3 * COPPER_14.ohmsPerMetre(30));
    printed.assertPrinted("r", 10 * COPPER_14.ohmsPerMetre(30));
    printed.assertPrinted("G", SURVEY.loads().get(0).ratedSiemens());
    printed.assertPrinted("sigma", Math.hypot(SURVEY.meters().get(0).readingSigma(), 0.03));
  }

  @Test
  void healthyVoltagesAreThoseByHand() throws IOException {
    Printed printed = Printed.read();
    List<Double> volts = new Predictor(CIRCUIT, SURVEY, assumptions()).readings(List.of());
    printed.assertPrinted("V_A healthy", volts.get(0));
    printed.assertPrinted("V_B healthy", volts.get(1));
  }

  @Test
  void voltagesAndSlopesWithTheDegradedJointAreThoseByHand() throws IOException {
    Printed printed = Printed.read();
    Predictor predictor = new Predictor(CIRCUIT, SURVEY, assumptions());
    List<Double> volts = predictor.readings(List.of(new Degradation(JOINT, TRIED_OHMS)));
    printed.assertPrinted("V_A", volts.get(0));
    printed.assertPrinted("V_B", volts.get(1));
    double amperes =
        Solved.amperes(
            CIRCUIT,
            SURVEY,
            assumptions(),
            SURVEY.tests().get(0),
            new Degradation(JOINT, TRIED_OHMS));
    printed.assertPrinted("i", amperes);
    Joint joint = CIRCUIT.joint(JOINT).orElseThrow();
    Parameters parameters = predictor.parameters();
    SurveyModel model =
        SurveyModel.of(
            CIRCUIT,
            SURVEY,
            assumptions(),
            parameters,
            parameters.nominalPoint(),
            List.of(joint),
            List.of());
    Evaluation evaluation = model.buffer();
    model.sweep(joint).evaluate(TRIED_OHMS, evaluation);
    printed.assertPrinted("dV_A/dln R", evaluation.ohmsSlope()[0]);
    printed.assertPrinted("dV_B/dln R", evaluation.ohmsSlope()[1]);
  }

  @Test
  void oddsAndOhmsAreThoseOfTheLocator() throws IOException {
    Printed printed = Printed.read();
    Diagnosis diagnosis = new Locator().locate(new Problem(CIRCUIT, SURVEY, assumptions()));
    Suspect suspect = diagnosis.suspects().get(0);
    assertEquals(6, suspect.joints().size(), suspect.toString());
    double odds = diagnosis.healthyProbability() / suspect.probability();
    printed.assertPrinted("odds", odds);
    printed.assertPrinted("R estimate", suspect.ohms().estimate().orElseThrow());
    assertTrue(suspect.ohms().low().isEmpty(), suspect.toString());
    printed.assertPrinted("R high", suspect.ohms().high().orElseThrow());
    // By hand the integral over the ohms is a bell curve's; the true curve has a longer left flank.
    double byHand = printed.value("odds by hand");
    assertEquals(1, odds / byHand, 0.1, "odds by hand " + byHand + ", solver " + odds);
  }

  @Test
  void aNumberThatIsPrintedWronglyIsNoticed() throws IOException {
    Printed printed = Printed.read();
    AssertionError noticed =
        org.junit.jupiter.api.Assertions.assertThrows(
            AssertionError.class, () -> printed.assertPrinted("V_A", printed.value("V_A") + 0.01));
    assertTrue(noticed.getMessage().contains("V_A"), noticed.getMessage());
  }

  /** The numbers of the page by their symbols. */
  private static final class Printed {
    private final Map<String, String> numbers = new HashMap<>();

    static Printed read() throws IOException {
      Printed printed = new Printed();
      for (String line : Files.readAllLines(PAGE)) {
        Matcher row = ROW.matcher(line);
        if (row.matches()) {
          printed.numbers.put(row.group(1), row.group(2));
        }
      }
      return printed;
    }

    double value(String symbol) {
      return Double.parseDouble(text(symbol));
    }

    private String text(String symbol) {
      String text = numbers.get(symbol);
      if (text == null) {
        throw new AssertionError("The page has no row for " + symbol);
      }
      return text;
    }

    /** To one unit of the last printed digit: a hand may round where the solver does not. */
    void assertPrinted(String symbol, double value) {
      double unit = new BigDecimal(text(symbol)).ulp().doubleValue();
      assertEquals(value(symbol), value, unit, symbol);
    }
  }
}
