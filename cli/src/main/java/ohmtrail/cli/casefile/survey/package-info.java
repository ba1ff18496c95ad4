/**
 * The lower half of a case file: equipment, tests and the table of readings, read into a survey and
 * written from one.
 *
 * <p>May import {@code casefile.text}, {@code casefile.words}, {@code casefile.run}, {@code
 * casefile.equipment} and the solver's {@code circuit} and {@code survey}.
 */
@NullMarked
package ohmtrail.cli.casefile.survey;

import org.jspecify.annotations.NullMarked;
