package ohmtrail.locate.hypothesis;

import ohmtrail.reference.Assumption;
import ohmtrail.reference.Assumptions;

/**
 * The prior of the ohms added by a degraded joint: even in ln R between two bounds, with a share
 * for fully open.
 *
 * @param low the least, ohms
 * @param high the most short of open, ohms
 * @param logDensity natural logarithm of the density per unit of ln R
 * @param logOpen natural logarithm of the share of fully open
 */
public record OhmsPrior(double low, double high, double logDensity, double logOpen) {
  /** The one that is assumed. */
  public static OhmsPrior of(Assumptions assumptions) {
    double low = assumptions.value(Assumption.DEGRADED_OHMS_LOW);
    double high = assumptions.value(Assumption.DEGRADED_OHMS_HIGH);
    double open = assumptions.value(Assumption.OPEN_SHARE);
    return new OhmsPrior(low, high, Math.log((1 - open) / Math.log(high / low)), Math.log(open));
  }

  /** The length of the range in ln R. */
  public double logRange() {
    return Math.log(high / low);
  }

  /** Ohms within the range: at least the least, and open beyond the most. */
  public double bounded(double ohms) {
    return ohms > high ? Double.POSITIVE_INFINITY : Math.max(low, ohms);
  }

  /**
   * Laplace's approximation: logarithm of the prior mass under a peak.
   *
   * @param ohms where the peak is; may be infinite
   * @param curvature of the log likelihood along ln R there, not negative
   */
  public double logMass(double ohms, double curvature) {
    if (ohms > high) {
      return logOpen;
    }
    double width = curvature > 0 ? Math.sqrt(2 * Math.PI / curvature) : logRange();
    return logDensity + Math.log(Math.min(logRange(), width));
  }
}
