/**
 * A search in the wall, step by step, as a conversation.
 *
 * <p>A {@link ohmtrail.cli.walk.Dialogue} is a state: it asks something, and an answer leads to the
 * next one. The states are immutable and know of no terminal and no file; {@link
 * ohmtrail.cli.walk.Session} leads from one to the next and saves the case after each, {@link
 * ohmtrail.cli.terminal.Lines} is where answers come from.
 *
 * <p>May import {@code casefile}, {@code render} and the solver.
 */
@NullMarked
package ohmtrail.cli.walk;

import org.jspecify.annotations.NullMarked;
