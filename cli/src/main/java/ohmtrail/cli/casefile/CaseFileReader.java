package ohmtrail.cli.casefile;

import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import ohmtrail.circuit.JointKind;
import ohmtrail.circuit.Supply;
import ohmtrail.cli.casefile.Node.Mapping;
import ohmtrail.cli.casefile.Node.Scalar;
import ohmtrail.reference.Assumptions;
import ohmtrail.reference.Conductor;
import ohmtrail.survey.Load;
import ohmtrail.survey.Meter;
import ohmtrail.survey.Survey;
import ohmtrail.survey.SurveyException;

/**
 * Reads a case file and the table of readings that it may name.
 *
 * <p>Whatever the file holds, the answer is a case or a {@link CaseFileException}; as many problems
 * as can be told are told at once. Files above 5 MB are refused unread.
 */
public final class CaseFileReader {

  /**
   * Reads a case file.
   *
   * @param file the case file
   * @return what it says, with what is odd about it
   * @throws CaseFileException when there is no such file or anything is wrong with it
   */
  public CaseFile read(Path file) throws CaseFileException {
    Problems problems = new Problems(file.toString());
    Optional<CaseFile> read = Optional.empty();
    try {
      read = new Reading(file, problems).read();
    } catch (Problems.Stop stopped) {
      problems.throwIfAny();
    }
    problems.throwIfAny();
    return read.orElseThrow();
  }

  /** One pass over one file. */
  private static final class Reading {
    private final Path file;
    private final Place start;
    private final Problems problems;

    Reading(Path file, Problems problems) {
      this.file = file;
      this.start = Place.startOf(file.toString());
      this.problems = problems;
    }

    Optional<CaseFile> read() {
      String text = SourceText.read(file, start, problems);
      Node root = YamlTree.of(file.toString(), text, problems);
      if (!(root instanceof Mapping mapping)) {
        throw problems.fatal(
            root.place(),
            "Case must hold keys with values, not " + root.what() + ".",
            "this is not the file that was meant.");
      }
      return caseFile(new Fields(mapping, Keys.CASE, problems));
    }

    private Optional<CaseFile> caseFile(Fields fields) {
      Optional<Supply> supply = new SupplyReader(problems).read(fields.scalar("supply"));
      OptionalDouble volts =
          supply.map(found -> OptionalDouble.of(found.volts())).orElse(OptionalDouble.empty());
      Run run = run(fields, supply);
      Survey survey = survey(fields, run, volts);
      Assumptions assumptions =
          fields
              .mapping("assume")
              .map(mapping -> new AssumptionReader(volts, problems).read(mapping))
              .orElse(Assumptions.defaults());
      String title = fields.scalar("title").map(Scalar::text).orElse(nameOfFile());
      return run.circuit()
          .map(circuit -> new CaseFile(title, circuit, survey, assumptions, problems.warnings()));
    }

    private String nameOfFile() {
      String name = String.valueOf(file.getFileName());
      int dot = name.lastIndexOf('.');
      return dot > 0 ? name.substring(0, dot) : name;
    }

    private Run run(Fields fields, Optional<Supply> supply) {
      Quantities quantities = new Quantities(problems);
      Optional<Scalar> breaker =
          required(fields, "breaker", "write breaker: 15 A, or what its handle says.");
      OptionalDouble amperes =
          breaker
              .map(scalar -> quantities.only(scalar, Limit.BREAKER_AMPERES))
              .orElse(OptionalDouble.empty());
      ConductorWords conductors = new ConductorWords(problems);
      Optional<Scalar> cable = fields.scalar("cable");
      Optional<Conductor> conductor = cable.flatMap(conductors::only);
      if (conductor.isPresent() && amperes.isPresent()) {
        conductors.warnOfMisfit(
            conductor.get(), amperes.getAsDouble(), cable.map(Scalar::place).orElse(start));
      }
      JointKind terminals =
          fields
              .scalar("joints")
              .flatMap(word -> Vocabulary.only(word, "joints", Vocabulary.JOINTS, problems))
              .orElse(JointKind.SCREW);
      RunReader.Feed feed =
          new RunReader.Feed(supply, amperes, conductor, cable.isPresent(), terminals);
      if (fields.node("run").isEmpty()) {
        missing(fields, "run", "a line (run:) with (- panel) below it is missing.");
      }
      return fields
          .items("run")
          .map(items -> new RunReader(feed, problems).read(items))
          .orElse(Run.none());
    }

    private Optional<Scalar> required(Fields fields, String key, String maybe) {
      if (fields.node(key).isEmpty()) {
        missing(fields, key, maybe);
      }
      return fields.scalar(key);
    }

    private void missing(Fields fields, String key, String maybe) {
      problems.error(
          fields.place(key, start), "Key (" + key + ") is missing or has no value.", maybe);
    }

    private Survey survey(Fields fields, Run run, OptionalDouble volts) {
      List<Meter> meters =
          fields
              .mapping("meters")
              .map(mapping -> new MeterReader(problems).read(mapping))
              .orElse(MeterReader.USUAL);
      LoadReader loadReader =
          new LoadReader(volts.orElse(Supply.NORTH_AMERICA_120.volts()), problems);
      List<Load> listed = fields.mapping("loads").map(loadReader::read).orElse(List.of());
      Site site = Site.of(run, new Names(meters.stream().map(Meter::name).toList()), volts);
      UseReader uses = new UseReader(site, listed, loadReader, problems);
      ReadingReader readings = new ReadingReader(site, problems);
      TestReader tests = new TestReader(uses, readings, problems);
      if (!run.boxes().isEmpty()) {
        fields.items("tests").ifPresent(tests::read);
        fields
            .scalar("readings")
            .ifPresent(name -> readTable(name, new CsvReadings(tests, uses, readings, problems)));
      }
      return survey(meters, uses.loads(), tests, run, fields.place("tests", start));
    }

    private Survey survey(
        List<Meter> meters, List<Load> loads, TestReader tests, Run run, Place place) {
      try {
        Survey survey = new Survey(meters, loads, tests.tests());
        run.circuit().ifPresent(survey::requireFits);
        return survey;
      } catch (SurveyException broken) {
        problems.error(place, broken);
        return new Survey(List.of(), List.of(), List.of());
      }
    }

    private void readTable(Scalar name, CsvReadings readings) {
      beside(name)
          .ifPresent(
              path -> {
                String text = SourceText.read(path, name.place(), problems);
                readings.read(CsvTable.of(path.toString(), text, problems), name.place());
              });
    }

    /** The table's path; it must lie beside the case, so that a case can be handed on whole. */
    private Optional<Path> beside(Scalar name) {
      try {
        Path table = Path.of(name.text());
        boolean away = table.isAbsolute() || table.getRoot() != null || table.startsWith("..");
        if (!away && !table.normalize().startsWith("..") && !name.text().isBlank()) {
          return Optional.of(file.resolveSibling(table));
        }
      } catch (InvalidPathException invalid) {
        // Said below: no such file can lie beside the case.
      }
      problems.error(
          name.place(),
          "Table of readings (" + name.text() + ") must be a file beside the case file.",
          "move it there and give its name only.");
      return Optional.empty();
    }
  }
}
