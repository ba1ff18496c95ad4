/**
 * What a method makes of a practice case, and two methods: the locator and what people do without
 * one.
 *
 * <p>An {@link ohmtrail.practice.answer.Answer} is an order of boxes with what was said of them;
 * {@link ohmtrail.practice.answer.RuleOfThumb} gives one by the largest step of the loaded voltage.
 * May import {@code practice}, {@code locate} and what they may.
 *
 * <p>Inner, and no part of the library: it may change with any version.
 */
@NullMarked
package ohmtrail.practice.answer;

import org.jspecify.annotations.NullMarked;
