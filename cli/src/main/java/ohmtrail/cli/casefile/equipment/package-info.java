/**
 * What a case has to measure with: meters and loads, read from a case file, and {@link
 * ohmtrail.cli.casefile.equipment.Site}, what they are held against.
 *
 * <p>May import {@code casefile.text}, {@code casefile.words}, {@code casefile.run} and the
 * solver's {@code circuit} and {@code survey}.
 */
@NullMarked
package ohmtrail.cli.casefile.equipment;

import org.jspecify.annotations.NullMarked;
