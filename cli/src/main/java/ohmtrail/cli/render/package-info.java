/**
 * What the answers say, whatever form they take: the first sentence, the heat, the cautions, and
 * what is missing in a case. They are made of {@code words}; {@code advice} says what to do next.
 * The forms themselves stand in {@code text}, {@code json} and {@code screen}.
 *
 * <p>May import {@code casefile} and the solver; no commands, no charts, no command-line library.
 */
@NullMarked
package ohmtrail.cli.render;

import org.jspecify.annotations.NullMarked;
