/**
 * Which Ohmtrail this is: its version and the commit that it was built from. Imports nothing of
 * Ohmtrail.
 */
@NullMarked
package ohmtrail.cli.build;

import org.jspecify.annotations.NullMarked;
