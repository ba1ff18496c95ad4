/**
 * The answer to a problem, complete: {@link ohmtrail.report.Report} holds all that is said of it,
 * each figure worked out once and at one point of the parameters, the drift of each test included.
 *
 * <p>Whoever shows an answer writes what stands here and computes nothing. May import {@code
 * locate} and what that rests on; knows no words but names.
 *
 * <p>Part of the library.
 */
@NullMarked
package ohmtrail.report;

import org.jspecify.annotations.NullMarked;
