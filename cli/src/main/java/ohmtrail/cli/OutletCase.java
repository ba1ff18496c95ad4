package ohmtrail.cli;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Turns the options of a bare outlet into the case that they stand for. */
final class OutletCase {
  private static final String WITH = " with ";

  private OutletCase() {}

  /**
   * The text of the case.
   *
   * @param supply its voltage; volts where no unit is said
   * @param readings one or more, each perhaps followed by what was on
   */
  static String text(String supply, List<String> readings) {
    StringBuilder text = new StringBuilder("outlet: " + quoted(supply) + "\ntitle: outlet\n");
    Map<String, List<String>> tests = new LinkedHashMap<>();
    for (String reading : readings) {
      int with = reading.lastIndexOf(WITH);
      String on = with < 0 ? "idle" : reading.substring(with + WITH.length()).strip();
      String read = with < 0 ? reading : reading.substring(0, with);
      tests.computeIfAbsent(on, loads -> new ArrayList<>()).add(read);
    }
    if (!tests.isEmpty()) {
      text.append("tests:\n");
    }
    tests.forEach(
        (on, taken) -> {
          text.append("  - ").append(quoted(on)).append(":\n");
          taken.forEach(read -> text.append("      - ").append(quoted(read)).append('\n'));
        });
    return text.toString();
  }

  private static String quoted(String text) {
    return "'" + text.replace("'", "''").replaceAll("\\R", " ") + "'";
  }
}
