/**
 * Puts an answer, a chart or a case into a file, whole or not at all ({@link
 * ohmtrail.cli.file.WholeFile}): what stood there before is lost only once the new file is safe.
 *
 * <p>May import nothing of the program.
 */
@NullMarked
package ohmtrail.cli.file;

import org.jspecify.annotations.NullMarked;
