/**
 * What must not be done on the way: which cautions hold for a problem and its answer, what a step
 * brings a hand to, and whether the supply comes first.
 *
 * <p>May import {@code locate} and what it rests on. It says which caution holds and of what; the
 * words are those of who writes the answer.
 *
 * <p>Part of the library.
 */
@NullMarked
package ohmtrail.report.caution;

import org.jspecify.annotations.NullMarked;
