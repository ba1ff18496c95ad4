package ohmtrail.cli.casefile.range;

/** A range that cannot be swept; its message says why, in sentences. */
public final class RangeException extends RuntimeException {
  private static final long serialVersionUID = 1;

  RangeException(String message) {
    super(message);
  }
}
