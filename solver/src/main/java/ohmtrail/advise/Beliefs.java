package ohmtrail.advise;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import ohmtrail.circuit.Box;
import ohmtrail.circuit.Circuit;
import ohmtrail.circuit.ConductorRole;
import ohmtrail.circuit.Joint;
import ohmtrail.circuit.Section;
import ohmtrail.locate.JointBelief;
import ohmtrail.locate.Posterior;
import ohmtrail.locate.hypothesis.OhmsPoint;
import ohmtrail.predict.Degradation;
import ohmtrail.survey.Finding;

/**
 * Every hypothesis that further readings are planned on. Immutable.
 *
 * @param circuit the circuit
 * @param all the hypotheses; their probabilities sum to one
 */
record Beliefs(Circuit circuit, List<Belief> all) {
  /** Less probable stretches are left out of planning. */
  private static final double LEAST = 5e-4;

  /** The same joint for any reading taken at the receptacles. */
  private record Place(String where, ConductorRole conductor) {}

  Beliefs {
    all = List.copyOf(all);
  }

  /**
   * Draws hypotheses together that no reading tells apart.
   *
   * @param openBox the box where each joint can be read across; empty where none is open
   */
  static Beliefs of(Circuit circuit, Posterior posterior, Optional<String> openBox) {
    Beliefs whole = whole(circuit, posterior, openBox);
    return new Beliefs(circuit, believable(whole.all())).summingToOne();
  }

  /**
   * Draws hypotheses together that no reading tells apart, and leaves none out.
   *
   * @param openBox the box where each joint can be read across; empty where none is open
   */
  static Beliefs whole(Circuit circuit, Posterior posterior, Optional<String> openBox) {
    Map<String, Place> places = places(circuit);
    openBox.stream()
        .flatMap(box -> circuit.jointsIn(box).stream())
        .forEach(joint -> places.put(joint.id(), new Place(joint.id(), joint.conductor())));
    Map<Place, List<JointBelief>> groups = new LinkedHashMap<>();
    for (JointBelief belief : posterior.joints()) {
      if (circuit.joint(belief.joint().id()).isEmpty()) {
        // Of a run in another order: nothing can be forecast of it on the one that is stated.
        continue;
      }
      Place place = places.get(belief.joint().id());
      groups
          .computeIfAbsent(
              place == null ? new Place(belief.joint().id(), belief.joint().conductor()) : place,
              key -> new ArrayList<>())
          .add(belief);
    }
    List<Belief> all = new ArrayList<>();
    all.add(new Belief(List.of(), 0, posterior.healthyProbability(), zeros(circuit)));
    groups.values().forEach(group -> addGroup(circuit, group, all));
    posterior
        .several()
        .filter(several -> several.degradations().stream().allMatch(each -> isIn(circuit, each)))
        .ifPresent(several -> all.add(several(circuit, several)));
    return new Beliefs(circuit, all).summingToOne();
  }

  private static boolean isIn(Circuit circuit, Degradation degradation) {
    return circuit.joint(degradation.joint()).isPresent();
  }

  /** The boxes of the circuit in order, and the supply. */
  static List<String> places(Circuit circuit, String supply) {
    return Stream.concat(circuit.boxes().stream().map(Box::name), Stream.of(supply)).toList();
  }

  private static Map<String, Place> places(Circuit circuit) {
    Map<String, Place> places = new LinkedHashMap<>();
    for (Section section : circuit.sections()) {
      String cable = section.cable().from() + "/" + section.cable().to();
      section
          .joints()
          .forEach(joint -> places.put(joint.id(), new Place(cable, section.conductor())));
    }
    for (Box box : circuit.boxes()) {
      for (Joint joint : circuit.deviceJoints(box.name())) {
        places.put(joint.id(), new Place(box.name(), joint.conductor()));
      }
    }
    return places;
  }

  private static List<Double> zeros(Circuit circuit) {
    return places(circuit, Finding.SUPPLY).stream().map(place -> 0.0).toList();
  }

  private static void addGroup(Circuit circuit, List<JointBelief> group, List<Belief> all) {
    JointBelief first =
        group.stream().max(Comparator.comparingDouble(JointBelief::probability)).orElseThrow();
    Map<String, Double> boxes = new LinkedHashMap<>();
    double total = 0;
    for (JointBelief each : group) {
      boxes.merge(Finding.placeOf(each.joint()), each.probability(), Double::sum);
      total += each.probability();
    }
    if (total <= 0) {
      return;
    }
    List<Double> shares = shares(circuit, boxes, total);
    for (OhmsPoint point : first.ohms()) {
      Degradation degradation = new Degradation(first.joint().id(), point.ohms());
      all.add(
          new Belief(List.of(degradation), point.logOhmsSigma(), total * point.share(), shares));
    }
  }

  /** Where the search would end: each place by its part of what the places hold together. */
  private static Belief several(Circuit circuit, Posterior.Several several) {
    double total = several.places().values().stream().mapToDouble(Double::doubleValue).sum();
    return new Belief(
        several.degradations(), 0, several.probability(), shares(circuit, several.places(), total));
  }

  private static List<Double> shares(Circuit circuit, Map<String, Double> boxes, double total) {
    return places(circuit, Finding.SUPPLY).stream()
        .map(place -> boxes.getOrDefault(place, 0.0) / total)
        .toList();
  }

  private static List<Belief> believable(List<Belief> all) {
    double total = all.stream().mapToDouble(Belief::probability).sum();
    return all.stream()
        .filter(each -> each.probability() > LEAST * total || each.isHealthy())
        .toList();
  }

  /**
   * The same, their probabilities scaled to a sum of one; alike where each is too small to be told
   * from nothing.
   */
  Beliefs summingToOne() {
    double sum = all.stream().mapToDouble(Belief::probability).sum();
    return new Beliefs(
        circuit,
        all.stream()
            .map(each -> each.with(sum > 0 ? each.probability() / sum : 1.0 / all.size()))
            .toList());
  }

  /**
   * The same hypotheses in the same order, once a look into a place has shown nothing.
   *
   * @param place among {@link #boxNames()}; not one that is certain to hold the joint
   */
  Beliefs withoutPlace(int place) {
    return new Beliefs(circuit, all.stream().map(each -> each.withoutPlace(place)).toList())
        .summingToOne();
  }

  /** The probability of each place of {@link #boxNames()}. */
  double[] boxMasses() {
    double[] masses = new double[boxNames().size()];
    for (Belief belief : all) {
      for (int b = 0; b < masses.length; b++) {
        masses[b] += belief.probability() * belief.boxes().get(b);
      }
    }
    return masses;
  }

  /** The probability that nothing is degraded. */
  double healthy() {
    return all.stream().filter(Belief::isHealthy).mapToDouble(Belief::probability).sum();
  }

  /** Where a joint may be: the boxes, in the order of the circuit, and the supply. */
  List<String> boxNames() {
    return places(circuit, Finding.SUPPLY);
  }
}
