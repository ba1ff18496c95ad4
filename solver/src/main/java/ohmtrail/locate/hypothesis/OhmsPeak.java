package ohmtrail.locate.hypothesis;

/**
 * A peak of the likelihood over the ohms of a joint.
 *
 * @param ohms where; may be infinite
 * @param curvature of the logarithm of the likelihood along ln R there, not negative
 */
public record OhmsPeak(double ohms, double curvature) {}
