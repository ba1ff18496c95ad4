package ohmtrail.cli.casefile;

import java.util.List;
import ohmtrail.circuit.Circuit;
import ohmtrail.reference.Assumptions;
import ohmtrail.survey.Survey;

/**
 * What a case file says.
 *
 * @param title what the case is called; the file's name where the file gives no title
 * @param circuit the circuit as wired
 * @param survey the meters, loads and tests; fits the circuit
 * @param assumptions the assumptions, those of the file in place of the usual ones
 * @param warnings what is odd but can be worked with, in the order of the file
 */
public record CaseFile(
    String title, Circuit circuit, Survey survey, Assumptions assumptions, List<Problem> warnings) {

  /** Copies the list. */
  public CaseFile {
    warnings = List.copyOf(warnings);
  }
}
