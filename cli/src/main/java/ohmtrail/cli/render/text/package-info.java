/**
 * Answers as text for a terminal: eighty columns, no colour, the same words for the same case.
 *
 * <p>May import {@code ohmtrail.cli.render}, {@code casefile} and the solver.
 */
@NullMarked
package ohmtrail.cli.render.text;

import org.jspecify.annotations.NullMarked;
