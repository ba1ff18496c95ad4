package ohmtrail.cli;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import ohmtrail.cli.casefile.CaseFile;
import ohmtrail.cli.casefile.CaseFileException;
import ohmtrail.cli.casefile.CaseFileReader;
import ohmtrail.practice.PracticeCase;
import ohmtrail.predict.Degradation;
import ohmtrail.survey.Reading;
import ohmtrail.survey.Survey;
import ohmtrail.survey.Test;
import org.snakeyaml.engine.v2.api.Load;
import org.snakeyaml.engine.v2.api.LoadSettings;

/**
 * An example case of the folder {@code shared/cases} with the truth that it was made from, which
 * stands beside it.
 */
final class ExampleCase {
  private static final String CASE = ".yaml";
  private static final String TRUTH = ".truth.yaml";

  /** The voltage in a line that is a reading: {@code - hall hot-neutral 118.6 V meter}. */
  private static final Pattern READING =
      Pattern.compile("(\\s+- [^:#]*\\s)[0-9.]+( (?:V|A|ohm)\\b[^:]*)");

  private final String name;
  private final Path file;
  private final CaseFile caseFile;
  private final List<Degradation> degraded;
  private final long seed;

  private ExampleCase(
      String name, Path file, CaseFile caseFile, List<Degradation> degraded, long seed) {
    this.name = name;
    this.file = file;
    this.caseFile = caseFile;
    this.degraded = List.copyOf(degraded);
    this.seed = seed;
  }

  /** Every example case, by name. */
  static Stream<ExampleCase> all() throws IOException {
    Path folder = folder();
    try (Stream<Path> files = Files.list(folder)) {
      return files
          .map(path -> path.getFileName().toString())
          .filter(fileName -> fileName.endsWith(CASE) && !fileName.endsWith(TRUTH))
          .map(fileName -> fileName.substring(0, fileName.length() - CASE.length()))
          .sorted()
          .toList()
          .stream()
          .map(ExampleCase::named);
    }
  }

  static ExampleCase named(String name) {
    try {
      Path file = folder().resolve(name + CASE);
      Map<?, ?> truth = (Map<?, ?>) yaml(folder().resolve(name + TRUTH));
      long seed = Long.parseLong(String.valueOf(truth.get("seed")));
      return new ExampleCase(
          name, file, new CaseFileReader().read(file), degraded(truth.get("degraded")), seed);
    } catch (CaseFileException e) {
      throw new AssertionError(e);
    }
  }

  private static Path folder() {
    return Path.of(System.getProperty("ohmtrail.shared", "../shared"), "cases");
  }

  private static Object yaml(Path file) {
    try {
      return new Load(LoadSettings.builder().build()).loadFromString(Files.readString(file));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static List<Degradation> degraded(Object joints) {
    List<Degradation> degraded = new ArrayList<>();
    ((Map<?, ?>) joints)
        .forEach(
            (joint, ohms) ->
                degraded.add(new Degradation(String.valueOf(joint), ohms(String.valueOf(ohms)))));
    return degraded;
  }

  private static double ohms(String text) {
    return text.equals("open")
        ? Double.POSITIVE_INFINITY
        : Double.parseDouble(text.replace(" ohm", ""));
  }

  String name() {
    return name;
  }

  Path file() {
    return file;
  }

  CaseFile caseFile() {
    return caseFile;
  }

  /** The degraded joints; empty for a healthy circuit. */
  List<Degradation> degraded() {
    return degraded;
  }

  String text() {
    try {
      return Files.readString(file);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** The case with its readings drawn anew from the truth and its seed. */
  String remade() {
    Survey drawn =
        PracticeCase.staged(
                caseFile.circuit(), caseFile.survey(), degraded, caseFile.assumptions(), seed)
            .survey();
    Iterator<String> volts = shown(drawn).iterator();
    StringBuilder remade = new StringBuilder();
    for (String line : text().lines().toList()) {
      Matcher reading = READING.matcher(line);
      boolean hit = reading.matches();
      remade.append(hit ? reading.group(1) + volts.next() + reading.group(2) : line).append("\n");
    }
    if (volts.hasNext()) {
      throw new AssertionError(name + ": a reading stands in no line of its own");
    }
    return remade.toString();
  }

  /** As the display of each meter shows it. */
  private static List<String> shown(Survey survey) {
    List<String> shown = new ArrayList<>();
    for (Test test : survey.tests()) {
      for (Reading reading : test.readings()) {
        double resolution = survey.meter(reading.meter()).resolution();
        int places = Math.max(0, BigDecimal.valueOf(resolution).stripTrailingZeros().scale());
        shown.add(
            BigDecimal.valueOf(reading.value()).setScale(places, RoundingMode.HALF_UP).toString());
      }
    }
    return shown;
  }

  void write(String changed) throws IOException {
    Files.writeString(file, changed);
  }

  @Override
  public String toString() {
    return name;
  }
}
