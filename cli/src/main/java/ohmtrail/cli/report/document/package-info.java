/**
 * What a page of a report is made of, whatever it is written as. Imports nothing but a picture of
 * {@code chart.canvas}.
 */
@NullMarked
package ohmtrail.cli.report.document;

import org.jspecify.annotations.NullMarked;
