package ohmtrail.slip;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import ohmtrail.locate.Diagnosis;
import ohmtrail.locate.FittedReading;
import ohmtrail.locate.Posterior;
import ohmtrail.predict.Evaluation;
import ohmtrail.predict.Parameters;
import ohmtrail.predict.SurveyModel;
import ohmtrail.problem.Problem;
import ohmtrail.problem.Slip;
import ohmtrail.reference.Assumption;
import ohmtrail.survey.Measurand;
import ohmtrail.survey.Test;

/**
 * Tells which slips are worth a location of their own.
 *
 * <p>Where the problem as stated has an explanation that leaves nothing out of the ordinary, a slip
 * matters only if a sound circuit with it explains the readings about as well. Otherwise each slip
 * is sketched. Used once, by one thread.
 */
final class Screening {
  /** Slips e^-4 behind the best are not located. */
  private static final double WORTH_LOCATING = 4;

  /** A sound circuit with a slip that far behind all that the stated problem holds is nothing. */
  private static final double WORTH_SKETCHING = 3;

  private static final int MOST_LOCATED = 4;
  private static final int MOST_WEIGHED = 12;

  /** Slips that are paired, and pairs that are weighed. */
  private static final int MOST_PAIRED = 6;

  private static final int MOST_OF_A_KIND = 2;

  private static final int MOST_PAIRS_WEIGHED = 3;

  /** Other explanations than one joint or none at this probability ask for a look at every slip. */
  private static final double STRAINED = 0.3;

  /** Share of the supply's voltage: six steps of it. */
  private static final double FAR_FROM_SOUND = 0.15;

  private final Suppositions suppositions;
  private final List<Supposition> exchanges;
  private final Problem stated;
  private final Posterior posterior;
  private final NormalReadings readings;
  private final LoadSlips loadSlips;
  private final List<String> testNames;
  private final Map<List<Object>, Prediction> predictions = new HashMap<>();

  /**
   * Prepares.
   *
   * @param suppositions the slips
   * @param exchanges of neighbours, of those
   * @param posterior of the problem as stated
   */
  Screening(Suppositions suppositions, List<Supposition> exchanges, Posterior posterior) {
    this.suppositions = suppositions;
    this.exchanges = exchanges;
    this.stated = suppositions.stated();
    this.posterior = posterior;
    this.readings = new NormalReadings(stated);
    this.loadSlips = new LoadSlips(stated);
    this.testNames = stated.survey().tests().stream().map(Test::name).toList();
  }

  /** The slips to locate, the likeliest first; most often none. */
  List<Supposition> likely() {
    boolean asksForMore =
        isStrained() || readings.isSuspicious(leadingMisfit()) || aSoundCircuitComesNear();
    return asksForMore ? sketched() : List.of();
  }

  private boolean isStrained() {
    Diagnosis diagnosis = posterior.diagnosis();
    double wrong =
        diagnosis.readings().stream().mapToDouble(FittedReading::wrongProbability).max().orElse(0);
    return diagnosis.unexplainedProbability()
            + diagnosis.severalProbability()
            + diagnosis.unstableProbability()
            + wrong
        > STRAINED;
  }

  /** The squared distance of the readings from the leading explanation at its fit. */
  private double leadingMisfit() {
    double[] point = posterior.diagnosis().bestPointArray();
    Parameters parameters = Parameters.of(stated.circuit(), stated.survey(), stated.assumptions());
    SurveyModel model =
        SurveyModel.of(
            stated.circuit(),
            stated.survey(),
            stated.assumptions(),
            parameters,
            point,
            List.of(),
            posterior.diagnosis().best());
    Evaluation at = model.buffer();
    model.evaluate(at);
    double[] shifted = at.volts().clone();
    for (int r = 0; r < shifted.length; r++) {
      for (int p = 0; p < point.length; p++) {
        shifted[r] -= at.jacobian()[r * point.length + p] * point[p];
      }
    }
    return readings.covariance(at, 1, Optional.empty()).misfit(shifted, Double.MAX_VALUE);
  }

  private double statedWeight() {
    return suppositions.asStated().logPrior() + posterior.logMarginalLikelihood();
  }

  private boolean aSoundCircuitComesNear() {
    if (suppositions.ofTests().stream().anyMatch(each -> each.slip() instanceof Slip.NoSupply)) {
      return true;
    }
    return !isFarFromSound() && aSoundCircuitWithASlipComesNear();
  }

  /**
   * A reading so far below a sound circuit's that neither a load nor the supply makes up for it.
   */
  private boolean isFarFromSound() {
    double far = FAR_FROM_SOUND * stated.circuit().supply().volts();
    return posterior.diagnosis().readings().stream()
        .filter(fitted -> fitted.reading().measurand() == Measurand.VOLTAGE)
        .filter(fitted -> fitted.wrongProbability() < STRAINED)
        .anyMatch(fitted -> fitted.reading().value() < fitted.healthy() - far);
  }

  private boolean aSoundCircuitWithASlipComesNear() {
    double floor =
        statedWeight()
            - WORTH_SKETCHING
            - Math.log(stated.assumptions().value(Assumption.HEALTHY_PRIOR));
    Prediction listed = cached(loadSlips.listed(), false);
    Evaluation asStated = listed.buffer();
    listed.sound(asStated);
    NormalReadings.Covariance covariance = readings.covariance(asStated, 1, Optional.empty());
    return suppositions.ofTests().stream()
        .filter(this::isOnEveryTest)
        .anyMatch(
            each -> {
              Slip slip = each.slip();
              if (slip instanceof Slip.SupplyMoved moved) {
                int from = testNames.indexOf(moved.test());
                return each.logPrior() + readings.logStepped(asStated, covariance, from) > floor;
              }
              Prediction prediction = prediction(slip, false);
              Evaluation sound = prediction.buffer();
              prediction.sound(sound);
              return each.logPrior() + readings.logAllRight(sound) > floor;
            });
  }

  /** Of loads, only what was wrong throughout: else the explanation as stated would be strained. */
  private boolean isOnEveryTest(Supposition supposition) {
    Slip slip = supposition.slip();
    if (slip instanceof Slip.LoadDidNotDraw off) {
      return off.tests().size() == loadSlips.named(stated.survey().load(off.load())).size();
    }
    if (slip instanceof Slip.LoadDrewLess low) {
      return low.tests().size() == loadSlips.named(stated.survey().load(low.load())).size();
    }
    return slip instanceof Slip.SupplyMoved || slip instanceof Slip.NoSupply;
  }

  private Optional<Integer> stepFrom(Slip slip) {
    return slip instanceof Slip.SupplyMoved moved
        ? Optional.of(testNames.indexOf(moved.test()))
        : Optional.empty();
  }

  private record Sketched(Supposition supposition, Sketch sketch) {
    double logRank() {
      return supposition.logPrior() + sketch.logRank() + supposition.logRest();
    }

    double logWeight() {
      return supposition.logPrior() + sketch.logPosterior() + supposition.logRest();
    }
  }

  private record Weighed(Supposition supposition, double logWeight) {}

  private List<Supposition> sketched() {
    List<Sketched> sketched = new ArrayList<>();
    Prediction asStated = cached(loadSlips.listed(), true);
    Twins twins = Twins.of(asStated, readings, stated.assumptions());
    Sketch plain = sketch(asStated, Optional.empty(), twins);
    suppositions.ofTests().forEach(each -> sketched.add(sketched(each, twins)));
    if (!NearbyEvidence.tells(posterior.diagnosis())) {
      exchanges.forEach(each -> sketched.add(sketched(each, twins)));
    }
    double least =
        sketched.stream()
            .mapToDouble(each -> each.sketch.leastMisfit())
            .reduce(plain.leastMisfit(), Math::min);
    if (readings.isSuspicious(least)) {
      suppositions.moves().forEach(each -> sketched.add(sketched(each, twins)));
    }
    List<Weighed> weighed = new ArrayList<>();
    sketched.stream()
        .sorted(Comparator.comparingDouble(Sketched::logRank).reversed())
        .limit(MOST_WEIGHED)
        .forEach(each -> weighed.add(new Weighed(each.supposition, each.logWeight())));
    if (readings.isSuspicious(least)) {
      weighed.addAll(pairs(sketched));
      weighed.addAll(currents(asStated, twins));
    }
    double best =
        Stream.concat(
                Stream.of(suppositions.asStated().logPrior() + plain.logPosterior()),
                weighed.stream().map(Weighed::logWeight))
            .max(Comparator.naturalOrder())
            .orElseThrow();
    return weighed.stream()
        .filter(each -> each.logWeight > best - WORTH_LOCATING)
        .sorted(Comparator.comparingDouble(Weighed::logWeight).reversed())
        .limit(MOST_LOCATED)
        .map(Weighed::supposition)
        .toList();
  }

  private List<Weighed> currents(Prediction asStated, Twins twins) {
    CurrentSearch search = new CurrentSearch(stated, readings, asStated, twins);
    return Stream.concat(
            Stream.of(UnlistedLoads.ofTheRun(stated)),
            UnlistedLoads.ofAnotherCircuit(stated).stream())
        .flatMap(loads -> search.best(loads).stream())
        .map(each -> new Weighed(each.supposition(), each.logWeight()))
        .toList();
  }

  private Sketch sketch(Prediction prediction, Optional<Integer> stepFrom, Twins twins) {
    return new Sketch(readings, prediction, stepFrom, twins, stated.assumptions());
  }

  private Sketched sketched(Supposition supposition, Twins twins) {
    Slip slip = supposition.slip();
    if (leavesTheCircuit(slip)) {
      return new Sketched(supposition, sketch(prediction(slip, true), stepFrom(slip), twins));
    }
    return inFull(supposition);
  }

  /** With a prediction of its own. */
  private static Sketched inFull(Supposition supposition) {
    Problem problem = supposition.problem();
    NormalReadings own = new NormalReadings(problem);
    Prediction prediction = new Prediction.OfProblem(problem, problem.circuit().joints());
    return new Sketched(
        supposition,
        new Sketch(
            own,
            prediction,
            Optional.empty(),
            Twins.of(prediction, own, problem.assumptions()),
            problem.assumptions()));
  }

  private static boolean leavesTheCircuit(Slip slip) {
    return slip instanceof Slip.LoadDidNotDraw
        || slip instanceof Slip.LoadDrewLess
        || slip instanceof Slip.SupplyMoved;
  }

  /** Two slips at once, of those that do best alone, where none alone is enough. */
  private List<Weighed> pairs(List<Sketched> sketched) {
    Map<String, Integer> ofKind = new HashMap<>();
    List<Supposition> best =
        sketched.stream()
            .sorted(Comparator.comparingDouble(Sketched::logRank).reversed())
            .map(Sketched::supposition)
            .filter(each -> !(each.slip() instanceof Slip.BoxElsewhere))
            .filter(each -> ofKind.merge(each.slip().kind(), 1, Integer::sum) <= MOST_OF_A_KIND)
            .limit(MOST_PAIRED)
            .toList();
    List<Sketched> pairs = new ArrayList<>();
    for (int first = 0; first < best.size(); first++) {
      for (int second = first + 1; second < best.size(); second++) {
        Supposition one = best.get(first);
        Suppositions.of(one.problem())
            .of(best.get(second).slip())
            .ifPresent(other -> pairs.add(inFull(one.and(other))));
      }
    }
    return pairs.stream()
        .sorted(Comparator.comparingDouble(Sketched::logRank).reversed())
        .limit(MOST_PAIRS_WEIGHED)
        .map(each -> new Weighed(each.supposition, each.logWeight()))
        .toList();
  }

  /** What would be read if a slip was made that leaves the circuit as it is. */
  private Prediction prediction(Slip slip, boolean withJoints) {
    if (slip instanceof Slip.LoadDidNotDraw off) {
      Prediction all = cached(loadSlips.off(off.load()), withJoints);
      return mixed(cached(loadSlips.listed(), withJoints), all, off.tests());
    }
    if (slip instanceof Slip.LoadDrewLess low) {
      Prediction all = cached(loadSlips.low(low.load()), withJoints);
      return mixed(cached(loadSlips.listed(), withJoints), all, low.tests());
    }
    return cached(loadSlips.listed(), withJoints);
  }

  private Prediction cached(Problem problem, boolean withJoints) {
    return predictions.computeIfAbsent(
        List.of(problem, withJoints),
        key ->
            new Prediction.OfProblem(problem, withJoints ? problem.circuit().joints() : List.of()));
  }

  private Prediction mixed(Prediction first, Prediction second, List<String> tests) {
    Set<String> changed = new HashSet<>(tests);
    boolean[] fromSecond = new boolean[readings.count()];
    for (int r = 0; r < fromSecond.length; r++) {
      fromSecond[r] = changed.contains(testNames.get(readings.testOf(r)));
    }
    return new Prediction.Mixed(first, second, fromSecond);
  }
}
