package ohmtrail.cli.casefile;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import ohmtrail.circuit.Circuit;
import ohmtrail.cli.casefile.circumstances.Circumstances;
import ohmtrail.cli.casefile.circumstances.Photograph;
import ohmtrail.cli.casefile.run.BareOutlet;
import ohmtrail.map.known.MapProblem;
import ohmtrail.map.known.UnknownRun;
import ohmtrail.reference.Assumptions;
import ohmtrail.survey.Survey;

/**
 * What a case file says.
 *
 * @param title what the case is called; the file's name where the file gives no title
 * @param circuit the circuit as wired; where it is not known what feeds what, the panel stands for
 *     every feeder that nobody knows
 * @param unknown what is known of the run; empty where all of it is
 * @param survey the meters, loads and tests; fits the circuit
 * @param assumptions the assumptions, those of the file in place of the usual ones
 * @param warnings what is odd but can be worked with, in the order of the file
 * @param taken what the file does not say and was taken as usual
 * @param files what it was read from: the case file, the table beside it
 * @param circumstances who measured, when, where and with what
 */
public record CaseFile(
    String title,
    Circuit circuit,
    Optional<UnknownRun> unknown,
    Survey survey,
    Assumptions assumptions,
    List<Problem> warnings,
    List<Taken> taken,
    List<Path> files,
    Circumstances circumstances) {

  /**
   * Something that the file does not say and that was taken as usual.
   *
   * @param key the key that would say it
   * @param value what was taken, as the key would say it
   * @param because why, in half a sentence
   */
  public record Taken(String key, String value, String because) {}

  /** A case that says everything. */
  public CaseFile(
      String title,
      Circuit circuit,
      Survey survey,
      Assumptions assumptions,
      List<Problem> warnings) {
    this(
        title,
        circuit,
        Optional.empty(),
        survey,
        assumptions,
        warnings,
        List.of(),
        List.of(),
        Circumstances.UNSAID);
  }

  /** The same circuit with another survey. */
  public CaseFile with(Survey changed) {
    return new CaseFile(
        title, circuit, unknown, changed, assumptions, warnings, taken, files, circumstances);
  }

  /** The same with other circumstances. */
  public CaseFile with(Circumstances changed) {
    return new CaseFile(
        title, circuit, unknown, survey, assumptions, warnings, taken, files, changed);
  }

  /** Copies the lists. */
  public CaseFile {
    warnings = List.copyOf(warnings);
    taken = List.copyOf(taken);
    files = List.copyOf(files);
  }

  /** What is to be located: circuit, survey and assumptions. */
  public ohmtrail.problem.Problem problem() {
    return new ohmtrail.problem.Problem(circuit, survey, assumptions);
  }

  /** What is to be mapped; empty where it is known what feeds every box. */
  public Optional<MapProblem> mapProblem() {
    return unknown.map(run -> new MapProblem(run, survey, assumptions));
  }

  /**
   * That a photograph is not what it must be.
   *
   * @param rule what it must be: the rest of a sentence
   */
  public Problem problemAt(Photograph photograph, String rule) {
    return new Problem(
        photograph.place().file(),
        photograph.place().line(),
        photograph.place().column(),
        "Photograph (" + photograph.file() + ") " + rule + ".");
  }

  /** Whether the circuit stands for one outlet whose run nobody knows. */
  public boolean isBareOutlet() {
    return BareOutlet.isOne(circuit);
  }
}
