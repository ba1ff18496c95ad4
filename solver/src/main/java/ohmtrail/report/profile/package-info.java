/**
 * Voltages along the run as the tests' own meters would show them, at the point of a report: which
 * tests put the loads on alike, and what each box would show so.
 *
 * <p>May import {@code predict} and what it rests on.
 */
@NullMarked
package ohmtrail.report.profile;

import org.jspecify.annotations.NullMarked;
