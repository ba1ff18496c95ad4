package ohmtrail.cli.casefile;

/**
 * Where something stands.
 *
 * @param file the file as the user named it
 * @param line counted from 1
 * @param column counted from 1, in characters
 */
record Place(String file, int line, int column) {

  /** The beginning of a file. */
  static Place startOf(String file) {
    return new Place(file, 1, 1);
  }

  /** So many characters to the right. */
  Place plus(int characters) {
    return new Place(file, line, column + characters);
  }
}
