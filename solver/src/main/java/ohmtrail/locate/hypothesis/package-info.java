/**
 * What may be true of a circuit: {@link ohmtrail.locate.hypothesis.Hypothesis} and its kinds, their
 * priors, and what is known of the ohms of a joint.
 *
 * <p>May import the evidence and what it rests on. Works out no prediction.
 */
@NullMarked
package ohmtrail.locate.hypothesis;

import org.jspecify.annotations.NullMarked;
