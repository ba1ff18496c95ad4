package ohmtrail.cli.casefile.survey;

import java.util.HashMap;
import java.util.HashSet;
import java.util.Map;
import java.util.Set;

/** Gives every test a name of its own: a text used before gets a number behind it. */
final class TestNames {

  private final Set<String> taken = new HashSet<>();
  private final Map<String, Integer> last = new HashMap<>();

  /** The name of the next test of that text. */
  String of(String text) {
    String name = text;
    while (!taken.add(name)) {
      name = text + " (" + (last.merge(text, 1, Integer::sum) + 1) + ")";
    }
    return name;
  }

  /** Whether a name given by hand is still free; takes it if so. */
  boolean take(String name) {
    return taken.add(name);
  }
}
