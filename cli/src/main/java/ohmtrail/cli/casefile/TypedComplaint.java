package ohmtrail.cli.casefile;

import java.util.List;
import java.util.Optional;
import ohmtrail.cli.casefile.survey.ComplaintReader;
import ohmtrail.cli.casefile.text.Node.Scalar;
import ohmtrail.cli.casefile.text.Place;
import ohmtrail.cli.casefile.text.Problems;
import ohmtrail.cli.names.Names;
import ohmtrail.survey.Complaint;
import ohmtrail.survey.load.Load;

/**
 * A complaint typed on one line, in the words that a case file has for it: {@code dims at hall-2
 * with heater at hall-3}.
 *
 * @param complaint what was typed; empty where anything is wrong
 * @param wrong what is wrong, in sentences; empty for a complaint
 */
public record TypedComplaint(Optional<Complaint> complaint, List<String> wrong) {
  private static final String ANSWER = "answer";

  /** Copies the list. */
  public TypedComplaint {
    wrong = List.copyOf(wrong);
  }

  /**
   * Reads it.
   *
   * @param taken the case whose boxes and loads it may name
   * @param line what was typed
   */
  public static TypedComplaint of(CaseFile taken, String line) {
    Problems problems = new Problems(ANSWER);
    Names loads = new Names(taken.survey().loads().stream().map(Load::name).toList());
    List<Complaint> read =
        new ComplaintReader(BoxNames.of(taken.circuit()), loads, problems)
            .read(new Scalar(line.strip(), Place.startOf(ANSWER), true, line.isBlank()));
    return new TypedComplaint(
        read.stream().findFirst(), problems.errors().stream().map(Problems.Note::message).toList());
  }
}
