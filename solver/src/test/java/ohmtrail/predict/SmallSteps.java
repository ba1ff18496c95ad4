package ohmtrail.predict;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleFunction;
import java.util.function.IntFunction;
import ohmtrail.survey.Reading;
import ohmtrail.survey.Survey;

/**
 * Slopes of readings held against small steps.
 *
 * <p>No width of the step is right everywhere: with a wide one the curve bends, with a narrow one
 * rounding is most of the difference, and loads that settle behind megohms have eleven digits, not
 * sixteen. Where a narrow step does not confirm a slope, differences over ever narrower steps are
 * extrapolated to none at all, and of all estimates that one counts which differs least from the
 * two that it was made of (C. Ridders, 1982, from memory).
 */
final class SmallSteps {
  /** A third derivative times its square, and rounding over it, stay small as a rule. */
  private static final double NARROW = 1e-4;

  private static final double WIDEST = 0.04;

  /** From the widest down, each half of the one before. */
  private static final int WIDTHS = 8;

  /** Of the slope, and of a volt per unit where it is next to nothing. */
  private static final double SAME = 1e-6;

  /** Steps of about this width are what extrapolation leans on. */
  private static final double LEANT_ON = 0.01;

  /** Of volts and amperes: what settling leaves where loads follow their voltage. */
  private static final double DIGITS = 1e-10;

  /**
   * Siemens. A dead circuit with a link is a ring with an open breaker in it, whose admittance is
   * what is left of a dozen branches of up to 2000 S, each known to sixteen digits.
   */
  private static final double OF_A_RING = 4e-12;

  private final DoubleFunction<double[]> readings;
  private final List<double[]> differences = new ArrayList<>();

  private SmallSteps(DoubleFunction<double[]> readings) {
    this.readings = readings;
  }

  /**
   * Holds slopes against steps.
   *
   * @param survey whose readings they are
   * @param slopes stated, one per reading
   * @param readings after a step along what the slopes are taken by
   * @param what is compared, by reading
   */
  static void assertSlopes(
      Survey survey, double[] slopes, DoubleFunction<double[]> readings, IntFunction<String> what) {
    List<Reading> read = survey.tests().stream().flatMap(test -> test.readings().stream()).toList();
    SmallSteps steps = new SmallSteps(readings);
    double[] narrow = steps.difference(NARROW);
    for (int r = 0; r < slopes.length; r++) {
      if (Math.abs(narrow[r] - slopes[r]) > tolerance(narrow[r])) {
        double limit = steps.limit(r);
        double rounding = rounding(read.get(r), readings.apply(0)[r]) / LEANT_ON;
        assertEquals(limit, slopes[r], tolerance(limit) + rounding, what.apply(r));
      }
    }
  }

  private static double tolerance(double slope) {
    return SAME * Math.max(1, Math.abs(slope));
  }

  private static double rounding(Reading reading, double shown) {
    return reading.measurand().followsSupply() ? DIGITS * shown : OF_A_RING * shown * shown;
  }

  private double[] difference(double step) {
    double[] more = readings.apply(step);
    double[] less = readings.apply(-step);
    double[] difference = new double[more.length];
    for (int r = 0; r < difference.length; r++) {
      difference[r] = (more[r] - less[r]) / (2 * step);
    }
    return difference;
  }

  private double limit(int reading) {
    for (int width = differences.size(); width < WIDTHS; width++) {
      differences.add(difference(WIDEST / Math.pow(2, width)));
    }
    double[] wider = {differences.get(0)[reading]};
    double limit = wider[0];
    double least = Double.POSITIVE_INFINITY;
    for (int width = 1; width < WIDTHS; width++) {
      double[] row = new double[width + 1];
      row[0] = differences.get(width)[reading];
      double power = 1;
      for (int order = 1; order <= width; order++) {
        // Halving the step divides the next term of the error by four, then by sixteen, ...
        power *= 4;
        row[order] = row[order - 1] + (row[order - 1] - wider[order - 1]) / (power - 1);
        double doubt =
            Math.max(
                Math.abs(row[order] - row[order - 1]), Math.abs(row[order] - wider[order - 1]));
        if (doubt < least) {
          least = doubt;
          limit = row[order];
        }
      }
      wider = row;
    }
    return limit;
  }
}
