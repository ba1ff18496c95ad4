/**
 * The whole search as a game: from the complaint alone to the joint found, on a circuit that
 * answers what is asked. A {@link ohmtrail.practice.search.Searcher} decides each step; {@link
 * ohmtrail.practice.search.Game} counts the minutes, the boxes and what was done to the circuit
 * that must not be done.
 *
 * <p>May import {@code practice}, {@code advise} and what they rest on.
 *
 * <p>Inner, and no part of the library: it may change with any version.
 */
@NullMarked
package ohmtrail.practice.search;

import org.jspecify.annotations.NullMarked;
