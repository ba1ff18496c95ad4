/**
 * What is known of a run whose cables nobody has seen: its boxes, what can be said of the feeder of
 * each, and one way in which they may hang together, a {@link ohmtrail.map.known.RunMap}.
 *
 * <p>Words: the <i>feeder</i> of a box is the box at the other end of the cable that brings the
 * supply to it; a <i>map</i> names the feeder of every box, so it is a tree with the panel as its
 * root.
 *
 * <p>May import {@code ohmtrail.circuit}, {@code ohmtrail.survey}, {@code ohmtrail.problem} and
 * {@code ohmtrail.reference}; works nothing out.
 *
 * <p>Part of the library.
 */
@NullMarked
package ohmtrail.map.known;

import org.jspecify.annotations.NullMarked;
