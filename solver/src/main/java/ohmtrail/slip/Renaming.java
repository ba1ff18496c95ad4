package ohmtrail.slip;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.UnaryOperator;
import ohmtrail.circuit.Circuit;
import ohmtrail.circuit.Joint;
import ohmtrail.circuit.Section;
import ohmtrail.locate.Diagnosis;
import ohmtrail.locate.JointBelief;
import ohmtrail.locate.OhmsInterval;
import ohmtrail.locate.Posterior;
import ohmtrail.locate.Probabilities;
import ohmtrail.locate.RankedBox;
import ohmtrail.locate.Suspect;
import ohmtrail.problem.Slip;
import ohmtrail.reference.Assumptions;

/**
 * Names joints by the boxes that stand at their place in the run once two neighbours are exchanged.
 * How often a joint goes bad is a matter of its kind, which goes with the name of its box.
 */
final class Renaming {
  private final Supposition supposition;
  private final Map<String, Joint> renamed = new HashMap<>();
  private final Map<String, Double> weights = new HashMap<>();

  private Renaming(Supposition supposition) {
    this.supposition = supposition;
  }

  /** Every name as it is. */
  static Renaming none(Supposition supposition) {
    return new Renaming(supposition);
  }

  /**
   * Under an exchange.
   *
   * @param stated the circuit as it is stated
   * @param exchange of two neighbours of it
   */
  static Renaming of(Circuit stated, Supposition exchange) {
    Renaming names = new Renaming(exchange);
    names.exchange(stated, exchange);
    return names;
  }

  private void exchange(Circuit stated, Supposition exchange) {
    Circuit circuit = exchange.problem().circuit();
    Slip.BoxesExchanged pair = (Slip.BoxesExchanged) exchange.slip();
    Assumptions assumptions = exchange.problem().assumptions();
    Map<List<Object>, Section> sections = new HashMap<>();
    circuit.sections().forEach(each -> sections.put(key(each, name -> name), each));
    for (Section each : stated.sections()) {
      Section there = sections.get(key(each, pair::inPlaceOf));
      if (there != null) {
        renamed.put(each.near().id(), there.near());
        renamed.put(each.far().id(), there.far());
      }
    }
    for (Joint joint : stated.joints()) {
      Joint there =
          renamed.computeIfAbsent(
              joint.id(), id -> device(circuit, joint, pair.inPlaceOf(joint.box())));
      weights.put(joint.id(), there.weight(assumptions) / joint.weight(assumptions));
    }
  }

  private static List<Object> key(Section section, UnaryOperator<String> inPlaceOf) {
    return List.of(
        inPlaceOf.apply(section.cable().from()),
        inPlaceOf.apply(section.cable().to()),
        section.conductor());
  }

  /** A joint of the device at that box: of the same role where it has one. */
  private static Joint device(Circuit circuit, Joint joint, String box) {
    return circuit.jointsIn(box).stream()
        .filter(each -> each.conductor() == joint.conductor())
        .min(Comparator.comparingInt(each -> each.role() == joint.role() ? 0 : 1))
        .orElse(joint);
  }

  /**
   * An answer under those names.
   *
   * @param posterior as stated
   * @param factors by which the readings are likelier with each suspect bad, and, without a
   *     suspect, with nothing bad
   * @param otherwise the same of all else
   * @param further joints of the stated circuit in pairs that share a cable and conductor, with
   *     what each weighs where all that is believed as stated weighs one
   */
  Located located(
      Posterior posterior,
      Map<Optional<Suspect>, Double> factors,
      double otherwise,
      List<JointBelief> further) {
    Diagnosis stated = posterior.diagnosis();
    double sound = factors.getOrDefault(Optional.<Suspect>empty(), otherwise);
    Map<String, Double> ofJoints = new HashMap<>();
    double followed = stated.healthyProbability();
    double total = stated.healthyProbability() * sound;
    for (Suspect suspect : stated.suspects()) {
      double factor = factors.getOrDefault(Optional.of(suspect), otherwise);
      for (Joint joint : suspect.joints()) {
        double weighted = factor * weights.getOrDefault(joint.id(), 1.0);
        ofJoints.put(joint.id(), weighted);
        followed += suspect.probabilityOf(joint.id());
        total += suspect.probabilityOf(joint.id()) * weighted;
      }
    }
    total += Math.max(0, 1 - followed) * otherwise;
    total += further.stream().mapToDouble(JointBelief::probability).sum();
    double scale = 1 / total;
    ofJoints.replaceAll((id, factor) -> factor * scale);
    double rest = otherwise * scale;
    List<Suspect> suspects = new ArrayList<>();
    for (int pair = 0; pair + 1 < further.size(); pair += 2) {
      suspects.add(together(further.get(pair), further.get(pair + 1), scale));
    }
    stated.suspects().forEach(each -> suspects.add(renamed(each, ofJoints)));
    List<JointBelief> joints = new ArrayList<>();
    further.forEach(each -> joints.add(renamed(each, scale)));
    for (JointBelief each : posterior.joints()) {
      joints.add(renamed(each, ofJoints.getOrDefault(each.joint().id(), rest)));
    }
    Diagnosis diagnosis =
        new Diagnosis(
            stated.verdict(),
            new Probabilities(
                stated.healthyProbability() * sound * scale,
                stated.unexplainedProbability() * rest,
                stated.severalProbability() * rest,
                stated.unstableProbability() * rest),
            boxes(stated, suspects, rest),
            suspects,
            stated.fit(),
            stated.assumptions());
    return new Located(
        supposition,
        new Posterior(
            diagnosis,
            posterior.healthyProbability() * sound * scale,
            joints,
            Optional.empty(),
            posterior.logMarginalLikelihood() + Math.log(total)),
        false);
  }

  private JointBelief renamed(JointBelief belief, double factor) {
    return new JointBelief(of(belief.joint()), factor * belief.probability(), belief.ohms());
  }

  private Suspect together(JointBelief near, JointBelief far, double scale) {
    double sum = scale * (near.probability() + far.probability());
    OptionalDouble ohms = OptionalDouble.of(near.ohms().get(0).ohms());
    return new Suspect(
        List.of(of(near.joint()), of(far.joint())),
        List.of(scale * near.probability(), scale * far.probability()),
        sum,
        new OhmsInterval(ohms, ohms, ohms, OhmsInterval.USUAL_COVERAGE),
        1);
  }

  /** The joint at the place of one of the stated circuit. */
  Joint of(Joint joint) {
    return renamed.getOrDefault(joint.id(), joint);
  }

  private Suspect renamed(Suspect suspect, Map<String, Double> factors) {
    List<Joint> joints = suspect.joints().stream().map(this::of).toList();
    List<Double> probabilities =
        suspect.joints().stream()
            .map(joint -> suspect.probabilityOf(joint.id()) * factors.getOrDefault(joint.id(), 0.0))
            .toList();
    double sum = probabilities.stream().mapToDouble(Double::doubleValue).sum();
    return new Suspect(joints, probabilities, sum, suspect.ohms(), suspect.spread());
  }

  /** What a box has beyond its suspects, as one of several, it keeps. */
  private static List<RankedBox> boxes(Diagnosis stated, List<Suspect> suspects, double rest) {
    Map<String, Double> sums = new LinkedHashMap<>();
    stated.boxes().forEach(box -> sums.put(box.box(), box.probability() * rest));
    stated.suspects().forEach(each -> add(each, -rest, sums));
    sums.replaceAll((box, left) -> Math.max(0, left));
    suspects.forEach(each -> add(each, 1, sums));
    return sums.entrySet().stream()
        .map(entry -> new RankedBox(entry.getKey(), entry.getValue()))
        .toList();
  }

  private static void add(Suspect suspect, double factor, Map<String, Double> sums) {
    for (int j = 0; j < suspect.joints().size(); j++) {
      sums.merge(
          suspect.joints().get(j).box(), factor * suspect.jointProbabilities().get(j), Double::sum);
    }
  }
}
