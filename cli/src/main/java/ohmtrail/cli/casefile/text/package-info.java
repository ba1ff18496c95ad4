/**
 * Files as texts with places: the tree of a YAML document, the cells of a table, words, and the
 * notes on what is wrong where.
 *
 * <p>A {@link ohmtrail.cli.casefile.text.Node} is a piece of YAML with its {@link
 * ohmtrail.cli.casefile.text.Place}; a cell of a table is one too. {@link
 * ohmtrail.cli.casefile.text.Problems} gathers what is wrong, whoever finds it.
 *
 * <p>May import the Java platform and, alone in the program, the YAML library. Knows nothing of
 * circuits.
 */
@NullMarked
package ohmtrail.cli.casefile.text;

import org.jspecify.annotations.NullMarked;
