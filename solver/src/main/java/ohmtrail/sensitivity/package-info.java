/**
 * How far an answer hangs on what it was given: every assumption over a stated range, one at a time
 * and all together; every reading left out; every rival.
 *
 * <p>A <i>conclusion</i> is what somebody takes away from an answer: verdict, box, conductor, ohms.
 * Each variation is a problem of its own, answered anew from the beginning as any other is. May
 * import {@code locate}, {@code slip} and what they rest on.
 *
 * <p>Part of the library.
 */
@NullMarked
package ohmtrail.sensitivity;

import org.jspecify.annotations.NullMarked;
