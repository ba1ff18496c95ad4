/**
 * Who measured, when, where and with what: what a case file says beside the circuit and the
 * readings. Nothing of it changes an answer; a report shows it.
 *
 * <p>May import {@code casefile.text} and {@code casefile.words}.
 */
@NullMarked
package ohmtrail.cli.casefile.circumstances;

import org.jspecify.annotations.NullMarked;
