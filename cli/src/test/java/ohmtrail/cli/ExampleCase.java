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
import java.util.function.Predicate;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import ohmtrail.circuit.Circuit;
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

  /** The keys that say what feeds what. */
  private static final String ORDER = "(run|boxes|hidden):.*";

  /** The voltage in a line that is a reading: {@code - hall hot-neutral 118.6 V meter}. */
  private static final Pattern READING =
      Pattern.compile("(\\s+- [^:#]*\\s)[0-9.]+( (?:V|A|ohm)\\b[^:]*)");

  private final String name;
  private final Path file;
  private final CaseFile caseFile;
  private final Circuit wired;
  private final List<Degradation> degraded;
  private final long seed;

  private ExampleCase(
      String name,
      Path file,
      CaseFile caseFile,
      Circuit wired,
      List<Degradation> degraded,
      long seed) {
    this.name = name;
    this.file = file;
    this.caseFile = caseFile;
    this.wired = wired;
    this.degraded = List.copyOf(degraded);
    this.seed = seed;
  }

  /** The example cases whose run is known, by name. */
  static Stream<ExampleCase> all() throws IOException {
    return everyOne().filter(example -> !example.isUnmapped());
  }

  /** Those of which nobody knows which box feeds which. */
  static Stream<ExampleCase> unmapped() throws IOException {
    return everyOne().filter(ExampleCase::isUnmapped);
  }

  /** Every example case, by name. */
  static Stream<ExampleCase> everyOne() throws IOException {
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
      CaseFile read = new CaseFileReader().read(file);
      Circuit wired = truth.containsKey("run") ? wired(name) : read.circuit();
      return new ExampleCase(name, file, read, wired, degraded(truth.get("degraded")), seed);
    } catch (CaseFileException e) {
      throw new AssertionError(e);
    }
  }

  /** The case with the run of the truth in place of what it knows of it. */
  private static Circuit wired(String name) throws CaseFileException {
    String known = block(folder().resolve(name + CASE), line -> !line.matches(ORDER));
    String truth = block(folder().resolve(name + TRUTH), line -> line.startsWith("run:"));
    return new CaseFileReader().read(name, known + truth).circuit();
  }

  /** The keys at the left margin that pass, each with what is indented below it. */
  private static String block(Path file, Predicate<String> passes) {
    StringBuilder block = new StringBuilder();
    boolean passing = false;
    for (String line : lines(file)) {
      passing = line.startsWith(" ") ? passing : passes.test(line);
      block.append(passing ? line + "\n" : "");
    }
    return block.toString();
  }

  private static List<String> lines(Path file) {
    try {
      return Files.readAllLines(file);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
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

  private boolean isUnmapped() {
    return !wired.equals(caseFile.circuit());
  }

  /** The circuit that the readings were drawn from. */
  Circuit wired() {
    return wired;
  }

  /** The degraded joints; empty for a healthy circuit. */
  List<Degradation> degraded() {
    return degraded;
  }

  /** The lines of its file but for the one that an editor reads. */
  long linesOfAPerson() {
    return text().lines().filter(line -> !line.startsWith("# yaml-language-server:")).count();
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
        PracticeCase.staged(wired, caseFile.survey(), degraded, caseFile.assumptions(), seed)
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
