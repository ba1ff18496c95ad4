/**
 * What is in the walls: supply, boxes, cables and the joints that follow from them. Immutable,
 * validated when built.
 *
 * <p>A {@link ohmtrail.circuit.Circuit} is the run fed from one breaker. A {@link
 * ohmtrail.circuit.Box} is a place that can be opened; a {@link ohmtrail.circuit.Cable} joins two
 * of them; a {@link ohmtrail.circuit.Joint} is one connection of one conductor inside a box, and
 * the thing that goes bad. Joints are not listed by anybody: they follow from how the boxes are
 * wired.
 *
 * <p>May import {@code ohmtrail.reference}; knows nothing of readings, networks or files.
 *
 * <p>Part of the library.
 */
@NullMarked
package ohmtrail.circuit;

import org.jspecify.annotations.NullMarked;
