package ohmtrail.cli.chart.canvas;

import java.util.List;

/** A white sheet that takes lines, shapes and words, the later ones over the earlier. */
public interface Canvas {
  /** An open line through the spots; two or more. */
  void line(List<Spot> spots, Pen pen);

  /** A closed, filled shape; three or more corners. */
  void shape(List<Spot> corners, Ink fill, Pen outline);

  /** A filled circle. */
  void circle(Spot centre, double radius, Ink fill, Pen outline);

  /** A filled rectangle without outline. */
  void rectangle(Spot upperLeft, double width, double height, Ink fill);

  /** Words whose base line passes through the spot. */
  void text(String words, Spot at, Lettering lettering);

  /**
   * Draws something that says more about itself when pointed at, where the format can.
   *
   * @param words what it says
   * @param drawing draws it on this canvas
   */
  void withTip(String words, Runnable drawing);

  /** A straight line. */
  default void line(Spot from, Spot to, Pen pen) {
    line(List.of(from, to), pen);
  }
}
