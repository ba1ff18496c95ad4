/**
 * Answers that a person takes in at one glance: one screen of {@value
 * ohmtrail.cli.render.screen.Screen#LINES} lines, what matters least left out where it is full.
 *
 * <p>May import {@code render} and {@code render.text}. Says nothing that these do not say too.
 */
@NullMarked
package ohmtrail.cli.render.screen;

import org.jspecify.annotations.NullMarked;
