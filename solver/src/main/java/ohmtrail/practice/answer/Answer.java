package ohmtrail.practice.answer;

import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import ohmtrail.circuit.Box;
import ohmtrail.circuit.Circuit;
import ohmtrail.circuit.ConductorRole;
import ohmtrail.circuit.Joint;
import ohmtrail.locate.Diagnosis;
import ohmtrail.locate.FittedReading;
import ohmtrail.locate.RankedBox;
import ohmtrail.locate.SlipBelief;
import ohmtrail.locate.Suspect;
import ohmtrail.locate.Verdict;

/**
 * What a method makes of a case, as far as it is scored.
 *
 * @param order the boxes in the order in which they should be opened; those left out come last
 * @param stated the probability of every box; empty for a method that states none
 * @param suspects the most probable first; empty for a method that names none
 * @param wrongProbabilities of every reading, in the order of the survey; empty for a method that
 *     doubts none
 * @param verdict the verdict, where the method gives one
 * @param degradedJoints how many joints are said to be degraded; empty for a method that counts
 *     none
 * @param soundProbability that nothing is degraded; empty for a method that does not say
 * @param slips what may not be as it is stated, the most probable first; empty for a method that
 *     asks for none
 * @param hangs whether it says that it hangs on one reading
 */
public record Answer(
    List<String> order,
    List<RankedBox> stated,
    List<Suspect> suspects,
    List<Double> wrongProbabilities,
    Optional<Verdict> verdict,
    OptionalInt degradedJoints,
    OptionalDouble soundProbability,
    List<SlipBelief> slips,
    boolean hangs) {
  /** Probabilities that differ by less are the same. */
  private static final double AS_LIKELY = 1e-3;

  /** Copies the lists. */
  public Answer {
    order = List.copyOf(order);
    stated = List.copyOf(stated);
    suspects = List.copyOf(suspects);
    wrongProbabilities = List.copyOf(wrongProbabilities);
    slips = List.copyOf(slips);
  }

  /** One that says nothing of a sound circuit, and asks for no slip. */
  public Answer(
      List<String> order,
      List<RankedBox> stated,
      List<Suspect> suspects,
      List<Double> wrongProbabilities,
      Optional<Verdict> verdict,
      OptionalInt degradedJoints) {
    this(
        order,
        stated,
        suspects,
        wrongProbabilities,
        verdict,
        degradedJoints,
        OptionalDouble.empty(),
        List.of(),
        false);
  }

  /** An order to open boxes in, and nothing else. */
  public static Answer ofOrder(List<String> order) {
    return new Answer(
        order, List.of(), List.of(), List.of(), Optional.empty(), OptionalInt.empty());
  }

  /**
   * The boxes by probability; those as likely as each other in the order in which the supply
   * reaches them.
   */
  public static Answer of(Diagnosis diagnosis, Circuit circuit) {
    return new Answer(
        byProbability(diagnosis.boxes(), circuit),
        diagnosis.boxes(),
        diagnosis.suspects(),
        diagnosis.readings().stream().map(FittedReading::wrongProbability).toList(),
        Optional.of(diagnosis.verdict()),
        OptionalInt.of(diagnosis.degradedJoints()),
        OptionalDouble.of(diagnosis.healthyProbability()),
        diagnosis.slips(),
        diagnosis.support().hangsOnOneReading());
  }

  /** The circuit's boxes, the most probable first; those as likely as each other in its order. */
  public static List<String> byProbability(List<RankedBox> stated, Circuit circuit) {
    Map<String, Double> probabilities = new LinkedHashMap<>();
    circuit.boxes().forEach(box -> probabilities.put(box.name(), 0.0));
    stated.forEach(box -> probabilities.put(box.box(), box.probability()));
    return probabilities.entrySet().stream()
        .sorted(Map.Entry.comparingByValue(Comparator.reverseOrder()))
        .map(Map.Entry::getKey)
        .toList();
  }

  /** The conductor with the most probability on its joints; empty without suspects. */
  public Optional<ConductorRole> conductor() {
    return conductors().entrySet().stream()
        .max(Map.Entry.comparingByValue())
        .map(Map.Entry::getKey);
  }

  /** The probability on the joints of each conductor that a suspect is on. */
  public Map<ConductorRole, Double> conductors() {
    Map<ConductorRole, Double> sums = new LinkedHashMap<>();
    for (Suspect suspect : suspects) {
      for (int i = 0; i < suspect.joints().size(); i++) {
        Joint joint = suspect.joints().get(i);
        sums.merge(joint.conductor(), suspect.jointProbabilities().get(i), Double::sum);
      }
    }
    return sums;
  }

  /** The single most probable joint, over all suspects; empty without any. */
  public Optional<String> joint() {
    Optional<String> joint = Optional.empty();
    double most = 0;
    for (Suspect suspect : suspects) {
      double probability = suspect.jointProbabilities().get(0);
      if (probability > most) {
        most = probability;
        joint = Optional.of(suspect.first().id());
      }
    }
    return joint;
  }

  /** The suspect that a joint belongs to. */
  public Optional<Suspect> suspectOf(String joint) {
    return suspects.stream().filter(suspect -> holds(suspect, joint)).findFirst();
  }

  /** Whether a suspect holds a joint. */
  public static boolean holds(Suspect suspect, String joint) {
    return suspect.joints().stream().anyMatch(each -> each.id().equals(joint));
  }

  /** The first box to open. */
  public String firstBox() {
    return order.get(0);
  }

  /** Whether a box would be opened first, or is as likely as the one that would. */
  public boolean opensFirst(String box) {
    double best = stated.stream().mapToDouble(RankedBox::probability).max().orElse(0);
    boolean isAsLikely =
        stated.stream()
            .anyMatch(each -> each.box().equals(box) && each.probability() > best - AS_LIKELY);
    return isAsLikely || firstBox().equals(box);
  }

  /** How many boxes are opened until the first of these is reached. */
  public int boxesOpened(List<String> sought, Circuit circuit) {
    return places(sought, circuit).min().orElseThrow();
  }

  /** How many boxes are opened until the last of these is reached. */
  public int boxesOpenedForAll(List<String> sought, Circuit circuit) {
    return places(sought, circuit).max().orElseThrow();
  }

  private IntStream places(List<String> sought, Circuit circuit) {
    List<String> opened =
        Stream.concat(order.stream(), circuit.boxes().stream().map(Box::name)).distinct().toList();
    if (sought.isEmpty() || !opened.containsAll(sought)) {
      throw new IllegalArgumentException(
          "Boxes " + sought + " must be among those of the circuit " + opened);
    }
    return sought.stream().mapToInt(box -> opened.indexOf(box) + 1);
  }
}
