/**
 * What a case file says of what feeds a box, short of a cable: read, written, and put into a text
 * where it is settled.
 *
 * <p>May import {@code casefile.text}, {@code casefile.words} and the solver's {@code map.known}.
 */
@NullMarked
package ohmtrail.cli.casefile.feeder;

import org.jspecify.annotations.NullMarked;
