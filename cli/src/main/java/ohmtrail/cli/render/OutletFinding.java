package ohmtrail.cli.render;

import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import ohmtrail.circuit.ConductorRole;
import ohmtrail.cli.casefile.CaseFile;
import ohmtrail.cli.render.words.Figures;
import ohmtrail.cli.render.words.OhmsWords;
import ohmtrail.cli.render.words.Region;
import ohmtrail.locate.Diagnosis;
import ohmtrail.locate.Suspect;
import ohmtrail.report.Report;

/**
 * What was found out about an outlet whose run nobody knows: which conductor, how many ohms,
 * whether its voltage is a ghost.
 */
final class OutletFinding {
  /** Another conductor is named from this probability on. */
  private static final double WORTH_NAMING = 0.1;

  private final Report report;
  private final Diagnosis diagnosis;
  private final Region region;

  private OutletFinding(CaseFile caseFile, Report report) {
    this.report = report;
    this.diagnosis = report.diagnosis();
    this.region = Region.of(caseFile.circuit().supply());
  }

  /** The finding in a sentence or two; empty where the case is of another kind. */
  static Optional<String> of(CaseFile caseFile, Report report) {
    return caseFile.isBareOutlet() && caseFile.survey().readingCount() > 0
        ? new OutletFinding(caseFile, report).sentence()
        : Optional.empty();
  }

  private Optional<String> sentence() {
    return switch (diagnosis.verdict()) {
      case HEALTHY ->
          Optional.of(
              "These readings need no fault: the outlet is sound as far as they tell, "
                  + Figures.probability(diagnosis.healthyProbability())
                  + " sure.");
      case DEGRADED -> Optional.of(degraded());
      case UNDECIDED, UNEXPLAINED -> Optional.empty();
    };
  }

  private String degraded() {
    Map<ConductorRole, Double> shares = new EnumMap<>(ConductorRole.class);
    for (Suspect suspect : diagnosis.suspects()) {
      for (int j = 0; j < suspect.joints().size(); j++) {
        shares.merge(
            suspect.joints().get(j).conductor(), suspect.jointProbabilities().get(j), Double::sum);
      }
    }
    List<Map.Entry<ConductorRole, Double>> ranked =
        shares.entrySet().stream()
            .sorted(Map.Entry.comparingByValue(Comparator.reverseOrder()))
            .toList();
    Map.Entry<ConductorRole, Double> first = ranked.get(0);
    Suspect likeliest =
        diagnosis.suspects().stream()
            .filter(suspect -> suspect.joints().get(0).conductor() == first.getKey())
            .findFirst()
            .orElse(diagnosis.suspects().get(0));
    StringBuilder text = new StringBuilder("The ");
    text.append(region.conductor(first.getKey()));
    text.append(" on the way to this outlet is degraded, ");
    text.append(OhmsWords.of(likeliest.ohms()));
    text.append(", ").append(Figures.probability(first.getValue())).append(" sure.");
    ranked.stream()
        .skip(1)
        .filter(entry -> entry.getValue() >= WORTH_NAMING)
        .forEach(
            entry ->
                text.append(" It may be the ")
                    .append(region.conductor(entry.getKey()))
                    .append(": ")
                    .append(Figures.probability(entry.getValue()))
                    .append('.'));
    if (!report.ghosts().isEmpty()) {
      text.append(
          " The voltage that a high-impedance meter shows there is a ghost: it carries nothing.");
    }
    text.append(" Where on the way, these readings cannot say: a map of the run would.");
    return text.toString();
  }
}
