package ohmtrail.cli.casefile.survey;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.function.Supplier;
import ohmtrail.cli.casefile.equipment.LoadReader;
import ohmtrail.cli.casefile.equipment.MeterReader;
import ohmtrail.cli.casefile.equipment.Site;
import ohmtrail.cli.casefile.run.Run;
import ohmtrail.cli.casefile.text.CsvTable;
import ohmtrail.cli.casefile.text.Fields;
import ohmtrail.cli.casefile.text.Node.Scalar;
import ohmtrail.cli.casefile.text.Place;
import ohmtrail.cli.casefile.text.Problems;
import ohmtrail.cli.casefile.text.SourceText;
import ohmtrail.cli.casefile.text.Spreadsheet;
import ohmtrail.cli.names.Names;
import ohmtrail.survey.Complaint;
import ohmtrail.survey.Finding;
import ohmtrail.survey.LoadInUse;
import ohmtrail.survey.Meter;
import ohmtrail.survey.Survey;
import ohmtrail.survey.SurveyException;
import ohmtrail.survey.Test;
import ohmtrail.survey.load.Load;

/**
 * Reads the lower half of a case file: meters, loads, tests, the table of readings, and what was
 * found.
 */
public final class SurveyReader {

  private final Fields fields;
  private final Run run;
  private final Path file;
  private final Problems problems;

  /**
   * @param fields the keys of the case
   * @param run what the upper half says
   * @param file the case file, beside which the table lies
   * @param problems takes what is wrong
   */
  public SurveyReader(Fields fields, Run run, Path file, Problems problems) {
    this.fields = fields;
    this.run = run;
    this.file = file;
    this.problems = problems;
  }

  /** Reads it; what is wrong is noted and missing in the answer. */
  public Survey read() {
    Optional<List<Meter>> own = fields.mapping("meters").map(new MeterReader(problems)::read);
    List<Meter> meters = own.orElse(MeterReader.AT_HAND);
    Site site = new Site(run, meters);
    LoadReader loadReader = new LoadReader(site, problems);
    List<Load> listed = fields.mapping("loads").map(loadReader::read).orElse(List.of());
    List<LoadInUse> hardWired = loadReader.hardWired();
    SwitchingReader switching = new SwitchingReader(site, hardWired, problems);
    UseReader uses = new UseReader(site, listed, loadReader, switching, problems);
    TapReader taps = new TapReader(site);
    ReadingReader readings = new ReadingReader(site, taps, problems);
    ConditionReader conditions = new ConditionReader(uses, switching, taps, problems);
    TestReader tests =
        new TestReader(conditions, readings, new TripReader(site, problems), problems);
    if (!run.boxes().isEmpty()) {
      fields.items("tests").ifPresent(tests::read);
      CsvReadings table = new CsvReadings(tests, conditions, readings, problems);
      fields.scalar("readings").ifPresent(name -> readTable(name, table));
    }
    List<Finding> findings =
        fields.items("found").map(new FindingReader(run.names(), problems)::read).orElse(List.of());
    List<Complaint> complaints =
        fields.node("complaint").map(complaintReader(uses.loads())::read).orElse(List.of());
    List<Test> taken = tests.tests();
    return survey(
        () ->
            new Survey(
                own.orElseGet(() -> MeterReader.used(taken)),
                uses.loads(),
                taken,
                findings,
                hardWired,
                complaints));
  }

  private ComplaintReader complaintReader(List<Load> loads) {
    return new ComplaintReader(
        run.names(), new Names(loads.stream().map(Load::name).toList()), problems);
  }

  private Survey survey(Supplier<Survey> read) {
    try {
      Survey survey = read.get();
      run.circuit().ifPresent(survey::requireFits);
      return survey;
    } catch (SurveyException broken) {
      problems.error(fields.place("tests", Place.startOf(file.toString())), broken);
      return new Survey(List.of(), List.of(), List.of());
    }
  }

  private void readTable(Scalar name, CsvReadings readings) {
    Optional<Path> path = beside(name);
    if (path.isPresent()) {
      readings.read(table(path.get(), name), name.place());
    }
  }

  private CsvTable table(Path path, Scalar name) {
    return Spreadsheet.isOne(path)
        ? Spreadsheet.read(path, name.place(), problems)
        : CsvTable.of(path.toString(), SourceText.read(path, name.place(), problems), problems);
  }

  /** The table's path; it must lie beside the case, so that a case can be handed on whole. */
  private Optional<Path> beside(Scalar name) {
    try {
      Path table = Path.of(name.text());
      boolean away = table.isAbsolute() || table.getRoot() != null;
      Path path = file.resolveSibling(table);
      if (!away && !name.text().isBlank() && isWithin(path)) {
        return Optional.of(path);
      }
    } catch (InvalidPathException | IOException invalid) {
      // Said below: no such file can lie beside the case.
    }
    problems.error(
        name.place(),
        "Table of readings (" + name.text() + ") must be a file beside the case file.",
        "move it there and give its name only.");
    return Optional.empty();
  }

  /** Whether a path leads to a place in the folder of the case, links and all. */
  private boolean isWithin(Path path) throws IOException {
    Path folder = Objects.requireNonNull(file.toAbsolutePath().normalize().getParent());
    boolean there = Files.exists(path);
    return path.toAbsolutePath().normalize().startsWith(folder)
        && (!there || path.toRealPath().startsWith(folder.toRealPath()));
  }
}
