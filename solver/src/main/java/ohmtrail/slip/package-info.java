/**
 * Ways in which a problem may not be as it is stated, weighed as hypotheses.
 *
 * <p>A {@link ohmtrail.problem.Slip} is what somebody got wrong; under it there is another problem,
 * with a prior. {@link ohmtrail.slip.AveragedLocator} locates the stated problem, looks which slips
 * are worth it ({@code Screening}), locates the problems under those, and averages. May import
 * {@code locate} and what it may; nothing of how the locator works.
 */
@NullMarked
package ohmtrail.slip;

import org.jspecify.annotations.NullMarked;
