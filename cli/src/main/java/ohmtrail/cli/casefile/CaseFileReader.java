package ohmtrail.cli.casefile;

import java.io.InputStream;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import ohmtrail.circuit.CircuitException;
import ohmtrail.cli.casefile.circumstances.Circumstances;
import ohmtrail.cli.casefile.circumstances.CircumstancesReader;
import ohmtrail.cli.casefile.run.CircuitReader;
import ohmtrail.cli.casefile.run.Run;
import ohmtrail.cli.casefile.run.Unsaid;
import ohmtrail.cli.casefile.survey.SurveyReader;
import ohmtrail.cli.casefile.text.Fields;
import ohmtrail.cli.casefile.text.Node;
import ohmtrail.cli.casefile.text.Node.Mapping;
import ohmtrail.cli.casefile.text.Node.Scalar;
import ohmtrail.cli.casefile.text.Place;
import ohmtrail.cli.casefile.text.Problems;
import ohmtrail.cli.casefile.text.SourceText;
import ohmtrail.cli.casefile.text.YamlTree;
import ohmtrail.cli.casefile.words.Keys;
import ohmtrail.cli.names.Shown;
import ohmtrail.reference.Assumptions;
import ohmtrail.survey.Meter;
import ohmtrail.survey.Survey;
import ohmtrail.survey.SurveyException;
import ohmtrail.survey.Test;

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
    Place start = Place.startOf(file.toString());
    return read(file, problems -> SourceText.read(file, start, problems));
  }

  /**
   * Reads a case from a stream, up to its end. A table that it names is looked for in the folder
   * that the program was started in.
   *
   * @param in the case
   * @param name what messages call it
   * @throws CaseFileException when anything is wrong with it
   */
  public CaseFile read(InputStream in, String name) throws CaseFileException {
    return read(Path.of(name), problems -> SourceText.read(in, Place.startOf(name), problems));
  }

  /**
   * Reads a case that is no file of its own.
   *
   * @param name what messages call it
   * @param text the case
   * @throws CaseFileException when anything is wrong with it
   */
  public CaseFile read(String name, String text) throws CaseFileException {
    return read(Path.of(name), problems -> text);
  }

  private static CaseFile read(Path file, Function<Problems, String> text)
      throws CaseFileException {
    Problems problems = new Problems(file.toString());
    Optional<CaseFile> read = Optional.empty();
    try {
      read = read(file, text.apply(problems), problems);
    } catch (Problems.Stop stopped) {
      // What made it stop has been noted.
    } catch (CircuitException | SurveyException broken) {
      problems.error(Place.startOf(file.toString()), broken);
    }
    if (!problems.errors().isEmpty()) {
      throw new CaseFileException(problems(problems.errors()));
    }
    return read.orElseThrow();
  }

  private static Optional<CaseFile> read(Path file, String text, Problems problems) {
    Place start = Place.startOf(file.toString());
    Fields fields = fields(file, text, problems);
    Run run = new CircuitReader(fields, start, problems).read();
    Survey survey = new SurveyReader(fields, run, file, problems).read();
    Assumptions assumptions =
        fields
            .mapping("assume")
            .map(new AssumptionReader(run.nominalVolts(), problems)::read)
            .orElse(Assumptions.defaults());
    Circumstances circumstances =
        new CircumstancesReader(fields, problems)
            .read(
                survey.meters().stream().map(Meter::name).toList(),
                survey.tests().stream().map(Test::name).toList());
    String title = fields.scalar("title").map(Scalar::text).orElseGet(() -> nameOf(file));
    return run.circuit()
        .map(
            circuit ->
                new CaseFile(
                    Shown.of(title.replaceAll("[\\n\\r\\t]+", " ")),
                    circuit,
                    run.unknown(),
                    survey,
                    assumptions,
                    problems(problems.warnings()),
                    run.taken().stream().map(CaseFileReader::taken).toList(),
                    problems.opened(),
                    circumstances));
  }

  private static CaseFile.Taken taken(Unsaid unsaid) {
    return new CaseFile.Taken(unsaid.key(), unsaid.value(), unsaid.because());
  }

  private static Fields fields(Path file, String text, Problems problems) {
    Node root = YamlTree.of(file.toString(), text, problems);
    if (root instanceof Mapping mapping) {
      return new Fields(mapping, Keys.CASE, problems);
    }
    throw problems.fatal(
        root.place(),
        "Case must hold keys with values, not " + root.what() + ".",
        "this is not the file that was meant.");
  }

  private static String nameOf(Path file) {
    String name = String.valueOf(file.getFileName());
    int dot = name.lastIndexOf('.');
    return dot > 0 ? name.substring(0, dot) : name;
  }

  private static List<Problem> problems(List<Problems.Note> notes) {
    return notes.stream()
        .map(
            note ->
                new Problem(
                    note.place().file(),
                    note.place().line(),
                    note.place().column(),
                    note.message()))
        .toList();
  }
}
