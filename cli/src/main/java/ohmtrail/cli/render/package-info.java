/**
 * What the answers say, whatever form they take: the first sentence, the heat, the cautions, what
 * is missing in a case, and how numbers and the words of the supply's region are written. The forms
 * themselves stand in {@code text} and {@code json}. {@link ohmtrail.cli.render.WholeFile} puts an
 * answer into a file, whole or not at all.
 *
 * <p>May import {@code casefile} and the solver; no commands, no charts, no command-line library.
 */
@NullMarked
package ohmtrail.cli.render;

import org.jspecify.annotations.NullMarked;
