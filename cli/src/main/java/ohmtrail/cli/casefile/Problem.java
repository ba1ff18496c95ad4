package ohmtrail.cli.casefile;

/**
 * Something wrong, or odd, at a place of a file.
 *
 * @param file the file as the user named it
 * @param line counted from 1
 * @param column counted from 1, in characters; that of the offending word
 * @param message what is wrong and what was expected; where there is a remedy, a second line that
 *     begins with "Maybe"
 */
public record Problem(String file, int line, int column, String message) {

  /** {@return {@code file:line:column: message}} */
  public String format() {
    return file + ":" + line + ":" + column + ": " + message;
  }
}
