package ohmtrail.slip;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import ohmtrail.circuit.Joint;
import ohmtrail.locate.Diagnosis;
import ohmtrail.locate.JointBelief;
import ohmtrail.locate.Posterior;
import ohmtrail.locate.Support;
import ohmtrail.locate.Suspect;
import ohmtrail.locate.Verdict;
import ohmtrail.locate.hypothesis.OhmsPoint;
import ohmtrail.predict.Evaluation;
import ohmtrail.predict.Parameters;
import ohmtrail.predict.SurveyModel;
import ohmtrail.problem.Problem;
import ohmtrail.reference.Assumption;
import ohmtrail.reference.Assumptions;

/**
 * Which readings carry an answer: the posterior without each of them in turn.
 *
 * <p>Without reading r the probability of a hypothesis h is P(h) / p(r | the others, h), scaled.
 * The density of one reading given the others comes from the covariance at the fit, the ohms of a
 * joint one more parameter there; a reading that may be wrong outright has its small flat part. So
 * no hypothesis is fitted anew.
 */
final class LeaveOneOut {
  /**
   * Hypotheses less probable are no rivals: what one reading excludes is not a hundred thousand.
   */
  private static final double LEAST = 1e-6;

  /** Slips of less weight are passed over. */
  private static final double SLIGHT = 0.02;

  /** So that a logarithm can be taken of it. */
  private static final double NOTHING = 1e-200;

  private static final int MOST = 8;
  private static final double EVEN = 0.5;

  /** An answer that is surer than this, and below even odds without a reading, hangs on it. */
  private static final double RATHER_SURE = 0.8;

  private final Problem stated;
  private final Diagnosis diagnosis;
  private final Map<Located, Double> located;
  private final NormalReadings readings;

  /**
   * Prepares.
   *
   * @param stated the problem as stated
   * @param diagnosis the answer
   * @param located what it was averaged over, with the weights; what leaves readings out, or was
   *     not located in full, is passed over
   */
  LeaveOneOut(Problem stated, Diagnosis diagnosis, Map<Located, Double> located) {
    this.stated = stated;
    this.diagnosis = diagnosis;
    this.readings = new NormalReadings(stated);
    this.located = located;
  }

  /** A hypothesis with the density of each reading given all others. */
  private record Hypothesis(Optional<Joint> joint, double probability, List<Double> logOfEach) {}

  Support support() {
    boolean severalLead = diagnosis.severalProbability() > EVEN;
    if (readings.count() == 0 || severalLead || diagnosis.verdict() == Verdict.UNEXPLAINED) {
      return Support.NONE;
    }
    List<Hypothesis> hypotheses = new ArrayList<>();
    located.forEach(
        (each, weight) -> {
          boolean isWhole =
              each.supposition().problem().survey().readingCount() == readings.count();
          if (isWhole && each.isInFull() && weight > SLIGHT) {
            hypotheses.addAll(hypotheses(each, weight));
          }
        });
    if (hypotheses.isEmpty()) {
      return Support.NONE;
    }
    Map<String, Suspect> suspects =
        diagnosis.suspects().stream()
            .flatMap(suspect -> suspect.joints().stream().map(joint -> Map.entry(joint, suspect)))
            .collect(
                Collectors.toMap(
                    entry -> entry.getKey().id(), Map.Entry::getValue, (one, other) -> one));
    Optional<Suspect> answer =
        diagnosis.verdict() == Verdict.HEALTHY
            ? Optional.empty()
            : diagnosis.suspects().stream().findFirst();
    Function<Hypothesis, Boolean> isAnswer =
        hypothesis ->
            hypothesis
                .joint
                .map(joint -> Optional.ofNullable(suspects.get(joint.id())))
                .map(answer::equals)
                .orElse(answer.isEmpty());
    return new Support(
        carrying(hypotheses, isAnswer), excluded(hypotheses, isAnswer, suspects), bayesFactor());
  }

  private List<Support.Carrying> carrying(
      List<Hypothesis> hypotheses, Function<Hypothesis, Boolean> isAnswer) {
    double all = hypotheses.stream().mapToDouble(Hypothesis::probability).sum();
    double stated =
        hypotheses.stream().filter(isAnswer::apply).mapToDouble(Hypothesis::probability).sum();
    if (stated / all < RATHER_SURE) {
      return List.of();
    }
    List<Support.Carrying> carrying = new ArrayList<>();
    for (int r = 0; r < readings.count(); r++) {
      int reading = r;
      double top =
          hypotheses.stream()
              .mapToDouble(each -> Math.log(each.probability) - each.logOfEach.get(reading))
              .max()
              .orElseThrow();
      double total = 0;
      double of = 0;
      double sound = 0;
      for (Hypothesis each : hypotheses) {
        double left = Math.exp(Math.log(each.probability) - each.logOfEach.get(reading) - top);
        total += left;
        of += isAnswer.apply(each) ? left : 0;
        sound += each.joint.isEmpty() ? left : 0;
      }
      if (of / total < EVEN) {
        carrying.add(new Support.Carrying(r, of / total, sound / total));
      }
    }
    carrying.sort(Comparator.comparingDouble(Support.Carrying::without));
    return carrying;
  }

  private List<Support.Excluded> excluded(
      List<Hypothesis> hypotheses,
      Function<Hypothesis, Boolean> isAnswer,
      Map<String, Suspect> suspects) {
    Optional<Hypothesis> answer =
        hypotheses.stream()
            .filter(isAnswer::apply)
            .max(Comparator.comparingDouble(Hypothesis::probability));
    if (answer.isEmpty()) {
      return List.of();
    }
    List<Support.Excluded> excluded = new ArrayList<>();
    List<Suspect> told = new ArrayList<>();
    for (Hypothesis rival : hypotheses) {
      if (rival.joint.isEmpty() || isAnswer.apply(rival)) {
        continue;
      }
      Suspect suspect = suspects.get(rival.joint.get().id());
      if (suspect == null || told.contains(suspect)) {
        continue;
      }
      told.add(suspect);
      int most =
          IntStream.range(0, readings.count())
              .boxed()
              .max(Comparator.comparingDouble(r -> against(answer.get(), rival, r)))
              .orElseThrow();
      excluded.add(
          new Support.Excluded(
              suspect.first(), most, Math.exp(against(answer.get(), rival, most))));
    }
    return excluded;
  }

  private static double against(Hypothesis answer, Hypothesis rival, int reading) {
    return answer.logOfEach.get(reading) - rival.logOfEach.get(reading);
  }

  /** Posterior odds over prior odds of the first two suspects. */
  private OptionalDouble bayesFactor() {
    if (diagnosis.suspects().size() < 2 || diagnosis.verdict() == Verdict.HEALTHY) {
      return OptionalDouble.empty();
    }
    double first = perPrior(diagnosis.suspects().get(0));
    double second = perPrior(diagnosis.suspects().get(1));
    return second > 0 ? OptionalDouble.of(first / second) : OptionalDouble.empty();
  }

  private double perPrior(Suspect suspect) {
    double prior =
        suspect.joints().stream().mapToDouble(joint -> joint.weight(stated.assumptions())).sum();
    return suspect.probability() / prior;
  }

  /** The sound circuit and the likeliest joints of one, linearised at the fit of the likeliest. */
  private List<Hypothesis> hypotheses(Located of, double weight) {
    Problem problem = of.supposition().problem();
    Posterior posterior = of.posterior();
    double[] point = posterior.diagnosis().bestPointArray();
    List<JointBelief> beliefs = leaders(posterior);
    List<Joint> joints = beliefs.stream().map(JointBelief::joint).toList();
    Parameters parameters =
        Parameters.of(problem.circuit(), problem.survey(), problem.assumptions());
    SurveyModel model =
        SurveyModel.of(
            problem.circuit(),
            problem.survey(),
            problem.assumptions(),
            parameters,
            point,
            joints,
            List.of());
    NormalReadings own = new NormalReadings(problem);
    double range = rangeOfLogOhms(problem.assumptions());
    List<Hypothesis> hypotheses = new ArrayList<>();
    Evaluation at = model.buffer();
    model.evaluate(at);
    double sound = weight * Math.max(posterior.diagnosis().healthyProbability(), NOTHING);
    hypotheses.add(new Hypothesis(Optional.empty(), sound, own.logGivenOthers(at, point, range)));
    for (JointBelief belief : beliefs) {
      OhmsPoint ohms =
          belief.ohms().stream().max(Comparator.comparingDouble(OhmsPoint::share)).orElseThrow();
      model.sweep(belief.joint()).evaluate(ohms.ohms(), at);
      hypotheses.add(
          new Hypothesis(
              Optional.of(belief.joint()),
              weight * belief.probability(),
              own.logGivenOthers(at, point, range)));
    }
    return hypotheses;
  }

  /** One joint for each suspect, with the probability of all of them. */
  private static List<JointBelief> leaders(Posterior posterior) {
    Map<String, JointBelief> beliefs = new LinkedHashMap<>();
    posterior.joints().forEach(belief -> beliefs.put(belief.joint().id(), belief));
    return posterior.diagnosis().suspects().stream()
        .filter(suspect -> suspect.probability() > LEAST)
        .limit(MOST)
        .flatMap(
            suspect ->
                Optional.ofNullable(beliefs.get(suspect.first().id())).stream()
                    .map(
                        first ->
                            new JointBelief(first.joint(), suspect.probability(), first.ohms())))
        .filter(belief -> !belief.ohms().isEmpty())
        .toList();
  }

  /** Standard deviation of ln R, spread evenly over all that it may be. */
  static double rangeOfLogOhms(Assumptions assumptions) {
    return Math.log(
            assumptions.value(Assumption.DEGRADED_OHMS_HIGH)
                / assumptions.value(Assumption.DEGRADED_OHMS_LOW))
        / Math.sqrt(12);
  }
}
