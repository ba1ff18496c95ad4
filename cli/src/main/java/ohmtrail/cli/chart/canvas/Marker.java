package ohmtrail.cli.chart.canvas;

import java.util.List;

/** Marks that are told apart by their shape. */
public enum Marker {
  /** Filled circle. */
  DISC {
    @Override
    public void draw(Canvas canvas, Spot at, double radius, Ink ink) {
      canvas.circle(at, radius, ink, Pen.solid(Ink.WHITE, HALO));
    }
  },
  /** Hollow square. */
  SQUARE {
    @Override
    public void draw(Canvas canvas, Spot at, double radius, Ink ink) {
      List<Spot> corners =
          List.of(
              at.plus(-radius, -radius),
              at.plus(radius, -radius),
              at.plus(radius, radius),
              at.plus(-radius, radius));
      canvas.shape(corners, Ink.WHITE, Pen.solid(ink, OUTLINE));
    }
  },
  /** Hollow triangle, point upward. */
  TRIANGLE {
    @Override
    public void draw(Canvas canvas, Spot at, double radius, Ink ink) {
      double reach = radius * TRIANGLE_REACH;
      List<Spot> corners =
          List.of(at.plus(0, -reach), at.plus(reach, radius), at.plus(-reach, radius));
      canvas.shape(corners, Ink.WHITE, Pen.solid(ink, OUTLINE));
    }
  },
  /** Two crossed strokes. */
  CROSS {
    @Override
    public void draw(Canvas canvas, Spot at, double radius, Ink ink) {
      Pen pen = Pen.solid(ink, OUTLINE);
      canvas.line(at.plus(-radius, -radius), at.plus(radius, radius), pen);
      canvas.line(at.plus(-radius, radius), at.plus(radius, -radius), pen);
    }
  };

  /** White rim that keeps a disc visible on a line, points. */
  private static final double HALO = 1;

  private static final double OUTLINE = 1.4;

  /** Makes a triangle as heavy as a square of the same radius. */
  private static final double TRIANGLE_REACH = 1.25;

  /**
   * Draws the mark.
   *
   * @param at its centre
   * @param radius half its width, points
   */
  public abstract void draw(Canvas canvas, Spot at, double radius, Ink ink);
}
