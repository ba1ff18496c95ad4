package ohmtrail.locate;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import ohmtrail.circuit.Circuit;
import ohmtrail.predict.Degradation;

/**
 * What is believed after the readings, as far as further readings can be planned on it. The
 * probabilities of the healthy circuit, of the joints and of the several joints sum to one less
 * what was too improbable to be followed and what nothing on offer explains, of which a thousandth
 * is left to the hypotheses in any case: however ill they explain the readings, one does it best.
 *
 * @param diagnosis the answer in full, in which what nothing on offer explains has its share
 * @param healthyProbability of a sound circuit
 * @param joints every single joint that is still alive, in the order of the circuit
 * @param several the most probable set of joints degraded at once, where any is likely
 * @param logMarginalLikelihood natural logarithm of the density of all that was read and seen,
 *     summed over every hypothesis with its prior: what one statement of the circuit is worth
 *     against another by the same readings
 * @param wired the circuit as it most probably is wired, where its boxes are in another order than
 *     stated; what is read next is to be expected of that
 */
public record Posterior(
    Diagnosis diagnosis,
    double healthyProbability,
    List<JointBelief> joints,
    Optional<Several> several,
    double logMarginalLikelihood,
    Optional<Circuit> wired) {
  /** Of a circuit that is wired as it is stated. */
  public Posterior(
      Diagnosis diagnosis,
      double healthyProbability,
      List<JointBelief> joints,
      Optional<Several> several,
      double logMarginalLikelihood) {
    this(diagnosis, healthyProbability, joints, several, logMarginalLikelihood, Optional.empty());
  }

  /**
   * Several joints degraded at once, or one whose ohms depend on the current.
   *
   * @param degradations the joints with their fitted ohms
   * @param probability of this kind of explanation
   * @param places the boxes, and {@link ohmtrail.survey.Finding#SUPPLY}, each with the probability
   *     that it holds a degraded joint given that there are several: all that may stand in the
   *     place of one of these joints counted, so that they sum to more than one
   */
  public record Several(
      List<Degradation> degradations, double probability, Map<String, Double> places) {
    /** Copies list and map. */
    public Several {
      degradations = List.copyOf(degradations);
      places = Map.copyOf(places);
    }
  }

  /** The same with what the answer rests on. */
  public Posterior on(Support support) {
    return new Posterior(
        diagnosis.on(support), healthyProbability, joints, several, logMarginalLikelihood, wired);
  }

  /** Copies the list. */
  public Posterior {
    joints = List.copyOf(joints);
  }
}
