/**
 * How well a ranking finds the degraded joint, on cases whose truth is known.
 *
 * <p>{@link ohmtrail.practice.score.Scorer} asks a method on many cases, the rule of thumb and,
 * where there is one, the exact calculation; {@link ohmtrail.practice.score.Score} is what comes of
 * it. May import {@code practice}, {@code practice.answer}, {@code practice.exact} and what they
 * may.
 */
@NullMarked
package ohmtrail.practice.score;

import org.jspecify.annotations.NullMarked;
