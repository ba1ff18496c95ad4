/**
 * The upper half of a case file: supply, breaker, cable and run, read into a circuit and written
 * from one; where it is not known what feeds every box, into what is known of the run beside it.
 *
 * <p>A {@link ohmtrail.cli.casefile.run.Run} is what could be told, even where the circuit could
 * not be put together, so that the lower half can still be held against the boxes.
 *
 * <p>May import {@code casefile.text}, {@code casefile.words} and the solver's {@code reference},
 * {@code circuit} and {@code map.known}.
 */
@NullMarked
package ohmtrail.cli.casefile.run;

import org.jspecify.annotations.NullMarked;
