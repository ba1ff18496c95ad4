/**
 * A report that stands alone: what it says, in the order in which it says it, as a document that
 * {@code .html} and {@code .pdf} write. Every figure is the solver's; nothing is worked out here.
 *
 * <p>May import {@code casefile}, {@code render} and {@code chart}.
 */
@NullMarked
package ohmtrail.cli.report;

import org.jspecify.annotations.NullMarked;
