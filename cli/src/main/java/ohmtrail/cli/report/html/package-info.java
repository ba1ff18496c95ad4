/**
 * A document as one HTML file without script and without anything from outside. Imports {@code
 * report.document}.
 */
@NullMarked
package ohmtrail.cli.report.html;

import org.jspecify.annotations.NullMarked;
