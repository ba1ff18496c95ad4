package ohmtrail.advise.safety;

import ohmtrail.predict.Degradation;

/**
 * Why a test is ruled out.
 *
 * @param harm what it would do
 * @param worst the worst figure under any believable hypothesis, in the harm's unit
 * @param limit the most that a plan may come to
 * @param probability of all hypotheses under which the limit is passed
 * @param under the hypothesis of the worst figure
 */
public record Hazard(
    Harm harm, double worst, double limit, double probability, Degradation under) {}
