/**
 * Published tables and constants, and the method's own assumptions, each with its source.
 *
 * <p>What is here: conductor sizes and their resistance at a temperature, the breaker usually found
 * on a conductor, guidance on voltage drop, and every prior and tolerance the method takes for
 * granted. The figures live as CSV files in the project's {@code shared/tables}, where each file
 * names its source; this package reads them from the class path, when first needed, and gives them
 * units.
 *
 * <p>A table gives what its source lists and nothing between: no value is interpolated or
 * extrapolated, and what is not listed is absent or refused.
 *
 * <p>May import the Java platform and {@code reference.table}, and nothing else of this project:
 * every other package may lean on this one.
 *
 * <p>Part of the library.
 */
@NullMarked
package ohmtrail.reference;

import org.jspecify.annotations.NullMarked;
