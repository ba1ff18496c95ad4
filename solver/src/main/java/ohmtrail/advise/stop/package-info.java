/**
 * When a search in the run ends without a joint: because the circuit is sound, or because what is
 * wrong lies before the panel. Nobody else decides it.
 *
 * <p>May import {@code locate} and what it rests on.
 */
@NullMarked
package ohmtrail.advise.stop;

import org.jspecify.annotations.NullMarked;
