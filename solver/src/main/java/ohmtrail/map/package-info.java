/**
 * Which box feeds which: the posterior over the maps of a run whose cables nobody has seen.
 *
 * <p>{@code MapLocator} takes a {@link ohmtrail.map.known.MapProblem} and answers with a {@link
 * ohmtrail.map.MapReport}: the maps with their probabilities, the feeder of every box, estimated
 * lengths, what reads alike, what is not on this circuit, and where a joint may be bad whichever
 * map is right.
 *
 * <p>May import what stands before {@code ohmtrail.report}: {@code ohmtrail.locate} and {@code
 * ohmtrail.slip} among it.
 *
 * <p>Part of the library.
 */
@NullMarked
package ohmtrail.map;

import org.jspecify.annotations.NullMarked;
