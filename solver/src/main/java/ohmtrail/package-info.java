/**
 * Finds the bad connection in a building circuit from voltage readings. {@link ohmtrail.Ohmtrail}
 * is the entry and part of the library; it rests on the packages below it, and the arrows between
 * them go one way:
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
