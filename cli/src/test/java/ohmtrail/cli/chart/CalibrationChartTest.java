package ohmtrail.cli.chart;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import ohmtrail.cli.chart.CalibrationChart.Bin;
import org.apache.commons.math3.stat.interval.ConfidenceInterval;
import org.apache.commons.math3.stat.interval.WilsonScoreInterval;
import org.junit.jupiter.api.Test;

class CalibrationChartTest {
  /** Two ways of writing the same closed formula. */
  private static final double ARITHMETIC = 1e-9;

  @Property
  void theIntervalIsTheScoreIntervalOfAnotherLibrary(
      @ForAll @IntRange(min = 1, max = 5000) int count, @ForAll @IntRange(max = 5000) int some) {
    int right = some % (count + 1);
    Bin bin = new Bin(0, 1, count, 0.5, (double) right / count);
    ConfidenceInterval independent =
        new WilsonScoreInterval().createInterval(count, right, CalibrationChart.COVERAGE);
    assertEquals(Math.max(0, independent.getLowerBound()), bin.lowest(), ARITHMETIC);
    assertEquals(Math.min(1, independent.getUpperBound()), bin.highest(), ARITHMETIC);
  }

  @Test
  void anEmptyBinKnowsNothingAndIsNotDrawn() {
    Bin empty = new Bin(0.2, 0.3, 0, 0, 0);
    assertEquals(0, empty.lowest());
    assertEquals(1, empty.highest());
    CalibrationChart chart = new CalibrationChart("x", List.of(empty));
    assertEquals(List.of(), chart.filled());
    assertEquals("No answers were scored.", chart.description());
  }

  @Test
  void theDescriptionHasTheFiguresOfEachBin() {
    CalibrationChart chart = new CalibrationChart("x", List.of(new Bin(0.6, 0.8, 50, 0.7, 0.66)));
    assertEquals(
        "How often answers were right, by the probability stated with them: stated 70 %, right 66 %"
            + " (90 % interval 54 to 76 %) of 50.",
        chart.description());
  }

  @Test
  void perCentGivenForAProbabilityIsRefused() {
    IllegalArgumentException refused =
        assertThrows(IllegalArgumentException.class, () -> new Bin(0, 0.1, 3, 5, 0.3));
    assertTrue(refused.getMessage().contains("(5.0)"), refused.getMessage());
    assertThrows(IllegalArgumentException.class, () -> new Bin(0, 10, 3, 0.05, 0.3));
    assertThrows(IllegalArgumentException.class, () -> new Bin(0, 0.1, -1, 0.05, 0.3));
    assertThrows(IllegalArgumentException.class, () -> new Bin(0, 0.1, 3, 0.05, Double.NaN));
  }
}
