/**
 * Circuit, degraded joints and test in; what each meter would show, and how that depends on
 * everything known only roughly, out.
 *
 * <p>{@link ohmtrail.predict.Wiring} lays a circuit out as a network. {@link
 * ohmtrail.predict.SurveyModel} attaches the loads and the meter of each reading to it. {@link
 * ohmtrail.predict.JointSweep} adds ohms in one joint, from nothing to open, without solving again.
 * A {@link ohmtrail.predict.Parameter} is one thing known only roughly, with its tolerance;
 * parameters are handled as standard normal numbers u, each scaling its quantity by exp(sigma u).
 *
 * <p>May import {@code survey}, {@code circuit}, {@code network} and {@code reference}; knows
 * nothing of what is likely.
 *
 * <p>{@link ohmtrail.predict.Degradation} is part of the library; the rest is inner and may change.
 */
@NullMarked
package ohmtrail.predict;

import org.jspecify.annotations.NullMarked;
