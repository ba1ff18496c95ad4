/**
 * Answers as JSON for other programs: a stable document per command, described in the project's
 * documentation. Numbers in SI units, rounded; names as the case file writes them, whatever the
 * region of the supply.
 *
 * <p>May import {@code ohmtrail.cli.render}, {@code casefile} and the solver.
 */
@NullMarked
package ohmtrail.cli.render.json;

import org.jspecify.annotations.NullMarked;
