/**
 * Finds the bad connection in a building circuit from voltage readings. {@link ohmtrail.Ohmtrail}
 * is the entry and part of the library, as are the packages that say so; every other is inner,
 * public only for the sake of its neighbours, and may change with any version. The arrows between
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
