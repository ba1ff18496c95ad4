/**
 * How well a ranking finds the degraded joint, on cases whose truth is known.
 *
 * <p>An {@link ohmtrail.practice.score.Answer} is what a method makes of a case; {@link
 * ohmtrail.practice.score.RuleOfThumb} and {@link ohmtrail.practice.score.Oracle} are two methods
 * to hold another one against: what people do with the readings, and what the readings hold. {@link
 * ohmtrail.practice.score.Scorer} asks a method on many cases; {@link
 * ohmtrail.practice.score.Score} is what comes of it.
 *
 * <p>May import {@code ohmtrail.practice}, {@code locate} and what they rest on.
 */
@NullMarked
package ohmtrail.practice.score;

import org.jspecify.annotations.NullMarked;
