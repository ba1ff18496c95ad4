/**
 * What the readings hold at most: answers by the very model and prior that cases were drawn from.
 *
 * <p>An {@link ohmtrail.practice.exact.Oracle} knows more than a user can state and takes as long
 * as it needs; it is there to hold a ranking against. It shares the circuit's solution with the
 * locator and nothing of its statistics. May import {@code practice}, {@code practice.answer} and
 * {@code predict} with what they may.
 *
 * <p>Inner, and no part of the library: it may change with any version.
 */
@NullMarked
package ohmtrail.practice.exact;

import org.jspecify.annotations.NullMarked;
