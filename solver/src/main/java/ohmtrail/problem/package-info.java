/**
 * What is asked: a circuit, what was measured on it, and what is assumed where nothing was stated.
 *
 * <p>The three travel together through everything that predicts, locates or advises.
 *
 * <p>May import {@code ohmtrail.circuit}, {@code ohmtrail.survey} and {@code ohmtrail.reference};
 * works nothing out.
 *
 * <p>Part of the library.
 */
@NullMarked
package ohmtrail.problem;

import org.jspecify.annotations.NullMarked;
