/**
 * Pictures: the voltages along a run beside what was read, and how well stated probabilities keep
 * their word.
 *
 * <p>A {@link ohmtrail.cli.chart.ProfileChart} or {@link ohmtrail.cli.chart.CalibrationChart} is
 * plain data that says everything the picture shows; {@link ohmtrail.cli.chart.ChartFile} turns
 * either into SVG or PNG. XChart draws the calibration ({@link
 * ohmtrail.cli.chart.CalibrationPlot}). It has no place for the run itself under the volts, draws
 * symmetric error bars only, turns every word into outlines that can be neither searched nor read
 * aloud, and does not return when a label at an axis has more than 20 characters; so the profile is
 * laid out here, on a {@link ohmtrail.cli.chart.canvas.Canvas}, and both formats show the same
 * picture.
 *
 * <p>An <i>arrangement</i> is a way of putting loads on: the same loads at the same boxes, or one
 * load carried from box to box and read where it is plugged in. A <i>lane</i> is a stretch of the
 * run without a branch, as it is drawn.
 *
 * <p>May import {@code ohmtrail.cli.casefile} and the solver; nothing else of the program. Metres
 * and volts inside, the user's unit of length where the picture is drawn.
 */
@NullMarked
package ohmtrail.cli.chart;

import org.jspecify.annotations.NullMarked;
