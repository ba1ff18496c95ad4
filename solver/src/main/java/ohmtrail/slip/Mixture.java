package ohmtrail.slip;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import java.util.stream.Stream;
import ohmtrail.circuit.Circuit;
import ohmtrail.circuit.Joint;
import ohmtrail.locate.BestFit;
import ohmtrail.locate.Diagnosis;
import ohmtrail.locate.Explained;
import ohmtrail.locate.FittedParameter;
import ohmtrail.locate.FittedReading;
import ohmtrail.locate.JointBelief;
import ohmtrail.locate.Posterior;
import ohmtrail.locate.Probabilities;
import ohmtrail.locate.RankedBox;
import ohmtrail.locate.SlipBelief;
import ohmtrail.locate.Support;
import ohmtrail.locate.Suspect;
import ohmtrail.locate.Verdict;
import ohmtrail.locate.evidence.LogSpace;
import ohmtrail.locate.hypothesis.OhmsPoint;
import ohmtrail.predict.Degradation;
import ohmtrail.predict.Parameter;
import ohmtrail.predict.Parameters;
import ohmtrail.problem.Problem;
import ohmtrail.problem.Slip;
import ohmtrail.reference.Assumption;
import ohmtrail.survey.Reading;

/**
 * The answers to a problem as stated and under slips as one: probabilities are the sums of those
 * under each, by its weight. What is one explanation and not a probability (the fit of the
 * readings, the parameters, the ohms) is that of the heaviest. Joints of a circuit whose order is
 * another one have the names of the stated one.
 */
final class Mixture {
  private static final double SHOWN = 0.01;
  private static final double ALMOST_EQUAL = 1e6;
  private static final double MORE_THAN_NOT = 0.5;

  private final Problem stated;
  private final List<Located> located;
  private final Map<Located, Double> weights = new LinkedHashMap<>();
  private final double logTotal;

  /**
   * Weighs them.
   *
   * @param stated the problem as stated
   * @param all the problem as stated and under slips, located
   */
  Mixture(Problem stated, List<Located> all) {
    this.stated = stated;
    this.located =
        all.stream().sorted(Comparator.comparingDouble(Located::logWeight).reversed()).toList();
    double total = Double.NEGATIVE_INFINITY;
    for (Located each : located) {
      total = LogSpace.sum(total, each.logWeight());
    }
    this.logTotal = total;
    located.forEach(each -> weights.put(each, Math.exp(each.logWeight() - logTotal)));
  }

  Posterior posterior() {
    double healthy =
        weights.entrySet().stream()
            .mapToDouble(each -> each.getValue() * each.getKey().posterior().healthyProbability())
            .sum();
    return new Posterior(diagnosis(), healthy, joints(), several(), logTotal, wired());
  }

  /** Where the likeliest has the boxes in another order, more probably than not. */
  private Optional<Circuit> wired() {
    Supposition leading = leader().supposition();
    boolean isReordered =
        leading.slips().stream()
            .anyMatch(
                slip -> slip instanceof Slip.BoxesExchanged || slip instanceof Slip.BoxElsewhere);
    return isReordered && weights.getOrDefault(leader(), 0.0) > MORE_THAN_NOT
        ? Optional.of(leading.problem().circuit())
        : Optional.empty();
  }

  /** The weight of each; they sum to one. */
  Map<Located, Double> weights() {
    return Collections.unmodifiableMap(weights);
  }

  private Located leader() {
    return located.get(0);
  }

  private double mean(ToDoubleFunction<Diagnosis> figure) {
    return located.stream()
        .mapToDouble(
            each ->
                weights.getOrDefault(each, 0.0)
                    * figure.applyAsDouble(each.posterior().diagnosis()))
        .sum();
  }

  private Diagnosis diagnosis() {
    Diagnosis leading = leader().posterior().diagnosis();
    double healthy = mean(Diagnosis::healthyProbability);
    double unexplained = mean(Diagnosis::unexplainedProbability);
    return new Diagnosis(
        verdict(healthy, unexplained),
        new Probabilities(
            healthy,
            unexplained,
            mean(Diagnosis::severalProbability),
            mean(Diagnosis::unstableProbability)),
        boxes(),
        suspects(),
        new BestFit(
            readings(leading),
            leading.parameters(),
            leading.best().stream().map(this::asStated).toList(),
            point(leading)),
        assumptions(leading),
        slips(),
        Support.NONE,
        explained());
  }

  /** Only where every reading and every box is as stated can figures be put beside them. */
  private Optional<Explained> explained() {
    Supposition leading = leader().supposition();
    Diagnosis diagnosis = leader().posterior().diagnosis();
    boolean isAlike =
        leading.problem().circuit().equals(stated.circuit())
            && readings(leading.problem()).equals(readings(stated));
    return isAlike && !leading.slips().isEmpty()
        ? Optional.of(new Explained(leading.problem(), diagnosis.best(), diagnosis.bestPoint()))
        : Optional.empty();
  }

  private static List<Reading> readings(Problem problem) {
    return problem.survey().tests().stream().flatMap(test -> test.readings().stream()).toList();
  }

  private static Verdict verdict(double healthy, double unexplained) {
    if (unexplained >= 0.5) {
      return Verdict.UNEXPLAINED;
    }
    return healthy >= 1 - healthy - unexplained ? Verdict.HEALTHY : Verdict.DEGRADED;
  }

  private List<RankedBox> boxes() {
    Map<String, Double> sums = new LinkedHashMap<>();
    stated.circuit().boxes().forEach(box -> sums.put(box.name(), 0.0));
    weights.forEach(
        (each, weight) ->
            each.posterior()
                .diagnosis()
                .boxes()
                .forEach(box -> sums.merge(box.box(), weight * box.probability(), Double::sum)));
    return sums.entrySet().stream()
        .map(entry -> new RankedBox(entry.getKey(), entry.getValue()))
        .sorted(
            Comparator.comparingDouble((RankedBox box) -> rounded(box.probability())).reversed())
        .toList();
  }

  /** What differs by less than rounding keeps its order. */
  private static double rounded(double probability) {
    return Math.rint(probability * ALMOST_EQUAL);
  }

  /** The groups of the heaviest, then those of the others for joints that have none yet. */
  private List<Suspect> suspects() {
    Map<String, Double> probabilities = new HashMap<>();
    weights.forEach(
        (each, weight) ->
            each.posterior()
                .diagnosis()
                .suspects()
                .forEach(suspect -> add(suspect, weight, probabilities)));
    List<Suspect> suspects = new ArrayList<>();
    for (Located each : located) {
      for (Suspect suspect : each.posterior().diagnosis().suspects()) {
        regroup(suspect, probabilities).ifPresent(suspects::add);
      }
    }
    suspects.sort(
        Comparator.comparingDouble((Suspect each) -> rounded(each.probability())).reversed());
    return suspects;
  }

  private void add(Suspect suspect, double weight, Map<String, Double> probabilities) {
    for (int j = 0; j < suspect.joints().size(); j++) {
      probabilities.merge(
          asStated(suspect.joints().get(j)).id(),
          weight * suspect.jointProbabilities().get(j),
          Double::sum);
    }
  }

  /** Takes what its joints have in all out of what is left. */
  private Optional<Suspect> regroup(Suspect suspect, Map<String, Double> left) {
    record Share(Joint joint, double probability) {}
    List<Share> shares = new ArrayList<>();
    for (Joint joint : suspect.joints()) {
      Joint named = asStated(joint);
      Double probability = left.remove(named.id());
      if (probability != null) {
        shares.add(new Share(named, probability));
      }
    }
    shares.sort(Comparator.comparingDouble((Share each) -> rounded(each.probability)).reversed());
    return shares.isEmpty()
        ? Optional.empty()
        : Optional.of(
            new Suspect(
                shares.stream().map(Share::joint).toList(),
                shares.stream().map(Share::probability).toList(),
                Math.min(1, shares.stream().mapToDouble(Share::probability).sum()),
                suspect.ohms(),
                suspect.spread()));
  }

  /** The joint of that name, or where a box stands elsewhere one of its conductor in its box. */
  private Joint asStated(Joint joint) {
    Circuit circuit = stated.circuit();
    return circuit
        .joint(joint.id())
        .or(() -> OtherLeg.asAlone(joint, circuit))
        .orElseGet(
            () ->
                circuit.jointsIn(joint.box()).stream()
                    .filter(each -> each.conductor() == joint.conductor())
                    .min(Comparator.comparingInt(each -> each.role() == joint.role() ? 0 : 1))
                    .orElse(joint));
  }

  private Degradation asStated(Degradation degradation) {
    return leader()
        .supposition()
        .problem()
        .circuit()
        .joint(degradation.joint())
        .map(this::asStated)
        .map(joint -> new Degradation(joint.id(), degradation.ohms(), degradation.when()))
        .orElse(degradation);
  }

  /**
   * Every reading in the order of the survey; what a slip accounts for showed nothing, what a slip
   * says was read otherwise is beside what would have been read as stated.
   */
  private List<FittedReading> readings(Diagnosis leading) {
    List<FittedReading> fitted = new ArrayList<>();
    int next = 0;
    List<FittedReading> asStated = statedAnswer().readings();
    boolean isWhole = leading.readings().size() == asStated.size();
    for (int place = 0; place < asStated.size(); place++) {
      FittedReading before = asStated.get(place);
      FittedReading now = next < leading.readings().size() ? leading.readings().get(next) : before;
      boolean isThere = now.test().equals(before.test()) && now.reading().equals(before.reading());
      next += isThere || isWhole ? 1 : 0;
      boolean isLeft = isThere && next <= leading.readings().size();
      double volts = isLeft ? now.fitted() : isWhole ? before.fitted() : 0;
      fitted.add(
          new FittedReading(
              before.test(),
              before.reading(),
              before.healthy(),
              volts,
              isLeft ? now.residual() : before.reading().value() - volts,
              before.sigma(),
              wrong(place, isLeft ? now.wrongProbability() : 0)));
    }
    return fitted;
  }

  /** The probability that a reading is wrong, by a slip of its own or, as in the heaviest, any. */
  private double wrong(int place, double anyhow) {
    double slipped =
        weights.entrySet().stream()
            .filter(
                each ->
                    each.getKey().supposition().slips().stream()
                        .anyMatch(
                            slip -> slip instanceof Slip.OfReading of && of.reading() == place))
            .mapToDouble(Map.Entry::getValue)
            .sum();
    return Math.min(1, slipped + (1 - slipped) * anyhow);
  }

  private Diagnosis statedAnswer() {
    return located.stream()
        .filter(each -> each.supposition().slips().isEmpty())
        .findFirst()
        .orElseThrow()
        .posterior()
        .diagnosis();
  }

  /** u of the parameters of the stated problem; of those that only a slip has there is no use. */
  private List<Double> point(Diagnosis leading) {
    Map<Parameter, Double> pulls = new HashMap<>();
    for (FittedParameter fitted : leading.parameters()) {
      pulls.put(fitted.parameter(), fitted.pull());
    }
    return Parameters.of(stated.circuit(), stated.survey(), stated.assumptions()).all().stream()
        .map(parameter -> pulls.getOrDefault(parameter, 0.0))
        .toList();
  }

  private List<Assumption> assumptions(Diagnosis leading) {
    return Stream.of(Assumption.values())
        .filter(each -> each.isAboutSlips() || leading.assumptions().contains(each))
        .toList();
  }

  private List<SlipBelief> slips() {
    Map<String, SlipBelief> byKind = new LinkedHashMap<>();
    weights.forEach(
        (each, weight) ->
            each.supposition()
                .slips()
                .forEach(
                    slip ->
                        byKind.merge(
                            key(slip),
                            new SlipBelief(slip, weight, weight),
                            (heavier, other) ->
                                new SlipBelief(
                                    heavier.slip(),
                                    heavier.probability(),
                                    heavier.ofItsKind() + other.ofItsKind()))));
    return byKind.values().stream()
        .filter(each -> each.ofItsKind() > SHOWN)
        .sorted(Comparator.comparingDouble(SlipBelief::ofItsKind).reversed())
        .toList();
  }

  private static String key(Slip slip) {
    if (slip instanceof Slip.LoadDidNotDraw load) {
      return slip.kind() + " " + load.load();
    }
    if (slip instanceof Slip.OfReading of) {
      return slip.kind() + " " + of.reading();
    }
    return slip instanceof Slip.LoadDrewLess load ? slip.kind() + " " + load.load() : slip.kind();
  }

  private List<JointBelief> joints() {
    Map<String, JointBelief> sums = new LinkedHashMap<>();
    stated
        .circuit()
        .joints()
        .forEach(joint -> sums.put(joint.id(), new JointBelief(joint, 0, List.of())));
    weights.forEach(
        (each, weight) ->
            each.posterior()
                .joints()
                .forEach(
                    belief ->
                        sums.merge(
                            asStated(belief.joint()).id(),
                            new JointBelief(
                                asStated(belief.joint()),
                                weight * belief.probability(),
                                belief.ohms()),
                            Mixture::joined)));
    return sums.values().stream().filter(each -> each.probability() > 0).toList();
  }

  private static JointBelief joined(JointBelief one, JointBelief other) {
    double sum = one.probability() + other.probability();
    List<OhmsPoint> ohms = new ArrayList<>();
    Stream.of(one, other)
        .filter(each -> each.probability() > 0)
        .forEach(
            each ->
                each.ohms()
                    .forEach(
                        point ->
                            ohms.add(
                                new OhmsPoint(
                                    point.ohms(),
                                    point.share() * each.probability() / sum,
                                    point.logOhmsSigma()))));
    return new JointBelief(other.joint(), sum, ohms);
  }

  /** The most probable set; those of a slip have the names of the stated circuit. */
  private Optional<Posterior.Several> several() {
    Optional<Posterior.Several> best = Optional.empty();
    for (Located each : located) {
      double weight = weights.getOrDefault(each, 0.0);
      Optional<Posterior.Several> scaled =
          each.posterior()
              .several()
              .filter(
                  several ->
                      several.degradations().stream()
                          .allMatch(it -> stated.circuit().joint(it.joint()).isPresent()))
              .map(
                  several ->
                      new Posterior.Several(
                          several.degradations(),
                          weight * several.probability(),
                          several.places()));
      if (scaled.isPresent()
          && (best.isEmpty() || scaled.get().probability() > best.get().probability())) {
        best = scaled;
      }
    }
    return best;
  }
}
