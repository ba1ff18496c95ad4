/**
 * The program's commands: they read a case, ask the solver and hand the answer to a renderer. Thin
 * on purpose: what a case file means stands in {@code casefile}, what the answer looks like in
 * {@code render}, {@code chart} and {@code report}, and none of these may import this package. Only
 * this package knows of the command-line library.
 */
@NullMarked
package ohmtrail.cli;

import org.jspecify.annotations.NullMarked;
