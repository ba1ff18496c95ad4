package ohmtrail.cli.casefile;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import ohmtrail.circuit.Box;
import ohmtrail.circuit.Cable;
import ohmtrail.circuit.Circuit;
import ohmtrail.circuit.ConductorRole;
import ohmtrail.circuit.JointKind;
import ohmtrail.circuit.Supply;
import ohmtrail.reference.Assumptions;
import ohmtrail.reference.Conductor;
import ohmtrail.reference.ConductorMaterial;
import ohmtrail.reference.ConductorSize;
import ohmtrail.survey.HeatingElement;
import ohmtrail.survey.Load;
import ohmtrail.survey.LoadInUse;
import ohmtrail.survey.Meter;
import ohmtrail.survey.ProbePoints;
import ohmtrail.survey.Reading;
import ohmtrail.survey.Survey;
import ohmtrail.survey.Test;
import org.snakeyaml.engine.v2.api.LoadSettings;

/** Reads a case file. */
public final class CaseFileReader {
  private static final double METRES_PER_FOOT = 0.3048;

  /**
   * Reads a case file and the table of readings that it may name.
   *
   * @param file the case file
   * @return what it says
   * @throws CaseFileException when it cannot be read, with everything that is wrong
   */
  public CaseFile read(Path file) throws CaseFileException {
    try {
      Object yaml =
          new org.snakeyaml.engine.v2.api.Load(LoadSettings.builder().build())
              .loadFromString(Files.readString(file));
      return caseOf(map(yaml));
    } catch (IOException | RuntimeException e) {
      throw new CaseFileException(
          List.of(new Problem(file.toString(), 1, 1, "Case cannot be read: " + e.getMessage())));
    }
  }

  private static CaseFile caseOf(Map<?, ?> yaml) {
    double volts = number(text(yaml, "supply", "120 V"));
    Supply supply = volts > 200 ? new Supply(volts, 50) : new Supply(volts, 60);
    Conductor conductor = conductor(text(yaml, "cable", "14 AWG"));
    JointKind terminals = joint(text(yaml, "joints", "screw"));
    List<Box> boxes = new ArrayList<>();
    List<Cable> cables = new ArrayList<>();
    for (Object entry : list(yaml.get("run"))) {
      addEntry(entry, conductor, terminals, boxes, cables);
    }
    double amperes = number(text(yaml, "breaker", "15 A"));
    Circuit circuit = new Circuit(supply, amperes, boxes, cables);
    Survey survey = survey(yaml, volts);
    survey.requireFits(circuit);
    return new CaseFile(
        text(yaml, "title", ""), circuit, survey, Assumptions.defaults(), List.of());
  }

  private static void addEntry(
      Object entry, Conductor conductor, JointKind terminals, List<Box> boxes, List<Cable> cables) {
    if (boxes.isEmpty()) {
      boxes.add(Box.panel(entry instanceof Map<?, ?> named ? key(named) : String.valueOf(entry)));
      return;
    }
    String name = key(map(entry));
    List<String> words = words(String.valueOf(map(entry).values().iterator().next()));
    String from = boxes.get(boxes.size() - 1).name();
    if (words.contains("from")) {
      from = words.get(words.indexOf("from") + 1);
    }
    if (words.contains("junction")) {
      boxes.add(Box.junction(name));
    } else if (words.contains("pigtail")) {
      boxes.add(Box.pigtail(name));
    } else {
      JointKind held =
          Stream.of(JointKind.values())
              .filter(kind -> words.contains(kind.word()))
              .findFirst()
              .orElse(terminals);
      boxes.add(Box.feedThrough(name, held));
    }
    cables.add(
        new Cable(
            from, name, length(words), OptionalDouble.empty(), conductor, Cable.Companion.NONE));
  }

  private static OptionalDouble length(List<String> words) {
    if (words.contains("ft")) {
      double feet = number(words.get(words.indexOf("ft") - 1));
      return OptionalDouble.of(feet * METRES_PER_FOOT);
    }
    return words.contains("m")
        ? OptionalDouble.of(number(words.get(words.indexOf("m") - 1)))
        : OptionalDouble.empty();
  }

  private static Survey survey(Map<?, ?> yaml, double volts) {
    List<Meter> meters = new ArrayList<>();
    if (yaml.get("meters") == null) {
      meters.add(Meter.highImpedance("high"));
      meters.add(Meter.lowImpedance("low"));
    } else {
      map(yaml.get("meters"))
          .forEach(
              (name, value) ->
                  meters.add(
                      String.valueOf(value).contains("kohm")
                          ? Meter.lowImpedance(String.valueOf(name))
                          : Meter.highImpedance(String.valueOf(name))));
    }
    List<Load> loads = new ArrayList<>();
    if (yaml.get("loads") != null) {
      map(yaml.get("loads"))
          .forEach(
              (name, value) ->
                  loads.add(
                      new HeatingElement(
                          String.valueOf(name), number(String.valueOf(value)), volts)));
    }
    List<Test> tests = new ArrayList<>();
    for (Object test : list(yaml.get("tests"))) {
      List<Reading> readings = new ArrayList<>();
      list(map(test).values().iterator().next())
          .forEach(reading -> readings.add(reading(words(String.valueOf(reading)), meters)));
      tests.add(new Test(key(map(test)), uses(key(map(test))), readings));
    }
    return new Survey(meters, loads, tests);
  }

  private static List<LoadInUse> uses(String text) {
    List<LoadInUse> uses = new ArrayList<>();
    if (!text.equals("idle")) {
      for (String use : text.split(" \\+ ", -1)) {
        int at = use.indexOf(" at ");
        uses.add(new LoadInUse(use.substring(0, at), use.substring(at + " at ".length())));
      }
    }
    return uses;
  }

  private static Reading reading(List<String> words, List<Meter> meters) {
    String[] ends = words.get(1).split("-", -1);
    ProbePoints between =
        new ProbePoints(
            ConductorRole.parse(ends[0]).orElseThrow(), ConductorRole.parse(ends[1]).orElseThrow());
    String last = words.get(words.size() - 1);
    boolean named = meters.stream().anyMatch(meter -> meter.name().equals(last));
    String meter = named ? last : meters.get(0).name();
    return new Reading(words.get(0), between, meter, number(words.get(2)));
  }

  private static Conductor conductor(String text) {
    boolean aluminium = text.endsWith("aluminium");
    String size = text.replaceAll(" (copper|aluminium)$", "");
    return new Conductor(
        ConductorSize.parse(size).orElseThrow(),
        aluminium ? ConductorMaterial.ALUMINIUM : ConductorMaterial.COPPER);
  }

  private static JointKind joint(String word) {
    return Stream.of(JointKind.values())
        .filter(kind -> kind.word().equals(word))
        .findFirst()
        .orElseThrow();
  }

  private static double number(String text) {
    return Double.parseDouble(words(text).get(0));
  }

  private static List<String> words(String text) {
    return List.of(text.strip().toLowerCase(Locale.ROOT).split("[ ,]+", -1));
  }

  private static String text(Map<?, ?> yaml, String key, String usual) {
    Object value = yaml.get(key);
    return value == null ? usual : String.valueOf(value);
  }

  private static String key(Map<?, ?> entry) {
    return String.valueOf(entry.keySet().iterator().next());
  }

  private static Map<?, ?> map(Object node) {
    return (Map<?, ?>) node;
  }

  private static List<?> list(@org.jspecify.annotations.Nullable Object node) {
    return node == null ? List.of() : (List<?>) node;
  }
}
