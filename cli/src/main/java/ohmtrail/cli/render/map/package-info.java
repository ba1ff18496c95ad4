/**
 * What is said of a map: which box feeds which, how sure that is, and where a joint may be bad
 * whichever map is right. Writes what {@link ohmtrail.map.MapReport} holds and works nothing out.
 *
 * <p>May import {@code casefile}, {@code render.words} and {@code render.text}'s page.
 */
@NullMarked
package ohmtrail.cli.render.map;

import org.jspecify.annotations.NullMarked;
