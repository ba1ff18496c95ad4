/**
 * Maps as labelled rooted trees: which are possible, how many there are, how likely each is before
 * any reading, and which lie one step apart.
 *
 * <p>The panel is node 0, the boxes are nodes 1 and on in the order of the run, hidden ones behind
 * them; where an outlet may be foreign the last node stands for another circuit and hangs on the
 * panel.
 *
 * <p>May import {@code ohmtrail.map.known}, {@code ohmtrail.circuit} and {@code
 * ohmtrail.reference}; knows no reading.
 */
@NullMarked
package ohmtrail.map.tree;

import org.jspecify.annotations.NullMarked;
