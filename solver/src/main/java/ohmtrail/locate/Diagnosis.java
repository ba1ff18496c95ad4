package ohmtrail.locate;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import ohmtrail.predict.Degradation;
import ohmtrail.problem.Slip;
import ohmtrail.reference.Assumption;

/**
 * The answer.
 *
 * @param verdict what the readings say, all in all
 * @param probabilities of a healthy circuit, and of what is wrong with it
 * @param boxes every box with a joint, the most probable first
 * @param suspects the most probable first; each probability is that of a degraded joint in the set,
 *     so with several faults they sum to more than one
 * @param fit the most probable explanation
 * @param assumptions the assumptions that the method used, in the order of their table
 * @param slips the ways in which the problem may not be as it is stated, the most probable first;
 *     what is improbable is left out. Where one leads, readings and parameters are those of its
 *     explanation
 * @param support what the answer rests on
 * @param explained the problem as it most probably was; empty where that is as stated, or where its
 *     readings or boxes are not the same
 */
public record Diagnosis(
    Verdict verdict,
    Probabilities probabilities,
    List<RankedBox> boxes,
    List<Suspect> suspects,
    BestFit fit,
    List<Assumption> assumptions,
    List<SlipBelief> slips,
    Support support,
    Optional<Explained> explained) {
  private static final double MORE_THAN_NOT = 0.5;
  private static final double RATHER_SURE = 0.8;

  /** An answer on a problem that is as it is stated. */
  public Diagnosis(
      Verdict verdict,
      Probabilities probabilities,
      List<RankedBox> boxes,
      List<Suspect> suspects,
      BestFit fit,
      List<Assumption> assumptions) {
    this(
        verdict,
        probabilities,
        boxes,
        suspects,
        fit,
        assumptions,
        List.of(),
        Support.NONE,
        Optional.empty());
  }

  /** Copies the lists. */
  public Diagnosis {
    boxes = List.copyOf(boxes);
    suspects = List.copyOf(suspects);
    assumptions = List.copyOf(assumptions);
    slips = List.copyOf(slips);
  }

  /** Probability of a healthy circuit. */
  public double healthyProbability() {
    return probabilities.healthy();
  }

  /** Probability that nothing on offer fits. */
  public double unexplainedProbability() {
    return probabilities.unexplained();
  }

  /** Probability that exactly one joint is degraded. */
  public double oneProbability() {
    return probabilities.one();
  }

  /** Probability that more than one joint is degraded. */
  public double severalProbability() {
    return probabilities.several();
  }

  /** Probability that the degraded joint's ohms differ between small and large currents. */
  public double unstableProbability() {
    return probabilities.unstable();
  }

  /** Every reading beside the fit, in the order of the survey. */
  public List<FittedReading> readings() {
    return fit.readings();
  }

  /** Every parameter with its fitted value. */
  public List<FittedParameter> parameters() {
    return fit.parameters();
  }

  /** The degraded joints of the most probable explanation, with their ohms. */
  public List<Degradation> best() {
    return fit.degradations();
  }

  /** u of every parameter at the fit of the most probable explanation. */
  public List<Double> bestPoint() {
    return fit.point();
  }

  /** The same with what it rests on. */
  public Diagnosis on(Support found) {
    return with(verdict, fit, found);
  }

  /** The same with other figures beside its readings. */
  public Diagnosis withReadings(List<FittedReading> others) {
    return with(verdict, fit.with(others), support);
  }

  /** The same with another verdict. */
  public Diagnosis withVerdict(Verdict other) {
    return with(other, fit, support);
  }

  /** The same at the fit of the problem as it most probably was. */
  public Diagnosis asExplained() {
    return explained.map(as -> with(verdict, fit.at(as), support)).orElse(this);
  }

  private Diagnosis with(Verdict otherVerdict, BestFit otherFit, Support otherSupport) {
    return new Diagnosis(
        otherVerdict,
        probabilities,
        boxes,
        suspects,
        otherFit,
        assumptions,
        slips,
        otherSupport,
        explained);
  }

  /**
   * Whether a slip was probably made that leaves the readings nothing to say of the joints: neither
   * a suspect nor a sound circuit is rather sure then.
   */
  public boolean isLeftOpen() {
    double suspect = suspects.isEmpty() ? 0 : suspects.get(0).probability();
    return likelySlip().isPresent() && Math.max(probabilities.healthy(), suspect) < RATHER_SURE;
  }

  /**
   * The slip that was more probably made than not, the likeliest, one reading apart; empty where
   * none was.
   */
  public Optional<SlipBelief> likelySlip() {
    return slips.stream()
        .filter(slip -> !(slip.slip() instanceof Slip.OfReading))
        .findFirst()
        .filter(slip -> slip.ofItsKind() > MORE_THAN_NOT);
  }

  /**
   * What a reading that is in doubt may be instead, the likeliest.
   *
   * @param reading its place in the survey, from 0
   */
  public Optional<SlipBelief> instead(int reading) {
    return slips.stream()
        .filter(slip -> slip.slip() instanceof Slip.OfReading of && of.reading() == reading)
        .findFirst();
  }

  /** How many joints are most probably degraded; none unless the verdict says that any is. */
  public int degradedJoints() {
    if (verdict != Verdict.DEGRADED) {
      return 0;
    }
    return probabilities.several() > probabilities.one()
        ? (int) best().stream().map(Degradation::joint).distinct().count()
        : 1;
  }

  /** {@link #bestPoint} as a predictor takes it; a new array each time. */
  public double[] bestPointArray() {
    return bestPoint().stream().mapToDouble(Double::doubleValue).toArray();
  }

  /** The probability that a box holds a degraded joint; 0 for one without a joint. */
  public double probabilityOf(String box) {
    return boxes.stream()
        .filter(ranked -> ranked.box().equals(box))
        .mapToDouble(RankedBox::probability)
        .findFirst()
        .orElse(0);
  }

  /** The joints of the most probable explanation, each once. */
  public List<String> bestJoints() {
    return best().stream().map(Degradation::joint).distinct().toList();
  }

  /** The first suspect; or, where several joints are bad at once, the one that holds each. */
  public List<Suspect> badSuspects() {
    if (degradedJoints() < 2) {
      return suspects.stream().limit(1).toList();
    }
    return bestJoints().stream().flatMap(joint -> suspectOf(joint).stream()).distinct().toList();
  }

  /**
   * The suspect that holds a joint, with the largest part of the joint's probability.
   *
   * @param joint its id
   */
  public Optional<Suspect> suspectOf(String joint) {
    return suspects.stream()
        .filter(suspect -> suspect.probabilityOf(joint) > 0)
        .max(Comparator.comparingDouble(suspect -> suspect.probabilityOf(joint)));
  }
}
