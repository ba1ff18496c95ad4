/**
 * The words that every answer is made of: how numbers and ohms are written, what conductors are
 * called in the supply's region, how a joint, a reading and the work at a box are named.
 *
 * <p>May import the solver and {@code casefile}; no other package of {@code render}.
 */
@NullMarked
package ohmtrail.cli.render.words;

import org.jspecify.annotations.NullMarked;
