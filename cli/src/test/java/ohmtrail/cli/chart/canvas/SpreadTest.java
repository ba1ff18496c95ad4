package ohmtrail.cli.chart.canvas;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.Size;
import org.junit.jupiter.api.Test;

class SpreadTest {

  @Test
  void labelsWithRoomStayWhereTheyAre() {
    assertEquals(List.of(10.0, 50.0), Spread.apart(List.of(10.0, 50.0), 12, 0, 100));
  }

  @Test
  void crowdedLabelsMoveApartAndStayInside() {
    assertEquals(List.of(50.0, 60.0, 70.0), Spread.apart(List.of(50.0, 50.0, 51.0), 10, 0, 100));
    assertEquals(List.of(80.0, 90.0, 100.0), Spread.apart(List.of(97.0, 98.0, 99.0), 10, 0, 100));
  }

  @Property
  void neighboursKeepTheirDistance(
      @ForAll @Size(max = 10) List<@DoubleRange(max = 100) Double> wanted) {
    List<Double> places = Spread.apart(wanted.stream().sorted().toList(), 10, 0, 100);
    for (int i = 1; i < places.size(); i++) {
      assertTrue(places.get(i) - places.get(i - 1) >= 10 - 1e-9, places.toString());
    }
    for (double place : places) {
      assertTrue(place >= -1e-9 && place <= 100 + 1e-9, places.toString());
    }
  }
}
