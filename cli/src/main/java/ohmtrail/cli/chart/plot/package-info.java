/**
 * Curves drawn by XChart: line families over a linear or a logarithmic axis, with lines of guidance
 * across. {@link ohmtrail.cli.chart.plot.CurveChart} is what is drawn, as data; {@link
 * ohmtrail.cli.chart.plot.PlotSheet} turns any plot of XChart into SVG or PNG.
 */
@NullMarked
package ohmtrail.cli.chart.plot;

import org.jspecify.annotations.NullMarked;
