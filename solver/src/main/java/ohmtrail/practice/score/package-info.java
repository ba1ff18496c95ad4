/**
 * How well a ranking or a search finds the degraded joint, on cases whose truth is known.
 *
 * <p>{@link ohmtrail.practice.score.Scorer} asks a method on many cases, the rule of thumb and,
 * where there is one, the exact calculation; {@link ohmtrail.practice.score.Score} is what comes of
 * it. {@link ohmtrail.practice.score.GameScorer} plays the whole search in every way that there is;
 * {@link ohmtrail.practice.score.GameScore} is what comes of that. May import {@code practice},
 * {@code practice.answer}, {@code practice.exact}, {@code practice.search} and what they may.
 *
 * <p>Inner, and no part of the library: it may change with any version.
 */
@NullMarked
package ohmtrail.practice.score;

import org.jspecify.annotations.NullMarked;
