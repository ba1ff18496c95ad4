package ohmtrail.cli.chart.canvas;

import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;

class ClutterTest {

  @Test
  void aLineIsInTheWayWhereItPassesAndNowhereElse() {
    Clutter clutter = new Clutter();
    clutter.add(List.of(new Spot(0, 0), new Spot(100, 100)));
    assertFalse(clutter.leavesFree(new Spot(40, 45), 30, 10));
    assertTrue(clutter.leavesFree(new Spot(60, 10), 30, 10));
  }

  @Test
  void aRectangleIsInTheWayAsAWhole() {
    Clutter clutter = new Clutter();
    clutter.add(new Spot(10, 10), 40, 20);
    assertFalse(clutter.leavesFree(new Spot(25, 15), 8, 8));
    assertTrue(clutter.leavesFree(new Spot(52, 10), 8, 8));
  }
}
