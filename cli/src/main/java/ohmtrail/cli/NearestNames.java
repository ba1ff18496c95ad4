package ohmtrail.cli;

import java.util.Comparator;
import java.util.List;
import java.util.Locale;

/** Which names a text that is none of them may have been meant for. */
final class NearestNames {
  private NearestNames() {}

  /** All names, the nearest first: by the letters to insert, drop or change, case aside. */
  static List<String> to(String text, List<String> names) {
    String wanted = text.toLowerCase(Locale.ROOT);
    return names.stream()
        .sorted(Comparator.comparingInt(name -> edits(wanted, name.toLowerCase(Locale.ROOT))))
        .toList();
  }

  private static int edits(String one, String other) {
    int[] above = new int[other.length() + 1];
    for (int column = 0; column <= other.length(); column++) {
      above[column] = column;
    }
    for (int row = 1; row <= one.length(); row++) {
      int[] current = new int[other.length() + 1];
      current[0] = row;
      for (int column = 1; column <= other.length(); column++) {
        int changed = above[column - 1] + (one.charAt(row - 1) == other.charAt(column - 1) ? 0 : 1);
        current[column] = Math.min(changed, 1 + Math.min(above[column], current[column - 1]));
      }
      above = current;
    }
    return above[other.length()];
  }
}
