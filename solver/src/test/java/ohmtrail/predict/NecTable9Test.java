package ohmtrail.predict;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import ohmtrail.circuit.Box;
import ohmtrail.circuit.Cable;
import ohmtrail.circuit.Circuit;
import ohmtrail.circuit.JointKind;
import ohmtrail.circuit.Supply;
import ohmtrail.reference.Assumption;
import ohmtrail.reference.Assumptions;
import ohmtrail.reference.Conductor;
import ohmtrail.reference.ConductorMaterial;
import ohmtrail.reference.ConductorSize;
import ohmtrail.reference.Stranding;
import ohmtrail.survey.LoadInUse;
import ohmtrail.survey.Meter;
import ohmtrail.survey.ProbePoints;
import ohmtrail.survey.Reading;
import ohmtrail.survey.Survey;
import ohmtrail.survey.load.Motor;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * What the model's cables drop at 60 Hz against NEC Chapter 9 Table 9 (three single conductors in
 * PVC conduit, 75 °C), which has skin effect and reactance in it. The model has neither: at these
 * sizes the one shows in no printed digit, the other in what is stated here.
 */
class NecTable9Test {
  private static final double FEET = 100;
  private static final double POWER_FACTOR = 0.85;

  /** Share of the drop: what lies across the voltage adds in the second order only. */
  private static final double ACROSS = 0.005;

  private static final Assumptions HOT =
      Assumptions.defaults()
          .with(Assumption.SOURCE_OHMS, 1e-6)
          .with(Assumption.HEALTHY_JOINT_OHMS, 1e-6)
          .with(Assumption.CONDUCTOR_TEMPERATURE, 75);

  /** The table is for strands; solid wire of the same size resists some two per cent less. */
  private static double strands(Conductor conductor) {
    return conductor.ohmsPerMetre(Stranding.STRANDED, 75).orElseThrow()
        / conductor.ohmsPerMetre(75);
  }

  /** Ohms to neutral per thousand feet: what is dropped one way, along the voltage, per ampere. */
  private static double ohmsPerKft(Conductor conductor, double powerFactor) {
    Circuit circuit =
        new Circuit(
            Supply.NORTH_AMERICA_120,
            20,
            List.of(Box.panel("panel"), Box.feedThrough("end", JointKind.SCREW)),
            List.of(Cable.of("panel", "end", FEET * Wires.METRES_PER_FOOT, conductor)));
    Motor motor = new Motor("motor", 600, 120, powerFactor, 0.7);
    ohmtrail.survey.Test on =
        new ohmtrail.survey.Test(
            "on",
            List.of(new LoadInUse("motor", "end")),
            List.of(new Reading("end", ProbePoints.HOT_NEUTRAL, "dmm", 0)));
    Survey survey = new Survey(List.of(Meter.highImpedance("dmm")), List.of(motor), List.of(on));
    LoadPoint point = Solved.asStated(circuit, survey, HOT, List.of()).loadPoints(on).get(0);
    return (120 - point.volts()) / (2 * point.amperes() * FEET / 1000);
  }

  private static Conductor conductor(String size, ConductorMaterial material) {
    return new Conductor(ConductorSize.parse(size).orElseThrow(), material);
  }

  @ParameterizedTest
  @CsvSource({
    "14 AWG, COPPER, 3.1, 0.05",
    "12 AWG, COPPER, 2.0, 0.05",
    "10 AWG, COPPER, 1.2, 0.05",
    "8 AWG, COPPER, 0.78, 0.005",
    "12 AWG, ALUMINIUM, 3.2, 0.05",
    "10 AWG, ALUMINIUM, 2.0, 0.05",
    "8 AWG, ALUMINIUM, 1.3, 0.05"
  })
  void theResistanceIsTheTablesToTheDigitsThatItPrints(
      String size, ConductorMaterial material, double printed, double halfADigit) {
    Conductor conductor = conductor(size, material);
    double ohms = ohmsPerKft(conductor, 1) * strands(conductor);
    assertEquals(printed, ohms, halfADigit + 1e-4);
  }

  /** The impedance is R cos phi + X sin phi; X sin phi is what the model leaves out. */
  @ParameterizedTest
  @CsvSource({
    "14 AWG, 2.7, 0.058, 0.05",
    "12 AWG, 1.7, 0.054, 0.05",
    "10 AWG, 1.1, 0.050, 0.05",
    "8 AWG, 0.69, 0.052, 0.005"
  })
  void theEffectiveImpedanceIsTheTablesLessItsReactance(
      String size, double printed, double reactance, double halfADigit) {
    Conductor conductor = conductor(size, ConductorMaterial.COPPER);
    double leftOut = reactance * Math.sqrt(1 - POWER_FACTOR * POWER_FACTOR);
    double ohms = ohmsPerKft(conductor, POWER_FACTOR) * strands(conductor);
    assertEquals(printed, ohms + leftOut, halfADigit + ACROSS * ohms);
  }
}
