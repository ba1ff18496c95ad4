package ohmtrail.locate;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import ohmtrail.circuit.Circuit;
import ohmtrail.circuit.Joint;
import ohmtrail.predict.Degradation;
import ohmtrail.predict.SurveyModel;

/**
 * Looks for two or three degraded joints at once, and for a joint whose ohms differ between small
 * and large currents.
 *
 * <p>A further joint can gain no more than what the fit so far leaves unexplained; where that is
 * nothing out of the ordinary the search ends before it began. Otherwise the most probable single
 * joints are kept one after the other, their ohms free to give way, and every other joint is tried
 * beside them by the same quick looks as before; the few best pairs are fitted in full. In the best
 * pair each joint in turn is then held against all that could stand in its place, until nothing
 * better is found. The evidence decides how many joints there are, by Laplace's approximation in
 * the logarithms of the ohms.
 */
final class CombinationSearch {
  /** So many of the single joints are tried as the first of a pair. */
  private static final int FIRST_JOINTS = 3;

  /** So many joints are fitted in full beside each of them. */
  private static final int SECOND_JOINTS = 3;

  /** An exchange of one joint that gains less than this much, as a logarithm, is not fitted. */
  private static final double WORTH_EXCHANGING = 0.3;

  /** Rounds of exchanges. */
  private static final int MOST_EXCHANGES = 4;

  /** More than three degraded joints at once are not looked for. */
  private static final int MOST_JOINTS = 3;

  /** Joints whose predictions are nearer than this many standard deviations make the same pairs. */
  private static final double SAME_PREDICTION = 0.5;

  private final Circuit circuit;
  private final Weighing weighing;
  private final Companions companions;
  private final Priors priors;

  CombinationSearch(Circuit circuit, Weighing weighing, Companions companions, Priors priors) {
    this.circuit = circuit;
    this.weighing = weighing;
    this.companions = companions;
    this.priors = priors;
  }

  /**
   * Searches.
   *
   * @param shortlist the single joints
   * @return every combination that was fitted; empty when a single joint or a healthy circuit
   *     leaves nothing unexplained
   */
  List<Combination> run(Shortlist shortlist) {
    List<Candidate> firsts =
        shortlist.candidates().stream()
            .filter(candidate -> shortlist.modelOf(candidate).isPresent())
            .sorted(Comparator.comparingDouble(Candidate::logPosterior).reversed())
            .toList();
    if (firsts.isEmpty() || !shortlist.leavesUnexplained(firsts.get(0))) {
      return List.of();
    }
    List<Combination> found = new ArrayList<>();
    Set<Set<String>> tried = new HashSet<>();
    for (Candidate first : differing(firsts)) {
      Optional<Linearised> fitted = shortlist.modelOf(first);
      double ohms = first.curve().map(OhmsCurve::peakOhms).orElseThrow();
      List<Degradation> base = List.of(new Degradation(first.joint().id(), ohms));
      addUnstable(first.joint(), ohms, found);
      extend(base, fitted.orElseThrow().point(), tried, found);
    }
    exchange(tried, found);
    bestJoined(found)
        .filter(pair -> pair.jointCount() < MOST_JOINTS)
        .filter(pair -> pair.logPosterior() > firsts.get(0).logPosterior())
        .ifPresent(pair -> extend(pair.degradations(), pair.fit().point(), tried, found));
    return List.copyOf(found);
  }

  /** The best of those with several joints. */
  static Optional<Combination> bestJoined(List<Combination> combinations) {
    return best(combinations, each -> !each.isUnstable());
  }

  /** The best of one joint whose ohms differ. */
  static Optional<Combination> bestUnstable(List<Combination> combinations) {
    return best(combinations, Combination::isUnstable);
  }

  private static Optional<Combination> best(
      List<Combination> combinations, Predicate<Combination> kind) {
    return combinations.stream()
        .filter(kind)
        .max(Comparator.comparingDouble(Combination::logPosterior));
  }

  /** Puts a better joint in the place of one of the best pair, until there is none. */
  private void exchange(Set<Set<String>> tried, List<Combination> found) {
    int before = -1;
    for (int round = 0; round < MOST_EXCHANGES && found.size() > before; round++) {
      before = found.size();
      bestJoined(found).ifPresent(pair -> exchangeEach(pair, tried, found));
    }
  }

  private void exchangeEach(Combination pair, Set<Set<String>> tried, List<Combination> found) {
    for (Degradation given : pair.degradations()) {
      List<Degradation> others = new ArrayList<>(pair.degradations());
      others.remove(given);
      List<JointScan> seen = companions.beside(others, pair.fit().point());
      double own =
          seen.stream()
              .filter(scan -> scan.twins().stream().anyMatch(it -> it.id().equals(given.joint())))
              .mapToDouble(weighing::logPosterior)
              .max()
              .orElse(Double.NEGATIVE_INFINITY);
      seen.stream()
          .max(Comparator.comparingDouble(weighing::logPosterior))
          .filter(scan -> weighing.logPosterior(scan) > own + WORTH_EXCHANGING)
          .ifPresent(scan -> join(others, scan, tried, found));
    }
  }

  private List<Candidate> differing(List<Candidate> ordered) {
    List<Candidate> kept = new ArrayList<>();
    for (Candidate candidate : ordered) {
      boolean isNew =
          kept.stream()
              .noneMatch(
                  other -> other.distance(candidate, weighing.observations()) < SAME_PREDICTION);
      if (isNew && kept.size() < FIRST_JOINTS) {
        kept.add(candidate);
      }
    }
    return kept;
  }

  private void addUnstable(Joint joint, double ohms, List<Combination> found) {
    double start = Math.min(ohms, weighing.prior().high());
    List<Degradation> both =
        List.of(
            new Degradation(joint.id(), start, Degradation.When.UNLOADED),
            new Degradation(joint.id(), start, Degradation.When.LOADED));
    BitSet wrong = weighing.scanOf(joint).map(JointScan::wrongReading).orElseGet(BitSet::new);
    found.add(fit(both, wrong, priors.logUnstable(joint)));
  }

  /** Tries every further joint beside those of a base, and fits the few best. */
  private void extend(
      List<Degradation> base, double[] point, Set<Set<String>> tried, List<Combination> found) {
    companions.beside(base, point).stream()
        .sorted(Comparator.comparingDouble(weighing::logPosterior).reversed())
        .limit(SECOND_JOINTS)
        .forEach(scan -> join(base, scan, tried, found));
  }

  private void join(
      List<Degradation> base, JointScan scan, Set<Set<String>> tried, List<Combination> found) {
    List<Degradation> joined = companions.together(base, scan);
    Set<String> names = joined.stream().map(Degradation::joint).collect(Collectors.toSet());
    if (tried.add(names)) {
      found.add(fit(joined, scan.wrongReading(), priors.logCombination(joints(names))));
    }
  }

  private List<Joint> joints(Set<String> names) {
    return names.stream().map(name -> circuit.joint(name).orElseThrow()).toList();
  }

  private Combination fit(List<Degradation> start, BitSet wrong, double logPrior) {
    HypothesisFit.Result result = weighing.fit().fit(start, wrong);
    SurveyModel model = weighing.model(result.point(), List.of(), result.degradations());
    Linearised linearised =
        new Linearised(
            model,
            result.degradations(),
            result.point(),
            weighing.observations(),
            weighing.active());
    Weigher.Weight weight = linearised.weight(0);
    OhmsLaplace laplace = OhmsLaplace.at(model, result.degradations(), linearised, weighing);
    return new Combination(
        result.degradations(),
        logPrior + weight.logWeight() + laplace.logPriorMass(),
        laplace.logOhmsSigma(),
        linearised.explain(0),
        result);
  }
}
