package ohmtrail.cli.chart;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import ohmtrail.circuit.Circuit;
import ohmtrail.circuit.Joint;
import ohmtrail.locate.Diagnosis;
import ohmtrail.locate.Suspect;
import ohmtrail.locate.Verdict;
import ohmtrail.predict.Degradation;

/**
 * What the chart's lines stand for beside the healthy circuit.
 *
 * @param word for the legend; empty where there is nothing but the healthy circuit
 * @param sentence for the subtitle
 * @param degradations ohms added
 * @param point u of every parameter; empty for everything as stated
 * @param healthyPoint the same for the healthy circuit
 * @param suspects where they may be instead, the most probable first
 * @param wrongProbabilities of the readings in the order of the survey; empty without a diagnosis
 */
record Explanation(
    Optional<String> word,
    String sentence,
    List<Degradation> degradations,
    List<Double> point,
    List<Double> healthyPoint,
    List<Suspicion> suspects,
    List<Double> wrongProbabilities) {
  /** More than three brackets over a picture are read by nobody. */
  /** More boxes than these are counted, not named. */
  private static final int MOST_NAMED = 3;

  private static final int MOST_SUSPECTS = 3;

  /** A suspect less probable than this is left to the tables. */
  private static final double LEAST_PROBABILITY = 0.05;

  /**
   * Joints that the fault may be in.
   *
   * @param label what is said of them
   * @param boxes the boxes they are in
   */
  record Suspicion(String label, List<String> boxes) {}

  static Explanation of(
      Circuit circuit, Optional<Diagnosis> diagnosis, List<Degradation> degradations) {
    if (diagnosis.isPresent() && !degradations.isEmpty()) {
      throw new IllegalArgumentException(
          "A chart must be of a diagnosis or of stated degradations "
              + degradations
              + ", not of both\nMaybe the stated ohms belong to a prediction of their own.");
    }
    return diagnosis
        .map(answer -> fitted(circuit, answer))
        .orElseGet(() -> degradations.isEmpty() ? healthy() : predicted(circuit, degradations));
  }

  private static Explanation healthy() {
    return new Explanation(
        Optional.empty(),
        "What a healthy circuit shows",
        List.of(),
        List.of(),
        List.of(),
        List.of(),
        List.of());
  }

  private static Explanation predicted(Circuit circuit, List<Degradation> degradations) {
    List<Suspicion> stated =
        degradations.stream()
            .map(each -> new Suspicion(added(each), List.of(joint(circuit, each).box())))
            .toList();
    return new Explanation(
        Optional.of("predicted"),
        "Predicted for " + words(circuit, degradations),
        List.copyOf(degradations),
        List.of(),
        List.of(),
        stated,
        List.of());
  }

  private static Explanation fitted(Circuit circuit, Diagnosis diagnosis) {
    List<Double> wrong =
        diagnosis.readings().stream().map(reading -> reading.wrongProbability()).toList();
    return new Explanation(
        word(diagnosis),
        sentence(circuit, diagnosis),
        diagnosis.best(),
        diagnosis.bestPoint(),
        diagnosis.verdict() == Verdict.UNEXPLAINED ? List.of() : diagnosis.bestPoint(),
        diagnosis.verdict() == Verdict.DEGRADED ? suspicions(diagnosis.suspects()) : List.of(),
        wrong);
  }

  private static Optional<String> word(Diagnosis diagnosis) {
    if (diagnosis.verdict() == Verdict.UNEXPLAINED) {
      return Optional.of("closest fit");
    }
    return diagnosis.best().isEmpty() ? Optional.empty() : Optional.of("fitted");
  }

  private static String sentence(Circuit circuit, Diagnosis diagnosis) {
    boolean isHealthy = diagnosis.best().isEmpty();
    String best = isHealthy ? "a healthy circuit" : words(circuit, diagnosis.best());
    return switch (diagnosis.verdict()) {
      case HEALTHY -> "Best explanation: " + best;
      case DEGRADED ->
          isHealthy
              ? "A joint is probably degraded, but no single one is likelier than a healthy circuit"
              : "Best explanation: " + best;
      case UNEXPLAINED ->
          "No explanation fits these readings; the closest, not to be relied on: " + best;
    };
  }

  private static List<Suspicion> suspicions(List<Suspect> suspects) {
    List<Suspicion> kept = new ArrayList<>();
    for (Suspect suspect : suspects) {
      if (kept.size() < MOST_SUSPECTS && suspect.probability() >= LEAST_PROBABILITY) {
        List<String> boxes = suspect.joints().stream().map(Joint::box).distinct().toList();
        String where =
            boxes.size() <= MOST_NAMED
                ? String.join(" or ", boxes)
                : "any of " + boxes.size() + " boxes";
        kept.add(new Suspicion(Figures.percent(suspect.probability()) + " in " + where, boxes));
      }
    }
    return List.copyOf(kept);
  }

  private static String words(Circuit circuit, List<Degradation> degradations) {
    Region region = Region.of(circuit.supply());
    return degradations.stream()
        .map(each -> added(each) + " at " + words(region, joint(circuit, each)))
        .collect(Collectors.joining("; "));
  }

  private static String added(Degradation degradation) {
    return Double.isInfinite(degradation.ohms())
        ? Figures.ohms(degradation.ohms())
        : Figures.ohms(degradation.ohms()) + " added";
  }

  private static String words(Region region, Joint joint) {
    return joint.box() + ", " + region.word(joint.conductor()) + ", " + joint.role().word();
  }

  private static Joint joint(Circuit circuit, Degradation degradation) {
    return circuit
        .joint(degradation.joint())
        .orElseThrow(
            () ->
                new IllegalArgumentException(
                    "Joint (" + degradation.joint() + ") must be one of the circuit's joints"));
  }
}
