package ohmtrail.cli.render;

import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import ohmtrail.circuit.ConductorRole;
import ohmtrail.cli.casefile.CaseFile;
import ohmtrail.locate.Diagnosis;
import ohmtrail.locate.Suspect;
import ohmtrail.locate.Verdict;
import ohmtrail.predict.Predictor;
import ohmtrail.survey.Meter;
import ohmtrail.survey.ProbePoints;
import ohmtrail.survey.Reading;
import ohmtrail.survey.Survey;
import ohmtrail.survey.Test;

/**
 * What was found out about an outlet whose run nobody knows: which conductor, how many ohms,
 * whether its voltage is a ghost.
 */
final class OutletFinding {
  /** A voltage that a low-impedance meter pulls below this share is held up by next to nothing. */
  private static final double GHOST_SHARE = 0.1;

  /** Another conductor is named from this probability on. */
  private static final double WORTH_NAMING = 0.1;

  private static final String HIGH = "stand-in of high impedance";
  private static final String LOW = "stand-in of low impedance";

  private final CaseFile caseFile;
  private final Diagnosis diagnosis;
  private final Region region;

  private OutletFinding(CaseFile caseFile, Diagnosis diagnosis) {
    this.caseFile = caseFile;
    this.diagnosis = diagnosis;
    this.region = Region.of(caseFile.circuit().supply());
  }

  /** The finding in a sentence or two; empty where the case is of another kind. */
  static Optional<String> of(CaseFile caseFile, Diagnosis diagnosis) {
    return caseFile.isBareOutlet() && caseFile.survey().readingCount() > 0
        ? new OutletFinding(caseFile, diagnosis).sentence()
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
      case UNEXPLAINED -> Optional.empty();
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
    if (isGhost()) {
      text.append(
          " The voltage that a high-impedance meter shows there is a ghost: it carries nothing.");
    }
    text.append(" Where on the way, these readings cannot say: a map of the run would.");
    return text.toString();
  }

  /** Whether a low-impedance meter pulls down, under the best explanation, what another shows. */
  private boolean isGhost() {
    String box = caseFile.circuit().boxes().get(1).name();
    ProbePoints usual = ProbePoints.usual(caseFile.circuit(), box);
    Survey idle =
        new Survey(
            List.of(Meter.highImpedance(HIGH), Meter.lowImpedance(LOW)),
            List.of(),
            List.of(
                new Test(
                    "idle",
                    List.of(),
                    List.of(new Reading(box, usual, HIGH, 0), new Reading(box, usual, LOW, 0)))));
    List<Double> volts =
        new Predictor(caseFile.circuit(), idle, caseFile.assumptions()).readings(diagnosis.best());
    return diagnosis.verdict() == Verdict.DEGRADED
        && volts.get(0) > 1
        && volts.get(1) < GHOST_SHARE * volts.get(0);
  }
}
