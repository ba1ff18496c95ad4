package ohmtrail.locate;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Stream;
import ohmtrail.circuit.Joint;
import ohmtrail.locate.evidence.LogSpace;
import ohmtrail.locate.evidence.Observations;
import ohmtrail.locate.fit.InferenceProblem;
import ohmtrail.locate.hypothesis.Explanation;
import ohmtrail.locate.hypothesis.Hypothesis;
import ohmtrail.locate.hypothesis.Hypothesis.OneJoint;
import ohmtrail.locate.hypothesis.Hypothesis.SeveralJoints;
import ohmtrail.locate.hypothesis.OhmsProfile;
import ohmtrail.locate.search.Hypotheses;
import ohmtrail.predict.Parameter;
import ohmtrail.predict.Predictor;
import ohmtrail.problem.Problem;
import ohmtrail.reference.Assumption;
import ohmtrail.survey.Finding;
import ohmtrail.survey.Meter;
import ohmtrail.survey.ReadingError;

/**
 * Says what was found: normalises the hypotheses to probabilities, and sums them over boxes and
 * suspects.
 *
 * @param inference the problem
 * @param hypotheses all that were compared
 * @param logTotal natural logarithm of their sum
 */
record Answer(InferenceProblem inference, Hypotheses hypotheses, double logTotal) {
  /**
   * However ill all hypotheses explain the readings, one does it best: their sum is not taken to be
   * less (numerical; of the order in which they stand nothing changes).
   */
  private static final double LEAST_BELIEVED = 1e-3;

  static Answer of(InferenceProblem inference, Hypotheses hypotheses) {
    return new Answer(inference, hypotheses, hypotheses.logTotal());
  }

  private double probability(double logPosterior) {
    return Math.exp(logPosterior - logTotal);
  }

  private double probability(Hypothesis hypothesis) {
    return probability(hypothesis.logPosterior());
  }

  /**
   * Probability as far as readings are planned on it: what nothing explains leaves the hypotheses
   * at least a little.
   */
  private double believed(Hypothesis hypothesis) {
    double most = hypotheses.logExplained() - Math.log(LEAST_BELIEVED);
    return Math.exp(hypothesis.logPosterior() - Math.min(logTotal, most));
  }

  Posterior posterior() {
    return new Posterior(diagnosis(), believed(hypotheses.sound()), beliefs(), several(), logTotal);
  }

  private Diagnosis diagnosis() {
    double healthy = probability(hypotheses.sound());
    double unexplained = probability(hypotheses.logUnexplained());
    Verdict verdict = verdict(healthy, unexplained);
    Explanation explanation =
        verdict == Verdict.UNEXPLAINED
            ? hypotheses.unexplained().orElseThrow().explanation()
            : hypotheses.explanation();
    return new Diagnosis(
        verdict,
        new Probabilities(
            healthy,
            unexplained,
            probability(hypotheses.logSeveral()),
            probability(hypotheses.single().logUnstable())),
        boxes(),
        suspects(),
        new BestFit(
            fittedReadings(explanation),
            fittedParameters(explanation),
            explanation.degradations(),
            explanation.point()),
        assumptions());
  }

  private static Verdict verdict(double healthy, double unexplained) {
    if (unexplained >= 0.5) {
      return Verdict.UNEXPLAINED;
    }
    return healthy >= 1 - healthy - unexplained ? Verdict.HEALTHY : Verdict.DEGRADED;
  }

  /** Those on looking count where somebody has looked, those on complaints where one was heard. */
  private List<Assumption> assumptions() {
    boolean looked = !inference.problem().survey().findings().isEmpty();
    boolean heard = !inference.problem().survey().complaints().isEmpty();
    return Stream.of(Assumption.values())
        .filter(assumption -> !assumption.isAboutHarm())
        .filter(assumption -> !assumption.isAboutSlips() && !assumption.isAboutMaps())
        .filter(assumption -> !assumption.isAboutLooking() || looked)
        .filter(assumption -> !assumption.isAboutComplaints() || heard)
        .toList();
  }

  /** The joints that are still alive, in the order of the circuit. */
  private List<JointBelief> beliefs() {
    List<JointBelief> beliefs = new ArrayList<>();
    for (OneJoint each : hypotheses.single().joints()) {
      double probability = believed(each);
      Optional<OhmsProfile> profile = each.profile();
      if (probability > inference.settings().answer().forgotten() && profile.isPresent()) {
        beliefs.add(
            new JointBelief(
                each.joint(), probability, profile.get().nodes(), profile.get().curve()));
      }
    }
    return beliefs;
  }

  private Optional<Posterior.Several> several() {
    return hypotheses
        .several()
        .map(
            several ->
                new Posterior.Several(
                    several.fitted().degradations(),
                    believed(several),
                    places(several, Finding::placeOf)));
  }

  private List<Suspect> suspects() {
    SuspectGroups groups = new SuspectGroups(inference);
    if (hypotheses.logSeveral() < hypotheses.single().logPosterior()
        || hypotheses.several().isEmpty()) {
      return groups.ofSingle(hypotheses.single(), logTotal);
    }
    SeveralJoints several = hypotheses.several().get();
    List<Suspect> suspects = new ArrayList<>();
    for (List<OneJoint> alternatives : several.alternatives()) {
      double logShare = Hypothesis.logSum(alternatives) - several.logPosterior() + logTotal;
      suspects.addAll(groups.group(alternatives, logShare));
    }
    suspects.sort(Comparator.comparingDouble(Suspect::probability).reversed());
    return suspects;
  }

  private List<RankedBox> boxes() {
    Map<String, Double> sums = new LinkedHashMap<>();
    inference.problem().circuit().boxes().forEach(box -> sums.put(box.name(), 0.0));
    for (OneJoint each : hypotheses.single().joints()) {
      sums.merge(each.joint().box(), probability(each), Double::sum);
    }
    hypotheses
        .several()
        .ifPresent(
            several ->
                places(several, Joint::box)
                    .forEach(
                        (box, share) ->
                            sums.merge(box, probability(several) * share, Double::sum)));
    return sums.entrySet().stream()
        .map(entry -> new RankedBox(entry.getKey(), entry.getValue()))
        .sorted(
            Comparator.comparingDouble((RankedBox box) -> LogSpace.rounded(box.probability()))
                .reversed())
        .toList();
  }

  /** Probability of each place to hold a degraded joint, given that there are several. */
  private static Map<String, Double> places(
      SeveralJoints several, Function<Joint, String> placeOf) {
    Map<String, Double> spared = new LinkedHashMap<>();
    for (List<OneJoint> alternatives : several.alternatives()) {
      double logSum = Hypothesis.logSum(alternatives);
      Map<String, Double> here = new LinkedHashMap<>();
      alternatives.forEach(
          each ->
              here.merge(
                  placeOf.apply(each.joint()),
                  Math.exp(each.logPosterior() - logSum),
                  Double::sum));
      here.forEach((box, share) -> spared.merge(box, 1 - share, (a, b) -> a * b));
    }
    Map<String, Double> boxes = new LinkedHashMap<>();
    spared.forEach((box, probability) -> boxes.put(box, 1 - probability));
    return boxes;
  }

  private List<FittedReading> fittedReadings(Explanation explanation) {
    Problem problem = inference.problem();
    List<Double> healthy =
        new Predictor(problem.circuit(), problem.survey(), problem.assumptions())
            .readings(List.of());
    Observations observations = inference.observations();
    List<FittedReading> readings = new ArrayList<>();
    for (int r = 0; r < observations.count(); r++) {
      Meter meter = problem.survey().meter(observations.reading(r).meter());
      double fitted = explanation.volts().get(r);
      readings.add(
          new FittedReading(
              observations.test(r),
              observations.reading(r),
              healthy.get(r),
              ReadingError.shown(fitted, meter),
              observations.value(r) - fitted,
              Math.sqrt(observations.variance(r)),
              explanation.outlierProbabilities().get(r)));
    }
    return readings;
  }

  private List<FittedParameter> fittedParameters(Explanation explanation) {
    List<FittedParameter> fitted = new ArrayList<>();
    for (int p = 0; p < inference.parameters().size(); p++) {
      Parameter parameter = inference.parameters().all().get(p);
      double u = explanation.point().get(p);
      fitted.add(new FittedParameter(parameter, parameter.nominal() * parameter.factor(u), u));
    }
    return fitted;
  }
}
