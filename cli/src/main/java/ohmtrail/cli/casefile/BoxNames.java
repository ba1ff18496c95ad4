package ohmtrail.cli.casefile;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import ohmtrail.circuit.Box;
import ohmtrail.circuit.Circuit;
import ohmtrail.cli.names.Names;

/**
 * The boxes of a circuit as somebody names them who stands at one: by their names, or by their
 * number along the run, the first one after the panel being 1.
 */
public final class BoxNames {
  private BoxNames() {}

  /** Of a circuit. */
  public static Names of(Circuit circuit) {
    List<String> names = circuit.boxes().stream().map(Box::name).toList();
    Map<String, String> numbers = new HashMap<>();
    for (int number = 1; number < names.size(); number++) {
      for (String written : List.of(number + "", "#" + number, "box " + number)) {
        numbers.put(written, names.get(number));
      }
    }
    return new Names(names, numbers);
  }
}
