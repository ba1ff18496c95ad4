package ohmtrail.locate;

import ohmtrail.circuit.Joint;
import ohmtrail.predict.JointResponse;

/**
 * The quickest look at a joint: the ohms at which the readings come nearest to it, measured with
 * the covariance of the healthy circuit. Good enough to start from, and to set aside what is far
 * off.
 *
 * @param joint the joint
 * @param response its readings over the ohms
 * @param ohms the best ohms of a coarse sweep; may be infinite
 * @param misfit the squared distance there, one reading called wrong where that pays
 */
record CoarseLook(Joint joint, JointResponse response, double ohms, double misfit) {
  /**
   * The readings move over about a decade of ohms: a step of one, and half a one around the best,
   * find every valley.
   */
  private static final double DECADE = 10;

  private static final double HALF_DECADE = Math.sqrt(DECADE);

  /**
   * What it costs, in squared standard deviations, to call a reading wrong while looking for a
   * start.
   */
  private static final double WRONG_READING_COST = 22;

  /**
   * The healthy covariance knows nothing of how strongly a degraded joint makes readings depend on
   * the load's true power. That can raise the misfit of the right joint several times over, never
   * this much.
   */
  private static final double FAR_OFF_RATIO = 10;

  private static final double FAR_OFF_MARGIN = 200;

  /**
   * Whether the joint is too far from the readings to be worth a closer look, given the nearest
   * one.
   */
  boolean isFarOff(double nearest) {
    return misfit > FAR_OFF_RATIO * nearest + FAR_OFF_MARGIN;
  }

  /** Looks at joints with one set of buffers. */
  static final class Looker {
    private final Observations observations;
    private final FrozenCovariance frozen;
    private final OhmsCurve.Prior prior;
    private final double[] shift;
    private final double[] residual;

    /**
     * Prepares.
     *
     * @param shift what the parameters contribute where the model was linearised: J u, one per
     *     reading
     */
    Looker(
        Observations observations, FrozenCovariance frozen, OhmsCurve.Prior prior, double[] shift) {
      this.shift = shift.clone();
      this.observations = observations;
      this.frozen = frozen;
      this.prior = prior;
      this.residual = new double[observations.count()];
    }

    CoarseLook look(Joint joint, JointResponse response) {
      double best = misfit(response, Double.POSITIVE_INFINITY);
      double bestOhms = Double.POSITIVE_INFINITY;
      for (double ohms = prior.low(); ohms <= prior.high(); ohms *= DECADE) {
        double misfit = misfit(response, ohms);
        if (misfit < best) {
          best = misfit;
          bestOhms = ohms;
        }
      }
      double middle = Double.isFinite(bestOhms) ? bestOhms : prior.high();
      for (double ohms : new double[] {middle / HALF_DECADE, middle * HALF_DECADE}) {
        double misfit = ohms < prior.low() ? Double.POSITIVE_INFINITY : misfit(response, ohms);
        if (misfit < best) {
          best = misfit;
          bestOhms = ohms;
        }
      }
      return new CoarseLook(joint, response, bestOhms, best);
    }

    private double misfit(JointResponse response, double ohms) {
      response.volts(ohms, residual);
      for (int r = 0; r < residual.length; r++) {
        residual[r] = observations.volts(r) - residual[r] + shift[r];
      }
      return frozen.misfit(residual, WRONG_READING_COST);
    }
  }
}
