package ohmtrail.cli.chart.canvas;

import java.util.ArrayList;
import java.util.List;

/** What stands on a sheet already and must not be written over. */
public final class Clutter {
  /** Lines are watched at spots so far apart, points: no letter fits between them. */
  private static final double WATCH_DISTANCE = 3;

  private final List<Spot> spots = new ArrayList<>();

  /** Adds a line. */
  public void add(List<Spot> line) {
    for (int i = 1; i < line.size(); i++) {
      Spot from = line.get(i - 1);
      Spot to = line.get(i);
      double length = Math.hypot(to.x() - from.x(), to.y() - from.y());
      int pieces = (int) Math.ceil(length / WATCH_DISTANCE) + 1;
      for (int k = 0; k <= pieces; k++) {
        double share = (double) k / pieces;
        spots.add(from.plus(share * (to.x() - from.x()), share * (to.y() - from.y())));
      }
    }
  }

  /** Adds a rectangle. */
  public void add(Spot upperLeft, double width, double height) {
    for (double down = 0; down <= height; down += WATCH_DISTANCE) {
      add(List.of(upperLeft.plus(0, down), upperLeft.plus(width, down)));
    }
  }

  /** Whether nothing stands in a rectangle. */
  public boolean leavesFree(Spot upperLeft, double width, double height) {
    return spots.stream()
        .noneMatch(
            spot ->
                spot.x() >= upperLeft.x()
                    && spot.x() <= upperLeft.x() + width
                    && spot.y() >= upperLeft.y()
                    && spot.y() <= upperLeft.y() + height);
  }
}
