/**
 * One hypothesis at a time: its best fit by nonlinear least squares, the model linearised there,
 * and its likelihood as a function of the ohms.
 *
 * <p>May import hypotheses, the evidence and what they rest on. Compares no hypotheses.
 */
@NullMarked
package ohmtrail.locate.fit;

import org.jspecify.annotations.NullMarked;
