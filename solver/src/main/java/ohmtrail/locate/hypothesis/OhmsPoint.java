package ohmtrail.locate.hypothesis;

/**
 * A quadrature node of the posterior of a joint's ohms: a stretch of them, drawn together at its
 * middle.
 *
 * @param ohms the middle of the stretch, in the logarithm; positive infinity for a fully open joint
 * @param share probability of the stretch, given the joint; all shares of a joint sum to one
 * @param logOhmsSigma standard deviation of the logarithm of the ohms within the stretch; 0 for an
 *     open joint
 */
public record OhmsPoint(double ohms, double share, double logOhmsSigma) {}
