package ohmtrail.practice.search;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import java.util.stream.Collectors;
import ohmtrail.advise.Choice;
import ohmtrail.advise.Situation;
import ohmtrail.circuit.Box;
import ohmtrail.circuit.Cable;
import ohmtrail.circuit.Circuit;
import ohmtrail.predict.Predictor;
import ohmtrail.reference.Assumptions;
import ohmtrail.survey.LoadInUse;
import ohmtrail.survey.ProbePoints;
import ohmtrail.survey.Reading;
import ohmtrail.survey.Survey;
import ohmtrail.survey.Test;
import ohmtrail.survey.load.Load;

/**
 * Half-split probing, as the trade teaches it (common practice, no source): a reading with nothing
 * on and one with a heater, both at the receptacle in the middle of what is left. Where the voltage
 * falls by more than the copper explains, the fault lies on the way there or in that receptacle;
 * else it lies elsewhere. When no reading divides what is left, its boxes are opened in a random
 * order; after these the rest, the nearest first.
 *
 * <p>What the copper explains is worked out from the stated lengths, and a receptacle that was
 * passed but not loaded stays in question; both are more than most do.
 */
public final class HalfSplit implements Searcher {
  /**
   * More than so many volts beyond what the copper drops is a fault (common practice, no source).
   */
  private static final double SUSPICIOUS_VOLTS = 2;

  /** Joints of a cable, at its two ends, and of a device: hot and neutral. */
  private static final int CABLE = 4;

  private static final int DEVICE = 2;

  private final Circuit circuit;
  private final Assumptions assumptions;
  private final Random random;
  private final Set<Part> left = new LinkedHashSet<>();
  private final List<String> toOpen = new ArrayList<>();
  private int testsSeen;

  /**
   * Starts.
   *
   * @param circuit the circuit
   * @param assumptions for what a sound circuit shows
   * @param seed decides which of two boxes is opened first
   */
  public HalfSplit(Circuit circuit, Assumptions assumptions, long seed) {
    this.circuit = circuit;
    this.assumptions = assumptions;
    this.random = new Random(seed);
    circuit.cables().forEach(cable -> left.add(new Part(List.of(cable.from(), cable.to()), CABLE)));
    circuit.boxes().stream()
        .filter(Box::hasReceptacle)
        .forEach(box -> left.add(new Part(List.of(box.name()), DEVICE)));
  }

  /**
   * What can be at fault: a cable with its joints, or a device with its contacts.
   *
   * @param boxes the boxes that would show it, the one nearer to the panel first
   * @param weight joints in it
   */
  private record Part(List<String> boxes, int weight) {}

  @Override
  public Choice next(Survey survey, Situation situation) {
    if (survey.tests().size() > testsSeen) {
      conclude(survey);
      testsSeen = survey.tests().size();
    }
    Optional<String> middle = middle();
    if (middle.isPresent()) {
      return visit(middle.get(), survey);
    }
    if (toOpen.isEmpty()) {
      planOpening();
    }
    return toOpen.stream()
        .filter(box -> !survey.lookedSound().contains(box))
        .<Choice>map(Choice.Open::new)
        .findFirst()
        .orElseGet(() -> new Choice.Stop(Choice.Stop.Reason.HEALTHY));
  }

  /** The receptacle whose way from the panel holds half of what is left. */
  private Optional<String> middle() {
    int all = weight(left);
    return circuit.boxes().stream()
        .filter(Box::hasReceptacle)
        .map(Box::name)
        .filter(box -> weight(onTheWay(box)) > 0 && weight(onTheWay(box)) < all)
        .min(Comparator.comparingDouble(box -> Math.abs(weight(onTheWay(box)) - all / 2.0)));
  }

  private static int weight(Set<Part> parts) {
    return parts.stream().mapToInt(Part::weight).sum();
  }

  /** What is left and carries the current of a heater at a box. */
  private Set<Part> onTheWay(String box) {
    Set<Part> way = new LinkedHashSet<>();
    for (Cable cable : circuit.pathTo(box)) {
      way.add(new Part(List.of(cable.from(), cable.to()), CABLE));
    }
    way.add(new Part(List.of(box), DEVICE));
    way.retainAll(left);
    return way;
  }

  private Choice visit(String box, Survey survey) {
    ProbePoints mains = ProbePoints.usual(circuit, box);
    List<Reading> reading = List.of(new Reading(box, mains, survey.meters().get(0).name(), 0));
    Load load = survey.loads().get(0);
    return new Choice.Read(
        List.of(
            new Test("idle at " + box, List.of(), reading),
            new Test(
                load.name() + " at " + box, List.of(new LoadInUse(load.name(), box)), reading)));
  }

  private void conclude(Survey survey) {
    int count = survey.tests().size();
    List<Test> pair = survey.tests().subList(count - 2, count);
    Survey two = survey.withTests(pair);
    List<Double> sound = new Predictor(circuit, two, assumptions).readings(List.of());
    double falls = pair.get(0).readings().get(0).value() - pair.get(1).readings().get(0).value();
    String box = pair.get(0).readings().get(0).box();
    Set<Part> way = onTheWay(box);
    if (falls > sound.get(0) - sound.get(1) + SUSPICIOUS_VOLTS) {
      left.retainAll(way);
    } else {
      left.removeAll(way);
    }
  }

  private void planOpening() {
    Set<String> ends = new LinkedHashSet<>();
    left.forEach(part -> ends.addAll(part.boxes()));
    List<String> first = new ArrayList<>(ends);
    Collections.shuffle(first, random);
    toOpen.addAll(first);
    circuit.boxes().stream()
        .map(Box::name)
        .filter(box -> !toOpen.contains(box))
        .sorted(Comparator.comparingInt(box -> distance(box, first.get(0))))
        .forEach(toOpen::add);
  }

  /** Cables between two boxes. */
  private int distance(String one, String other) {
    Set<Cable> ways = new LinkedHashSet<>(circuit.pathTo(one));
    Set<Cable> otherWay = Set.copyOf(circuit.pathTo(other));
    Set<Cable> shared = ways.stream().filter(otherWay::contains).collect(Collectors.toSet());
    return ways.size() + otherWay.size() - 2 * shared.size();
  }
}
