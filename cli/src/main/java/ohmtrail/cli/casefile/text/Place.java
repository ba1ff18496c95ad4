package ohmtrail.cli.casefile.text;

/**
 * Where something stands.
 *
 * @param file the file as the user named it
 * @param line counted from 1
 * @param column counted from 1, in characters
 */
public record Place(String file, int line, int column) {

  /** The beginning of a file. */
  public static Place startOf(String file) {
    return new Place(file, 1, 1);
  }

  /** So many characters to the right. */
  public Place plus(int characters) {
    return new Place(file, line, column + characters);
  }
}
