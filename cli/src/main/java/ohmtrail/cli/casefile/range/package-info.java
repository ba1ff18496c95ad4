/**
 * Reads what a sweep varies, as a person writes it on the command line, in the words and units of
 * the case file. Imports {@code casefile} and {@code names}; what comes out is the solver's.
 */
@NullMarked
package ohmtrail.cli.casefile.range;

import org.jspecify.annotations.NullMarked;
