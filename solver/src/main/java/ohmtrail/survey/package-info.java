/**
 * What was measured: meters, loads, tests and readings, and how far each number can be trusted.
 *
 * <p>A {@link ohmtrail.survey.Test} is one moment: a set of loads on, and one or more readings
 * taken then. A {@link ohmtrail.survey.Reading} is the number a meter showed between two conductors
 * at one box. Readings of one test share the supply voltage of that moment; readings of one meter
 * share its gain.
 *
 * <p>May import {@code ohmtrail.circuit} and {@code ohmtrail.reference}; predicts nothing.
 *
 * <p>Part of the library.
 */
@NullMarked
package ohmtrail.survey;

import org.jspecify.annotations.NullMarked;
