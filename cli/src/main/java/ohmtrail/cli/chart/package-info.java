/**
 * Pictures: the voltages along a run beside what was read, and how well stated probabilities keep
 * their word.
 *
 * <p>A {@link ohmtrail.cli.chart.ProfileChart} or {@link ohmtrail.cli.chart.CalibrationChart} is
 * plain data that says everything the picture shows; {@link ohmtrail.cli.chart.ChartFile} turns
 * either into SVG or PNG. Axes, lines, marks and words are laid out once, on a {@link
 * ohmtrail.cli.chart.canvas.Canvas}, so that both formats show the same picture. A charting library
 * was weighed and left out: XChart 4.0.3 writes SVG only through an LGPL library or Batik and turns
 * every word into outlines that can be neither searched nor read aloud, draws symmetric error bars
 * only, does not return when a label at an axis has more than 20 characters, and has no place for
 * the run itself under the volts. What is needed of it, two straight scales and round ticks, is a
 * page of code.
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
