/**
 * The words, keys, units and limits that a case file knows, and how its numbers are read and
 * written.
 *
 * <p>May import {@code casefile.text} and the solver's {@code reference} and {@code circuit}. Puts
 * nothing together: what the words make of a circuit stands in {@code run} and {@code survey}.
 */
@NullMarked
package ohmtrail.cli.casefile.words;

import org.jspecify.annotations.NullMarked;
