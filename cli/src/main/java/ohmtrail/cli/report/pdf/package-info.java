/**
 * A document as PDF/A-2 with tags. Alone in knowing the library that writes PDF. Imports {@code
 * report.document}.
 */
@NullMarked
package ohmtrail.cli.report.pdf;

import org.jspecify.annotations.NullMarked;
