package ohmtrail.practice.exact;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.function.DoubleUnaryOperator;
import ohmtrail.circuit.Box;
import ohmtrail.circuit.Joint;
import ohmtrail.locate.OhmsInterval;
import ohmtrail.locate.RankedBox;
import ohmtrail.locate.Suspect;
import ohmtrail.locate.Verdict;
import ohmtrail.practice.FaultKind;
import ohmtrail.practice.PracticeCase;
import ohmtrail.practice.answer.Answer;
import ohmtrail.predict.Degradation;
import org.ejml.data.DMatrixRMaj;

/**
 * The same for two joints degraded at once: every pair is weighed. The ohms of both are unknowns
 * beside the others. The mode of all of them is found from several starts, by Gauss and Newton with
 * a normal prior of the logarithms; then sampling around it puts the prior right, which is uniform
 * in the logarithm, and mends what the posterior differs from a normal distribution. Where it
 * differs too much, as for two joints one behind the other, of which the readings know little but
 * the sum, the ohms of both are integrated over step by step instead.
 *
 * <p>Joints that no reading tells apart are weighed once. Pairs far behind the best are not
 * sampled.
 */
final class TwoJointOracle implements Oracle {
  /**
   * Pairs e^-9 behind the best are not worth sampling, and none of the others is nearer than that.
   */
  private static final double OUT_OF_REACH = 9;

  private static final int SAMPLE_PAIRS = 100;

  /** Draws of which a smaller share counts say too little. */
  private static final double LEAST_EFFECTIVE_SHARE = 0.2;

  /** Standard deviation of the logarithm of ohms that are as good as fixed. */
  private static final double FIXED = 1e-9;

  /** Any number does; a fixed one gives the same answer every time. */
  private static final long SAMPLING_SEED = 1;

  /**
   * A uniform distribution has this many times its standard deviation as range: square root of 12.
   */
  private static final double RANGE_PER_SIGMA = Math.sqrt(12);

  /** Where the fits start, standard deviations of either logarithm from the middle of its range. */
  private static final List<double[]> STARTS =
      List.of(
          new double[] {-1, -1}, new double[] {-1, 1}, new double[] {1, -1}, new double[] {1, 1});

  private final FaultKind faults;

  /** Logarithms of the ohms. */
  private final double low;

  private final double high;
  private final double sigma;

  TwoJointOracle(FaultKind faults) {
    this.faults = faults;
    this.low = Math.log(faults.lowestOhms());
    this.high = Math.log(faults.highestOhms());
    this.sigma = (high - low) / RANGE_PER_SIGMA;
  }

  /** Whether this is exact for such faults: two at a time, none of them open, on every circuit. */
  static boolean knows(FaultKind faults) {
    return faults.joints() == 2
        && faults.healthyShare() == 0
        && faults.openShare() == 0
        && faults.lowestOhms() < faults.highestOhms();
  }

  /** Two sets of twins, one joint from each, or both from the one. */
  private record Pair(List<Joint> first, List<Joint> second) {
    boolean isOneSet() {
      return first == second;
    }

    List<Joint> leaders() {
      return List.of(first.get(0), second.get(isOneSet() ? 1 : 0));
    }
  }

  /** A pair where the fit left it. */
  private record Fitted(Pair pair, OracleFit fit, OracleFit.Mode mode) {}

  @Override
  public Answer answer(PracticeCase practiceCase) {
    Map<Joint, Double> prior = faults.prior(practiceCase.circuit(), practiceCase.assumptions());
    List<Fitted> fitted = fit(practiceCase, List.copyOf(prior.keySet()));
    double best = fitted.stream().mapToDouble(each -> each.mode.logEvidence()).max().orElseThrow();
    Marginals marginals = new Marginals(prior);
    fitted.stream()
        .filter(each -> each.mode.logEvidence() > best - OUT_OF_REACH)
        .forEach(each -> marginals.add(each.pair, Math.exp(weigh(practiceCase, each) - best)));
    return marginals.answer(practiceCase);
  }

  private List<Fitted> fit(PracticeCase practiceCase, List<Joint> joints) {
    OracleFit single = new OracleFit(practiceCase);
    List<Double> ohms = List.of(Math.exp(low), Math.exp((low + high) / 2), Math.exp(high));
    List<List<Joint>> sets = new TwinJoints(single, ohms).among(joints);
    List<Fitted> fitted = new ArrayList<>();
    for (int first = 0; first < sets.size(); first++) {
      for (int second = first; second < sets.size(); second++) {
        if (second > first || sets.get(first).size() > 1) {
          fitted.add(fit(practiceCase, new Pair(sets.get(first), sets.get(second))));
        }
      }
    }
    return fitted;
  }

  /** Logarithm of the density of a case's readings with these two joints degraded. */
  double logEvidence(PracticeCase practiceCase, Joint first, Joint second) {
    return weigh(practiceCase, fit(practiceCase, new Pair(List.of(first), List.of(second))));
  }

  private Fitted fit(PracticeCase practiceCase, Pair pair) {
    double middle = Math.exp((low + high) / 2);
    List<Degradation> degraded =
        pair.leaders().stream().map(joint -> new Degradation(joint.id(), middle)).toList();
    OracleFit fit = new OracleFit(practiceCase, degraded, sigma);
    return STARTS.stream()
        .map(
            start ->
                fit.mode(
                    fit::solveAsPlaced, fit.solveAsPlaced(fit.elsewhere(fit.nominal(), start)), 0))
        .max(Comparator.comparingDouble(OracleFit.Mode::logEvidence))
        .map(mode -> new Fitted(pair, fit, mode))
        .orElseThrow();
  }

  private double weigh(PracticeCase practiceCase, Fitted fitted) {
    OracleFit fit = fitted.fit;
    ImportanceSampling.Result sampled =
        new ImportanceSampling(fit, SAMPLE_PAIRS, SAMPLING_SEED)
            .around(fitted.mode, fit::solveAsPlaced, 0, point -> logPriorRatio(fit, point));
    return sampled.effectiveShare() < LEAST_EFFECTIVE_SHARE
        ? integrate(practiceCase, fitted)
        : sampled.logEvidence();
  }

  private double integrate(PracticeCase practiceCase, Fitted fitted) {
    List<Joint> joints = fitted.pair.leaders();
    DoubleUnaryOperator overSecond =
        first ->
            LogIntegral.of(
                    second -> logEvidenceAt(practiceCase, fitted, joints, first, second), low, high)
                .logTotal();
    return LogIntegral.of(overSecond, low, high).logTotal() - 2 * Math.log(high - low);
  }

  private static double logEvidenceAt(
      PracticeCase practiceCase, Fitted fitted, List<Joint> joints, double first, double second) {
    List<Degradation> fixed =
        List.of(
            new Degradation(joints.get(0).id(), Math.exp(first)),
            new Degradation(joints.get(1).id(), Math.exp(second)));
    OracleFit fit = new OracleFit(practiceCase, fixed, FIXED);
    DMatrixRMaj start = fitted.fit.elsewhere(fitted.mode.solved().point(), new double[2]);
    return fit.mode(fit::solveAsPlaced, fit.solveAsPlaced(start), 0).logEvidence();
  }

  /** The prior that the ohms were drawn from over the one of the fit, as a logarithm. */
  private double logPriorRatio(OracleFit fit, DMatrixRMaj point) {
    double log = 0;
    for (double u : fit.placed(point)) {
      double logOhms = (low + high) / 2 + sigma * u;
      if (logOhms < low || logOhms > high) {
        return Double.NEGATIVE_INFINITY;
      }
      log += Math.log(sigma * Math.sqrt(2 * Math.PI) / (high - low)) + u * u / 2;
    }
    return log;
  }

  /** Probabilities of joints and boxes, added up over the pairs. */
  private static final class Marginals {
    private final Map<Joint, Double> prior;
    private final Map<Joint, Double> joints = new LinkedHashMap<>();
    private final Map<String, Double> boxes = new LinkedHashMap<>();
    private double total;

    Marginals(Map<Joint, Double> prior) {
      this.prior = prior;
    }

    void add(Pair pair, double evidence) {
      int size = pair.first.size();
      for (int i = 0; i < size; i++) {
        Joint one = pair.first.get(i);
        int from = pair.isOneSet() ? i + 1 : 0;
        pair.second.stream().skip(from).forEach(other -> add(one, other, evidence));
      }
    }

    private void add(Joint one, Joint other, double evidence) {
      double weight = evidence * (drawn(one, other) + drawn(other, one));
      total += weight;
      joints.merge(one, weight, Double::sum);
      joints.merge(other, weight, Double::sum);
      boxes.merge(one.box(), weight, Double::sum);
      if (!other.box().equals(one.box())) {
        boxes.merge(other.box(), weight, Double::sum);
      }
    }

    /** Probability that the one is drawn first and then the other. */
    private double drawn(Joint first, Joint then) {
      double ofFirst = prior.getOrDefault(first, 0.0);
      return ofFirst * prior.getOrDefault(then, 0.0) / (1 - ofFirst);
    }

    Answer answer(PracticeCase practiceCase) {
      List<RankedBox> stated =
          practiceCase.circuit().boxes().stream()
              .map(Box::name)
              .map(name -> new RankedBox(name, boxes.getOrDefault(name, 0.0) / total))
              .toList();
      List<Suspect> suspects =
          joints.entrySet().stream()
              .sorted(Map.Entry.<Joint, Double>comparingByValue().reversed())
              .map(each -> suspect(each.getKey(), each.getValue() / total))
              .toList();
      return new Answer(
          Answer.byProbability(stated, practiceCase.circuit()),
          stated,
          suspects,
          List.of(),
          Optional.of(Verdict.DEGRADED),
          OptionalInt.of(2));
    }

    /** Of the ohms it says nothing. */
    private static Suspect suspect(Joint joint, double probability) {
      OhmsInterval anything =
          new OhmsInterval(
              OptionalDouble.empty(),
              OptionalDouble.of(0),
              OptionalDouble.empty(),
              OhmsInterval.USUAL_COVERAGE);
      return new Suspect(List.of(joint), List.of(probability), probability, anything, 1);
    }
  }
}
