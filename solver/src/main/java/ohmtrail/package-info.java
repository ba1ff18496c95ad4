/**
 * Finds the bad connection in a building circuit from voltage readings. This package holds nothing
 * but the packages below it; the arrows between them go one way:
 *
 * <pre>
 *   practice -> advise -> locate -> predict -> problem -> survey -> circuit -> reference, network
 * </pre>
 *
 * <p>Each may import what stands to the right of it and nothing else of Ohmtrail; {@code network}
 * imports nothing of Ohmtrail but itself. Nothing here prints, opens a file or draws a picture.
 */
@NullMarked
package ohmtrail;

import org.jspecify.annotations.NullMarked;
