/**
 * How well a map explains the readings: a model of the run that has one resistance for each
 * conductor of each cable, fast enough to be asked for every map.
 *
 * <p>With loads on at boxes k the voltage at box j is V - sum of Z(j,k) I(k), Z(j,k) being the
 * source and what the ways from the panel to j and to k share; the currents follow from the same
 * equation at the loads themselves. So a map acts by the sets of cables on those ways and by
 * nothing else. Lengths, source, loads, supply, drift and gain are integrated out: the first three
 * by Laplace's approximation, the others, in which the readings are linear, by whitening.
 *
 * <p>May import {@code ohmtrail.map.known}, {@code ohmtrail.map.tree} and what stands before {@code
 * ohmtrail.locate}.
 */
@NullMarked
package ohmtrail.map.evidence;

import org.jspecify.annotations.NullMarked;
