package ohmtrail.cli.render;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import ohmtrail.advise.stop.SupplySide;
import ohmtrail.circuit.Circuit;
import ohmtrail.cli.casefile.CaseFile;
import ohmtrail.locate.Diagnosis;
import ohmtrail.locate.Suspect;
import ohmtrail.locate.Verdict;

/**
 * What comes before everything else: a joint that can start a fire, or a supply that is out of
 * order.
 */
public final class Danger {
  /**
   * From here on a joint is told of first: the lesser of the two published figures of a glowing
   * connection, 5 W at 0.8 A ({@link JointHeat#PUBLISHED_SOURCE}). Watts.
   */
  private static final double WORTH_TELLING_FIRST = 5;

  /** A suspect less likely than this is no reason to switch a circuit off. */
  private static final double LIKELY = 0.2;

  private static final String SUPPLY_FIRST =
      "Leave the main switch off but for readings until the supply has been looked into: no breaker"
          + " of this circuit unloads what lies before the panel.";

  private Danger() {}

  /** The warning; empty where no likely joint can get hot and the supply stands as it should. */
  public static Optional<String> of(CaseFile caseFile, Diagnosis diagnosis) {
    Circuit circuit = caseFile.circuit();
    if (caseFile.survey().readingCount() == 0) {
      return Optional.empty();
    }
    if (SupplySide.unequalLegs(caseFile.problem()).isPresent()) {
      return Optional.of(SUPPLY_FIRST);
    }
    if (diagnosis.verdict() != Verdict.DEGRADED) {
      return Optional.empty();
    }
    List<Suspect> likely =
        diagnosis.suspects().stream().filter(suspect -> suspect.probability() >= LIKELY).toList();
    return likely.stream()
        .filter(JointWords::isSupplySide)
        .findFirst()
        .map(suspect -> beforeThePanel(suspect, circuit))
        .or(() -> inTheRun(likely, circuit));
  }

  private static Optional<String> inTheRun(List<Suspect> likely, Circuit circuit) {
    record Hot(Suspect suspect, JointHeat heat) {}
    return likely.stream()
        .flatMap(
            suspect ->
                JointHeat.worst(suspect, circuit).map(heat -> new Hot(suspect, heat)).stream())
        .filter(hot -> hot.heat().watts() >= WORTH_TELLING_FIRST)
        .max(Comparator.comparingDouble(hot -> hot.heat().watts()))
        .map(
            hot ->
                new WorkWords(circuit).leaveOff(hot.suspect().first().box())
                    + " but for readings: "
                    + hot.heat().words(circuit));
  }

  /** No breaker of the panel unloads such a joint, and none bounds what flows through it. */
  private static String beforeThePanel(Suspect suspect, Circuit circuit) {
    return "Leave the main switch off but for readings: "
        + new JointWords(circuit).suspect(suspect, "")
        + ", "
        + OhmsWords.of(suspect.ohms())
        + ", carries what the whole installation draws. The breaker of this circuit neither unloads"
        + " it nor bounds its heat.";
  }
}
