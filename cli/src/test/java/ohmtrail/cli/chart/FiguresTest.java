package ohmtrail.cli.chart;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;

class FiguresTest {

  @Test
  void ohmsHaveTwoDigitsAndAFittingPrefix() {
    assertEquals("0.052 ohm", Figures.ohms(0.0521));
    assertEquals("2 ohm", Figures.ohms(2.04));
    assertEquals("340 ohm", Figures.ohms(342));
    assertEquals("12 kohm", Figures.ohms(12_300));
    assertEquals("1.5 Mohm", Figures.ohms(1.49e6));
    assertEquals("fully open", Figures.ohms(Double.POSITIVE_INFINITY));
  }

  @Test
  void nothingIsCertainOrImpossible() {
    assertEquals("over 99 %", Figures.percent(0.9999));
    assertEquals("under 1 %", Figures.percent(0.001));
    assertEquals("62 %", Figures.percent(0.62));
  }

  @Test
  void wattsReadAsOnANameplate() {
    assertEquals("60 W", Figures.watts(60));
    assertEquals("1.44 kW", Figures.watts(1440));
  }

  @Test
  void lengthsAreInTheRegionsUnit() {
    assertEquals("98 ft", Figures.length(Region.NORTH_AMERICA, 30));
    assertEquals("30 m", Figures.length(Region.INTERNATIONAL, 30));
  }
}
