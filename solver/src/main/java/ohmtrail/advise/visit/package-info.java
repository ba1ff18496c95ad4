/**
 * The readings that could be taken next with what is at hand, whatever they are worth.
 *
 * <p>Each {@link ohmtrail.advise.visit.VisitKind} knows one way to read and lists what it could
 * read at a box in one visit. May import {@code survey} and what it rests on; knows neither
 * probabilities nor minutes.
 *
 * <p>Inner, and no part of the library: it may change with any version.
 */
@NullMarked
package ohmtrail.advise.visit;

import org.jspecify.annotations.NullMarked;
