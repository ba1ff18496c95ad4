/**
 * The person at the other end: {@link ohmtrail.cli.terminal.Lines} is where answers come from,
 * {@link ohmtrail.cli.terminal.Progress} how far a long task is.
 *
 * <p>May import nothing of the program. No other package knows the library that edits lines.
 */
@NullMarked
package ohmtrail.cli.terminal;

import org.jspecify.annotations.NullMarked;
