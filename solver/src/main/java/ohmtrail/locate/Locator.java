package ohmtrail.locate;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import ohmtrail.circuit.Circuit;
import ohmtrail.predict.Parameter;
import ohmtrail.predict.Parameters;
import ohmtrail.predict.Predictor;
import ohmtrail.problem.Problem;
import ohmtrail.reference.Assumption;
import ohmtrail.reference.Assumptions;
import ohmtrail.survey.Meter;
import ohmtrail.survey.ReadingError;
import ohmtrail.survey.Survey;

/**
 * Finds the degraded joint of a circuit. Immutable.
 *
 * <p>Every joint gets a first look with the model linearised where everything is as stated ({@link
 * JointScan}). Those that come near the best get a proper fit ({@link HypothesisFit}) and their
 * weight is followed over the ohms with the model linearised at that fit ({@link OhmsCurve}).
 * Probabilities follow from evidence and prior.
 */
public final class Locator {
  private static final double RANKED_APART = 1e6;

  /** No further reading is planned for a joint less probable than this. */
  private static final double DEAD = 1e-5;

  /**
   * Locates.
   *
   * @param problem the circuit, its readings and the assumptions; without a reading the answer is
   *     the prior
   */
  public Diagnosis locate(Problem problem) {
    return posterior(problem).diagnosis();
  }

  /**
   * Locates, and keeps what further readings are planned on.
   *
   * @param problem the circuit, its readings and the assumptions; without a reading the answer is
   *     the prior
   */
  public Posterior posterior(Problem problem) {
    Circuit circuit = problem.circuit();
    Survey survey = problem.survey();
    Assumptions assumptions = ComplaintLikelihood.heardBy(survey, problem.assumptions());
    Priors priors =
        Priors.of(
            circuit,
            assumptions,
            Looks.of(survey, assumptions),
            ComplaintLikelihood.of(circuit, survey, assumptions));
    Weighing weighing = Weighing.of(circuit, survey, assumptions, priors);
    Shortlist shortlist = Shortlist.of(circuit, weighing, priors);
    List<Candidate> candidates = shortlist.candidates();
    Companions companions = new Companions(circuit, weighing, priors);
    List<Combination> combinations =
        new CombinationSearch(circuit, weighing, companions, priors).run(shortlist);
    SingleFaults singles =
        SingleFaults.of(combinations, candidates, priors, weighing.observations());
    Optional<SeveralFaults> several = SeveralFaults.of(combinations, companions);
    double logHealthy = Math.log(priors.healthy()) + weighing.logHealthyEvidence();
    double logSeveral = several.map(SeveralFaults::logPosterior).orElse(Double.NEGATIVE_INFINITY);
    double logRival = Math.max(logHealthy, Math.max(logSeveral, singles.logTop()));
    Optional<Discord> discord = Discord.among(weighing, priors, candidates, logRival);
    double logUnexplained = discord.map(Discord::logWeight).orElse(Double.NEGATIVE_INFINITY);
    double logTotal =
        Weigher.logSum(
            Weigher.logSum(logHealthy, logUnexplained),
            Weigher.logSum(logSeveral, singles.logPosterior()));
    double healthy = Math.exp(logHealthy - logTotal);
    double unexplained = Math.exp(logUnexplained - logTotal);
    Verdict verdict = verdict(healthy, unexplained);
    Explanation explanation =
        verdict == Verdict.UNEXPLAINED
            ? discord.orElseThrow().explanation()
            : explanation(weighing, shortlist, singles, several, logHealthy);
    Diagnosis diagnosis =
        new Diagnosis(
            verdict,
            healthy,
            unexplained,
            boxes(circuit, singles.candidates(), several, logTotal),
            suspects(weighing, assumptions, singles, several, logTotal),
            fittedReadings(weighing, problem, explanation),
            fittedParameters(weighing.parameters(), explanation),
            explanation.degradations(),
            explanation.point(),
            assumptionsOf(survey),
            Math.exp(logSeveral - logTotal),
            Math.exp(singles.logUnstable() - logTotal));
    return new Posterior(
        diagnosis, beliefs(singles.candidates(), logTotal), several(several, logTotal), logTotal);
  }

  /** Those on looking count where somebody has looked, those on complaints where one was heard. */
  private static List<Assumption> assumptionsOf(Survey survey) {
    return Stream.of(Assumption.values())
        .filter(assumption -> !assumption.isAboutLooking() || !survey.findings().isEmpty())
        .filter(assumption -> !assumption.isAboutComplaints() || !survey.complaints().isEmpty())
        .toList();
  }

  /** The joints that are still alive, in the order of the candidates, which is the circuit's. */
  private static List<JointBelief> beliefs(List<Candidate> candidates, double logTotal) {
    List<JointBelief> beliefs = new ArrayList<>();
    for (Candidate candidate : candidates) {
      double probability = Math.exp(candidate.logPosterior() - logTotal);
      if (probability > DEAD && candidate.curve().isPresent()) {
        beliefs.add(
            new JointBelief(candidate.joint(), probability, candidate.curve().get().points()));
      }
    }
    return beliefs;
  }

  private static Optional<Posterior.Several> several(
      Optional<SeveralFaults> several, double logTotal) {
    return several.map(
        faults ->
            new Posterior.Several(
                faults.combination().degradations(), Math.exp(faults.logPosterior() - logTotal)));
  }

  private static List<Suspect> suspects(
      Weighing weighing,
      Assumptions assumptions,
      SingleFaults singles,
      Optional<SeveralFaults> several,
      double logTotal) {
    SuspectGroups groups = new SuspectGroups(weighing.observations(), assumptions);
    if (several.isEmpty() || several.get().logPosterior() < singles.logPosterior()) {
      return singles.describe(groups.group(singles.candidates(), logTotal));
    }
    List<Suspect> suspects = new ArrayList<>();
    for (List<Candidate> slot : several.get().slots()) {
      double logShare = SeveralFaults.logSum(slot) - several.get().logPosterior() + logTotal;
      suspects.addAll(groups.group(slot, logShare));
    }
    suspects.sort(Comparator.comparingDouble(Suspect::probability).reversed());
    return suspects;
  }

  private static Explanation explanation(
      Weighing weighing,
      Shortlist shortlist,
      SingleFaults singles,
      Optional<SeveralFaults> several,
      double logHealthy) {
    double logSeveral = several.map(SeveralFaults::logPosterior).orElse(Double.NEGATIVE_INFINITY);
    if (logHealthy > Math.max(singles.logTop(), logSeveral)) {
      return weighing.explainHealthy();
    }
    return logSeveral > singles.logTop()
        ? several.orElseThrow().combination().explanation()
        : singles.explanation().orElseGet(() -> shortlist.explain(singles.top()));
  }

  private static Verdict verdict(double healthy, double unexplained) {
    if (unexplained >= 0.5) {
      return Verdict.UNEXPLAINED;
    }
    return healthy >= 1 - healthy - unexplained ? Verdict.HEALTHY : Verdict.DEGRADED;
  }

  private static List<RankedBox> boxes(
      Circuit circuit,
      List<Candidate> candidates,
      Optional<SeveralFaults> several,
      double logTotal) {
    Map<String, Double> sums = new LinkedHashMap<>();
    circuit.boxes().forEach(box -> sums.put(box.name(), 0.0));
    for (Candidate candidate : candidates) {
      double probability = Math.exp(candidate.logPosterior() - logTotal);
      sums.merge(candidate.joint().box(), probability, Double::sum);
    }
    several.ifPresent(
        faults -> {
          double share = Math.exp(faults.logPosterior() - logTotal);
          faults.boxes().forEach((box, part) -> sums.merge(box, share * part, Double::sum));
        });
    return sums.entrySet().stream()
        .map(entry -> new RankedBox(entry.getKey(), entry.getValue()))
        .sorted(
            Comparator.comparingDouble((RankedBox box) -> rounded(box.probability())).reversed())
        .toList();
  }

  /**
   * A figure to rank by. What differs by less than a millionth is as good as equal: its order is
   * that of the run, and not a matter of the last bits, which differ from one processor to another.
   */
  static double rounded(double figure) {
    return Math.rint(figure * RANKED_APART) / RANKED_APART;
  }

  private static List<FittedReading> fittedReadings(
      Weighing weighing, Problem problem, Explanation explanation) {
    Survey survey = problem.survey();
    List<Double> healthy =
        new Predictor(problem.circuit(), survey, problem.assumptions()).readings(List.of());
    Observations observations = weighing.observations();
    List<FittedReading> readings = new ArrayList<>();
    for (int r = 0; r < observations.count(); r++) {
      Meter meter = survey.meter(observations.reading(r).meter());
      double fitted = explanation.volts().get(r);
      readings.add(
          new FittedReading(
              observations.test(r),
              observations.reading(r),
              healthy.get(r),
              ReadingError.shown(fitted, meter),
              observations.value(r) - fitted,
              Math.sqrt(observations.variance(r)),
              explanation.wrongProbabilities().get(r)));
    }
    return readings;
  }

  private static List<FittedParameter> fittedParameters(
      Parameters parameters, Explanation explanation) {
    List<FittedParameter> fitted = new ArrayList<>();
    for (int p = 0; p < parameters.size(); p++) {
      Parameter parameter = parameters.all().get(p);
      double u = explanation.point().get(p);
      fitted.add(new FittedParameter(parameter, parameter.nominal() * parameter.factor(u), u));
    }
    return fitted;
  }
}
