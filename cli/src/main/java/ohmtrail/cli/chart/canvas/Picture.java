package ohmtrail.cli.chart.canvas;

/** Something laid out and ready to be drawn. */
public interface Picture {
  /** Width of the sheet it needs, points. */
  double width();

  /** Height of the sheet it needs, points. */
  double height();

  /** Draws it. */
  void drawOn(Canvas canvas);
}
