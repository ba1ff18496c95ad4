/**
 * What the program hands out to whoever has nothing but the program: the schemas of its files and
 * documents, and the example cases. Imports {@code file} for writing them whole.
 */
@NullMarked
package ohmtrail.cli.install;

import org.jspecify.annotations.NullMarked;
