package ohmtrail.locate.search;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import ohmtrail.circuit.Joint;
import ohmtrail.locate.fit.CombinationFit;
import ohmtrail.locate.fit.InferenceProblem;
import ohmtrail.locate.hypothesis.Hypothesis;
import ohmtrail.locate.hypothesis.Hypothesis.OneJoint;
import ohmtrail.locate.hypothesis.Hypothesis.SeveralJoints;
import ohmtrail.locate.hypothesis.Hypothesis.UnstableJoint;
import ohmtrail.locate.settings.Settings;
import ohmtrail.predict.Degradation;
import ohmtrail.survey.Finding;

/**
 * Looks for two or three degraded joints at once, and for a joint whose ohms differ between small
 * and large currents. Used once, by one thread.
 *
 * <p>A further joint can gain no more than what the fit so far leaves unexplained; where that is
 * nothing out of the ordinary the search ends before it began. Otherwise the most probable single
 * joints are kept one after the other, their ohms free to give way, and every other joint is tried
 * beside them by the same quick scans as before; the few best pairs are fitted in full. In the best
 * pair each joint in turn is then held against all that could stand in its place, until nothing
 * better is found. The marginal likelihood decides how many joints there are, by Laplace's
 * approximation in the logarithms of the ohms.
 */
final class SeveralJointsSearch {
  private final ScannedCircuit circuit;
  private final FurtherJoints further;
  private final Set<Set<String>> tried = new HashSet<>();
  private final List<SeveralJoints> several = new ArrayList<>();
  private final List<UnstableJoint> unstable = new ArrayList<>();

  private SeveralJointsSearch(ScannedCircuit circuit) {
    this.circuit = circuit;
    this.further = new FurtherJoints(circuit);
  }

  /**
   * What was found.
   *
   * @param several the most probable set of joints, with what could stand in the place of each
   * @param unstable the most probable unstable joint
   */
  record Found(Optional<SeveralJoints> several, Optional<UnstableJoint> unstable) {}

  /**
   * Searches.
   *
   * @param circuit the circuit, scanned
   * @param singles the single joints
   * @return nothing when a single joint or a sound circuit leaves nothing unexplained, of what was
   *     read and of what was seen
   */
  static Found of(ScannedCircuit circuit, SingleJoints singles) {
    SeveralJointsSearch search = new SeveralJointsSearch(circuit);
    List<OneJoint> firsts = singles.followed();
    if (firsts.isEmpty()
        || !(singles.leavesUnexplained(firsts.get(0)) || search.leavesAFind(firsts.get(0)))) {
      return new Found(Optional.empty(), Optional.empty());
    }
    search.run(firsts, singles);
    return new Found(
        search.best().map(search::withAlternatives),
        search.unstable.stream().max(Comparator.comparingDouble(Hypothesis::logPosterior)));
  }

  /** Whether a joint was seen to be bad where the likeliest one is not. */
  private boolean leavesAFind(OneJoint first) {
    return circuit.problem().problem().survey().places(Finding.State.BURNT).stream()
        .anyMatch(place -> !place.equals(Finding.placeOf(first.joint())));
  }

  private Settings.Several settings() {
    return circuit.problem().settings().several();
  }

  private void run(List<OneJoint> firsts, SingleJoints singles) {
    for (OneJoint first : differing(firsts)) {
      double[] point = singles.modelOf(first).orElseThrow().point();
      addUnstable(first);
      extend(
          List.of(new Degradation(first.joint().id(), first.peakOhms())),
          Arrays.stream(point).boxed().toList());
    }
    exchange();
    best()
        .filter(pair -> pair.count() < settings().mostJoints())
        .filter(pair -> pair.logPosterior() > firsts.get(0).logPosterior())
        .ifPresent(pair -> extend(pair.fitted().degradations(), pair.fitted().point()));
  }

  private Optional<SeveralJoints> best() {
    return several.stream().max(Comparator.comparingDouble(Hypothesis::logPosterior));
  }

  /** The most probable ones whose predictions differ. */
  private List<OneJoint> differing(List<OneJoint> ordered) {
    double same = circuit.problem().settings().answer().samePrediction();
    List<OneJoint> kept = new ArrayList<>();
    for (OneJoint each : ordered) {
      boolean isNew =
          kept.stream()
              .noneMatch(other -> other.distance(each, circuit.problem().observations()) < same);
      if (isNew && kept.size() < settings().firstJoints()) {
        kept.add(each);
      }
    }
    return kept;
  }

  private void addUnstable(OneJoint single) {
    Joint joint = single.joint();
    double start = Math.min(single.peakOhms(), circuit.problem().ohmsPrior().high());
    List<Degradation> both =
        List.of(
            new Degradation(joint.id(), start, Degradation.When.UNLOADED),
            new Degradation(joint.id(), start, Degradation.When.LOADED));
    BitSet outliers = circuit.scanOf(joint).map(JointScan::outliers).orElseGet(BitSet::new);
    CombinationFit fit = fit(both, outliers);
    double logPrior = circuit.problem().priors().logUnstable(joint);
    unstable.add(new UnstableJoint(logPrior + fit.logMarginalLikelihood(), fit.fitted()));
  }

  /** Tries every further joint beside those of a base, and fits the few best. */
  private void extend(List<Degradation> base, List<Double> point) {
    further.beside(base, point).stream()
        .sorted(Comparator.comparingDouble(JointScan::logPosterior).reversed())
        .limit(settings().secondJoints())
        .forEach(scan -> join(base, scan));
  }

  private void join(List<Degradation> base, JointScan scan) {
    List<Degradation> joined = further.together(base, scan);
    Set<String> names = joined.stream().map(Degradation::joint).collect(Collectors.toSet());
    if (!tried.add(names)) {
      return;
    }
    InferenceProblem problem = circuit.problem();
    List<Joint> joints =
        names.stream().map(name -> problem.problem().circuit().joint(name).orElseThrow()).toList();
    CombinationFit fit = fit(joined, scan.outliers());
    double logPosterior = problem.priors().logCombination(joints) + fit.logMarginalLikelihood();
    several.add(new SeveralJoints(logPosterior, fit.fitted(), List.of()));
  }

  private CombinationFit fit(List<Degradation> start, BitSet outliers) {
    return CombinationFit.of(circuit.fit(), circuit.workspace(), start, outliers);
  }

  /** Puts a better joint in the place of one of the best pair, until there is none. */
  private void exchange() {
    int before = -1;
    int found = several.size() + unstable.size();
    for (int round = 0; round < settings().mostExchanges() && found > before; round++) {
      before = found;
      best().ifPresent(this::exchangeEach);
      found = several.size() + unstable.size();
    }
  }

  private void exchangeEach(SeveralJoints pair) {
    for (Degradation given : pair.fitted().degradations()) {
      List<Degradation> others = without(pair, given);
      List<JointScan> scans = further.beside(others, pair.fitted().point());
      double own =
          scans.stream()
              .filter(scan -> scan.twins().stream().anyMatch(it -> it.id().equals(given.joint())))
              .mapToDouble(JointScan::logPosterior)
              .max()
              .orElse(Double.NEGATIVE_INFINITY);
      scans.stream()
          .max(Comparator.comparingDouble(JointScan::logPosterior))
          .filter(scan -> scan.logPosterior() > own + settings().worthExchanging())
          .ifPresent(scan -> join(others, scan));
    }
  }

  private static List<Degradation> without(SeveralJoints joints, Degradation given) {
    List<Degradation> others = new ArrayList<>(joints.fitted().degradations());
    others.remove(given);
    return others;
  }

  /** With what else could stand in the place of each joint, the others kept. */
  private SeveralJoints withAlternatives(SeveralJoints best) {
    List<List<OneJoint>> alternatives = new ArrayList<>();
    double logPosterior = best.logPosterior();
    for (Degradation given : best.fitted().degradations()) {
      List<OneJoint> here = further.followed(without(best, given), best.fitted().point());
      double own =
          here.stream()
              .filter(each -> each.joint().id().equals(given.joint()))
              .mapToDouble(Hypothesis::logPosterior)
              .max()
              .orElse(Double.NEGATIVE_INFINITY);
      if (Double.isFinite(own)) {
        logPosterior += Hypothesis.logSum(here) - own;
      }
      alternatives.add(here);
    }
    return new SeveralJoints(logPosterior, best.fitted(), alternatives);
  }
}
