/**
 * A sheet to draw on: lines, shapes and words in picture points, as SVG or as pixels.
 *
 * <p>A drawing is made once, against {@link ohmtrail.cli.chart.canvas.Canvas}, and comes out the
 * same in both formats; {@link ohmtrail.cli.chart.canvas.SvgCanvas} keeps words as words, {@link
 * ohmtrail.cli.chart.canvas.RasterCanvas} is the one class of the program that touches AWT. X grows
 * to the right and y downward.
 *
 * <p>Imports nothing of the project: it knows neither circuits nor volts.
 */
@NullMarked
package ohmtrail.cli.chart.canvas;

import org.jspecify.annotations.NullMarked;
