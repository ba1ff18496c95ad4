/**
 * What to read next so that the map is known: where to plug a load in, and at which boxes to read
 * on one walk round.
 *
 * <p>May import {@code ohmtrail.map} and what that may.
 *
 * <p>Part of the library.
 */
@NullMarked
package ohmtrail.map.plan;

import org.jspecify.annotations.NullMarked;
