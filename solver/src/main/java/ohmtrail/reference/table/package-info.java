/**
 * How the published tables are read: comma-separated values, and rows with named columns.
 *
 * <p>May import the Java platform only.
 *
 * <p>Inner, and no part of the library: it may change with any version.
 */
@NullMarked
package ohmtrail.reference.table;

import org.jspecify.annotations.NullMarked;
