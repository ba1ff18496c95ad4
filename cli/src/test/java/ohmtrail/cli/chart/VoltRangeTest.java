package ohmtrail.cli.chart;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;

class VoltRangeTest {

  @Test
  void aFlatRunIsNotBlownUp() {
    VoltRange range = VoltRange.ofSupply(120).with(119.9);
    assertTrue(range.high() - range.low() >= VoltRange.LEAST_SPAN);
  }

  @Test
  void theScaleStaysOffZeroUntilHalfTheSupplyIsLost() {
    assertTrue(VoltRange.ofSupply(120).with(61).low() > 50);
    assertEquals(0, VoltRange.ofSupply(120).with(59).low());
  }

  @Test
  void aRiseStartsAtZero() {
    assertEquals(0, VoltRange.ofRise().with(40).low());
    assertEquals(VoltRange.LEAST_SPAN, VoltRange.ofRise().with(0.3).high());
  }

  @Property
  void whatWasAddedIsWithin(
      @ForAll @DoubleRange(max = 300) double first, @ForAll @DoubleRange(max = 300) double second) {
    VoltRange range = VoltRange.ofSupply(120).with(first).with(second);
    assertTrue(range.low() <= Math.min(first, second) && range.low() >= 0);
    assertTrue(range.high() >= Math.max(first, second));
  }
}
