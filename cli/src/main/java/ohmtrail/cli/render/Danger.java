package ohmtrail.cli.render;

import java.util.Optional;
import ohmtrail.circuit.Circuit;
import ohmtrail.cli.casefile.CaseFile;
import ohmtrail.locate.Diagnosis;
import ohmtrail.locate.Verdict;

/** What comes before everything else: a joint that can start a fire. */
public final class Danger {
  /**
   * From here on a joint is told of first: the lesser of the two published figures of a glowing
   * connection, 5 W at 0.8 A ({@link JointHeat#PUBLISHED_SOURCE}). Watts.
   */
  private static final double WORTH_TELLING_FIRST = 5;

  /** A suspect less likely than this is no reason to switch a circuit off. */
  private static final double LIKELY = 0.2;

  private Danger() {}

  /** The warning; empty where no likely joint can get hot. */
  public static Optional<String> of(CaseFile caseFile, Diagnosis diagnosis) {
    Circuit circuit = caseFile.circuit();
    if (diagnosis.verdict() != Verdict.DEGRADED || caseFile.survey().readingCount() == 0) {
      return Optional.empty();
    }
    return diagnosis.suspects().stream()
        .filter(suspect -> suspect.probability() >= LIKELY)
        .flatMap(suspect -> JointHeat.worst(suspect, circuit).stream())
        .filter(heat -> heat.watts() >= WORTH_TELLING_FIRST)
        .max((one, other) -> Double.compare(one.watts(), other.watts()))
        .map(heat -> "Leave this breaker off but for readings: " + heat.words(circuit));
  }
}
