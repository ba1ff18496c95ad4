package ohmtrail.cli.chart.canvas;

/**
 * How words are set.
 *
 * @param size height of the type, points, positive
 * @param weight thick or thin
 * @param ink colour
 * @param anchor which part of the words stands at the given place
 * @param degrees turned about that place, clockwise
 */
public record Lettering(double size, Weight weight, Ink ink, Anchor anchor, double degrees) {
  /** Thickness of the strokes. */
  public enum Weight {
    /** Running text. */
    NORMAL,
    /** Headings. */
    BOLD
  }

  /** The part of the words that stands at the given place. */
  public enum Anchor {
    /** Their beginning. */
    START,
    /** Their middle. */
    MIDDLE,
    /** Their end. */
    END
  }

  /** Plain words that begin at their place. */
  public static Lettering of(double size, Ink ink) {
    return new Lettering(size, Weight.NORMAL, ink, Anchor.START, 0);
  }

  /** The same, bold. */
  public Lettering bold() {
    return new Lettering(size, Weight.BOLD, ink, anchor, degrees);
  }

  /** The same, anchored elsewhere. */
  public Lettering at(Anchor other) {
    return new Lettering(size, weight, ink, other, degrees);
  }

  /** The same, turned clockwise by so many degrees. */
  public Lettering turned(double by) {
    return new Lettering(size, weight, ink, anchor, by);
  }
}
