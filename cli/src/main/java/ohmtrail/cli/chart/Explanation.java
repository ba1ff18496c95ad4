package ohmtrail.cli.chart;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import ohmtrail.circuit.Circuit;
import ohmtrail.circuit.Joint;
import ohmtrail.cli.render.words.Figures;
import ohmtrail.cli.render.words.JointWords;
import ohmtrail.locate.Diagnosis;
import ohmtrail.locate.Suspect;
import ohmtrail.locate.Verdict;
import ohmtrail.predict.Degradation;
import ohmtrail.report.Report;

/**
 * What the chart's lines stand for beside the sound circuit.
 *
 * @param word for the legend; empty where there is nothing but the sound circuit
 * @param sentence for the subtitle
 * @param soundness what the sound circuit is, for the notes
 * @param suspects where the fault may be, the most probable first
 * @param wrongProbabilities of the readings in the order of the survey; empty without an answer
 * @param boxesOfJoint per degraded joint the boxes that it may as well lie in, its own among them
 */
record Explanation(
    Optional<String> word,
    String sentence,
    String soundness,
    List<Suspicion> suspects,
    List<Double> wrongProbabilities,
    Map<String, List<String>> boxesOfJoint) {
  /** More boxes than these are counted, not named. */
  private static final int MOST_NAMED = 3;

  /** More than three brackets over a picture are read by nobody. */
  private static final int MOST_SUSPECTS = 3;

  /** A suspect less probable than this is left to the tables. */
  private static final double LEAST_PROBABILITY = 0.05;

  private static final String AS_STATED =
      "Sound: every joint sound, supply, loads and lengths as stated.";

  private static final String AS_FITTED =
      "Sound: every joint sound, supply, loads and lengths as fitted to these readings.";

  /**
   * Joints that the fault may be in.
   *
   * @param label what is said of them
   * @param boxes the boxes they are in
   */
  record Suspicion(String label, List<String> boxes) {}

  /** Ohms that are supposed. */
  static Explanation of(Circuit circuit, List<Degradation> degradations) {
    if (degradations.isEmpty()) {
      return new Explanation(
          Optional.empty(),
          "What a sound circuit shows",
          AS_STATED,
          List.of(),
          List.of(),
          Map.of());
    }
    List<Suspicion> stated =
        degradations.stream()
            .map(each -> new Suspicion(added(each), List.of(joint(circuit, each).box())))
            .toList();
    return new Explanation(
        Optional.of("predicted"),
        "Predicted for "
            + degradations.stream()
                .map(each -> added(each) + " at " + words(circuit, joint(circuit, each)))
                .collect(Collectors.joining("; ")),
        AS_STATED,
        stated,
        List.of(),
        degradations.stream()
            .collect(
                Collectors.toMap(
                    Degradation::joint, each -> List.of(joint(circuit, each).box()), (a, b) -> a)));
  }

  /** An answer. */
  static Explanation of(Report report) {
    Diagnosis diagnosis = report.diagnosis();
    List<Double> wrong =
        diagnosis.readings().stream().map(reading -> reading.wrongProbability()).toList();
    boolean fits = diagnosis.verdict() != Verdict.UNEXPLAINED;
    return new Explanation(
        word(diagnosis),
        sentence(report),
        fits && !diagnosis.readings().isEmpty() ? AS_FITTED : AS_STATED,
        diagnosis.verdict() == Verdict.DEGRADED ? suspicions(diagnosis.suspects()) : List.of(),
        wrong,
        boxesOfJoint(diagnosis));
  }

  private static Map<String, List<String>> boxesOfJoint(Diagnosis diagnosis) {
    Map<String, List<String>> boxes = new HashMap<>();
    for (String joint : diagnosis.bestJoints()) {
      diagnosis
          .suspectOf(joint)
          .ifPresent(
              suspect ->
                  boxes.put(joint, suspect.joints().stream().map(Joint::box).distinct().toList()));
    }
    return boxes;
  }

  private static Optional<String> word(Diagnosis diagnosis) {
    if (diagnosis.verdict() == Verdict.UNEXPLAINED) {
      return Optional.of("closest fit");
    }
    return diagnosis.best().isEmpty() ? Optional.empty() : Optional.of("fitted");
  }

  private static String sentence(Report report) {
    Diagnosis diagnosis = report.diagnosis();
    boolean isSound = diagnosis.best().isEmpty();
    String best = isSound ? "a sound circuit" : words(report);
    return switch (diagnosis.verdict()) {
      case HEALTHY -> "Best explanation: " + best;
      case UNDECIDED -> "The readings decide nothing";
      case DEGRADED ->
          isSound
              ? "A joint is probably bad, but no single one is likelier than a sound circuit"
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
        kept.add(new Suspicion(Figures.probability(suspect.probability()) + " in " + where, boxes));
      }
    }
    return List.copyOf(kept);
  }

  /**
   * Each degraded joint by the suspect that holds it: no joint is named that others are as like.
   */
  private static String words(Report report) {
    Circuit circuit = report.problem().circuit();
    return report.diagnosis().best().stream()
        .map(
            each ->
                added(each)
                    + ", "
                    + report
                        .diagnosis()
                        .suspectOf(each.joint())
                        .map(suspect -> new JointWords(circuit).suspect(suspect, ""))
                        .orElseGet(() -> words(circuit, joint(circuit, each))))
        .collect(Collectors.joining("; "));
  }

  private static String added(Degradation degradation) {
    return Double.isInfinite(degradation.ohms())
        ? "fully open"
        : Figures.ohms(degradation.ohms()) + " added";
  }

  private static String words(Circuit circuit, Joint joint) {
    return new JointWords(circuit).jointAt(joint);
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
