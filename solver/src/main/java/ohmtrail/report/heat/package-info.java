/**
 * Heat in a joint: in the tests that were made, and what it could make over all loads up to what
 * protects it; and the published figures to hold either against.
 *
 * <p>May import {@code predict} and {@code locate} and what they rest on.
 */
@NullMarked
package ohmtrail.report.heat;

import org.jspecify.annotations.NullMarked;
