/**
 * What happens at one box while something is varied over a range, everything else as stated: the
 * curves that voltage drop is taught with. {@link ohmtrail.report.sweep.Swept} is what can be
 * varied, {@link ohmtrail.report.sweep.Sweep} the figures.
 *
 * <p>May import what {@code report} may. Part of the library.
 */
@NullMarked
package ohmtrail.report.sweep;

import org.jspecify.annotations.NullMarked;
