package ohmtrail.practice.exact;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import ohmtrail.circuit.Box;
import ohmtrail.circuit.Joint;
import ohmtrail.locate.RankedBox;
import ohmtrail.locate.Suspect;
import ohmtrail.locate.Verdict;
import ohmtrail.practice.FaultKind;
import ohmtrail.practice.PracticeCase;
import ohmtrail.practice.answer.Answer;

/**
 * The probabilities by the very model and prior that the cases were drawn from. It knows the range
 * of the ohms and that no reading is wrong; it weighs every joint by itself, over as many ohms as
 * it takes, solves the circuit anew wherever the unknowns move, and mends by sampling what the
 * unknowns differ from a normal distribution. So it is slow, and no method can do better on
 * average.
 *
 * <p>It is exact for faults of one joint at most and for cases without disturbance, but for the
 * missing sign of readings near 0 V, and for the mending, which is done at the most probable ohms
 * of each joint and leaves out joints of next to no probability.
 */
final class OneJointOracle implements Oracle {
  private static final double MORE_THAN_NOT = 0.5;

  /** Joints of less are not worth mending. */
  private static final double WORTH_MENDING = 0.01;

  private static final int SAMPLE_PAIRS = 60;

  /** Any number does; a fixed one gives the same answer every time. */
  private static final long SAMPLING_SEED = 1;

  private final FaultKind faults;

  /**
   * Prepares.
   *
   * @param faults what the cases are drawn from
   * @throws IllegalArgumentException when several joints are degraded at a time
   */
  OneJointOracle(FaultKind faults) {
    if (faults.joints() != 1) {
      throw new IllegalArgumentException(
          "Joints degraded at a time ("
              + faults.joints()
              + ") must be 1\nMaybe score the method beside the rule of thumb alone.");
    }
    this.faults = faults;
  }

  /** A hypothesis that can be mended. */
  private interface Mendable {
    double correction(ImportanceSampling sampling);
  }

  /** The evidence of a joint, or of none, with its prior. */
  private record Weighed(Optional<OhmsPosterior> joint, double logWeight, Mendable mendable) {
    Weighed mended(ImportanceSampling sampling) {
      return new Weighed(joint, logWeight + mendable.correction(sampling), mendable);
    }
  }

  @Override
  public Answer answer(PracticeCase practiceCase) {
    OracleFit fit = new OracleFit(practiceCase);
    List<Weighed> weighed = new ArrayList<>();
    if (faults.healthyShare() > 0) {
      weighed.add(weighHealthy(fit));
    }
    if (faults.healthyShare() < 1) {
      Map<Joint, Double> prior = faults.prior(practiceCase.circuit(), practiceCase.assumptions());
      prior.forEach((joint, share) -> weighed.add(weigh(fit, joint, share)));
    }
    double rough = logTotal(weighed);
    ImportanceSampling sampling = new ImportanceSampling(fit, SAMPLE_PAIRS, SAMPLING_SEED);
    weighed.replaceAll(
        each -> each.logWeight() - rough > Math.log(WORTH_MENDING) ? each.mended(sampling) : each);
    return answer(practiceCase, weighed);
  }

  private Weighed weighHealthy(OracleFit fit) {
    OracleFit.Mode mode = fit.mode(fit::solveAsPlaced, fit.solveAsPlaced(fit.nominal()), 0);
    return new Weighed(
        Optional.empty(),
        Math.log(faults.healthyShare()) + mode.logEvidence(),
        sampling ->
            sampling.around(mode, fit::solveAsPlaced, 0).logEvidence() - mode.logEvidence());
  }

  private Weighed weigh(OracleFit fit, Joint joint, double prior) {
    OhmsPosterior posterior = new OhmsPosterior(fit, joint, faults);
    double logPrior = Math.log((1 - faults.healthyShare()) * prior);
    return new Weighed(
        Optional.of(posterior), logPrior + posterior.logEvidence(), posterior::correction);
  }

  private static double logTotal(List<Weighed> weighed) {
    return LogIntegral.logSum(weighed.stream().map(Weighed::logWeight).toList());
  }

  private static Answer answer(PracticeCase practiceCase, List<Weighed> weighed) {
    double total = logTotal(weighed);
    Map<String, Double> boxes = new LinkedHashMap<>();
    practiceCase.circuit().boxes().stream().map(Box::name).forEach(box -> boxes.put(box, 0.0));
    List<Suspect> suspects = new ArrayList<>();
    double healthy = 0;
    for (Weighed each : weighed) {
      double probability = Math.exp(each.logWeight() - total);
      if (each.joint().isPresent()) {
        OhmsPosterior posterior = each.joint().get();
        boxes.merge(posterior.joint().box(), probability, Double::sum);
        suspects.add(suspect(posterior, probability));
      } else {
        healthy = probability;
      }
    }
    suspects.sort(Comparator.comparingDouble(Suspect::probability).reversed());
    List<RankedBox> stated = new ArrayList<>();
    boxes.forEach((box, probability) -> stated.add(new RankedBox(box, probability)));
    return new Answer(
        Answer.byProbability(stated, practiceCase.circuit()),
        stated,
        suspects,
        List.of(),
        Optional.of(healthy > MORE_THAN_NOT ? Verdict.HEALTHY : Verdict.DEGRADED),
        OptionalInt.of(healthy > MORE_THAN_NOT ? 0 : 1));
  }

  private static Suspect suspect(OhmsPosterior posterior, double probability) {
    return new Suspect(
        List.of(posterior.joint()), List.of(probability), probability, posterior.interval(), 1);
  }
}
