/**
 * From readings to a joint: hypotheses, the fit of each, and their probabilities.
 *
 * <p>A hypothesis is a healthy circuit, one degraded joint, or that nothing on offer fits. Each is
 * weighed by its evidence: the likelihood of the readings, integrated over the added ohms and over
 * everything known only roughly, times its prior. A {@link ohmtrail.locate.Suspect} is a joint, or
 * a set of joints that the readings cannot tell apart.
 *
 * <p>May import {@code predict} and what it rests on; there is no rule about wiring here, only the
 * network and the evidence.
 */
@NullMarked
package ohmtrail.locate;

import org.jspecify.annotations.NullMarked;
