/**
 * Reads a folder of closed cases, on all processors; what cannot be read is named and passed over.
 * Imports {@code casefile}; what comes out is the solver's.
 */
@NullMarked
package ohmtrail.cli.casebook;

import org.jspecify.annotations.NullMarked;
