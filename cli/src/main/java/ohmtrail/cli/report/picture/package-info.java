/**
 * Charts of a report that stand nowhere else. Imports {@code chart.canvas}, {@code render} and the
 * solver.
 */
@NullMarked
package ohmtrail.cli.report.picture;

import org.jspecify.annotations.NullMarked;
