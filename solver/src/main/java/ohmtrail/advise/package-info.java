/**
 * What to do next: which reading settles the question soonest, which box to open, and what must not
 * be done on the way.
 *
 * <p>A {@link ohmtrail.advise.Choice} is a visit to a box with one or more readings, a box to open,
 * or an end of the search. The {@link ohmtrail.advise.Advisor} simulates the outcomes of each under
 * every hypothesis still alive, weighted by its probability, and ranks them by the minutes expected
 * until the joint is found, the choice's own among them. It counts on two visits, with a look into
 * a box before them or none; after these, boxes are opened in the order of probability per minute.
 *
 * <p>May import {@code locate} and what it rests on. It weighs no hypothesis itself: that is {@code
 * locate}'s; it prints nothing.
 *
 * <p>{@link ohmtrail.advise.Advice} and all that hangs on it are part of the library; the rest is
 * inner and may change.
 */
@NullMarked
package ohmtrail.advise;

import org.jspecify.annotations.NullMarked;
