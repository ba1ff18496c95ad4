/**
 * How exactly the inference works: every tuning constant with its unit and its reason, in one
 * value. What decides an answer (priors, tolerances) is not here: that is {@link
 * ohmtrail.reference.Assumptions}.
 *
 * <p>Imports nothing of Ohmtrail.
 */
@NullMarked
package ohmtrail.locate.settings;

import org.jspecify.annotations.NullMarked;
