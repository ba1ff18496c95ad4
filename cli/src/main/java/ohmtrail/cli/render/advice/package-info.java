/**
 * What an advice says: the visit to make next, what may not be done and why, and the box to open.
 *
 * <p>May import {@code render.words} and the solver.
 */
@NullMarked
package ohmtrail.cli.render.advice;

import org.jspecify.annotations.NullMarked;
