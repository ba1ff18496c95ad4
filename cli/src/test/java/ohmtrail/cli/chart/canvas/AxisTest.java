package ohmtrail.cli.chart.canvas;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import net.jqwik.api.Assume;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;

class AxisTest {

  private static List<String> labels(double low, double high, int most) {
    return new Axis(low, high, 0, 100).ticks(most).stream().map(Axis.Tick::label).toList();
  }

  @Test
  void ticksAreRound() {
    assertEquals(List.of("114", "116", "118", "120", "122"), labels(113.2, 122.4, 5));
    assertEquals(List.of("0", "20", "40", "60", "80", "100"), labels(0, 100, 6));
    assertEquals(List.of("0.0", "0.5", "1.0"), labels(0, 1.2, 4));
    assertEquals(List.of("0", "100", "200"), labels(0, 235, 4));
  }

  @Test
  void anAxisMayRunUpward() {
    assertEquals(75, new Axis(0, 4, 100, 0).at(1));
  }

  @Test
  void anAxisWithoutExtentIsRefused() {
    assertThrows(IllegalArgumentException.class, () -> new Axis(5, 5, 0, 100));
    assertThrows(IllegalArgumentException.class, () -> new Axis(0, Double.NaN, 0, 100));
  }

  @Property
  void thereAreNeverTooManyTicksAndAllAreOnTheScale(
      @ForAll @DoubleRange(min = -500, max = 500) double low,
      @ForAll @DoubleRange(min = 0.01, max = 1e4) double extent,
      @ForAll @IntRange(min = 2, max = 12) int most) {
    Assume.that(low + extent > low);
    Axis axis = new Axis(low, low + extent, 0, 100);
    List<Axis.Tick> ticks = axis.ticks(most);
    assertTrue(ticks.size() <= most + 1, ticks.toString());
    for (Axis.Tick tick : ticks) {
      double place = axis.at(tick.value());
      assertTrue(place > -1e-3 && place < 100 + 1e-3, tick + " at " + place);
    }
  }
}
