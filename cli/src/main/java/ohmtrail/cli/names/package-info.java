/**
 * Names that a person may write or type, and the nearest one where it is none of them: {@link
 * ohmtrail.cli.names.Names}. Knows nothing of what they name; imports nothing of Ohmtrail.
 */
@NullMarked
package ohmtrail.cli.names;

import org.jspecify.annotations.NullMarked;
