/**
 * What closed cases teach: how often the first box was right, the minutes that the advised order
 * saved, and how often each kind of joint fails, learned from what was found.
 *
 * <p>May import what {@code report} may. Part of the library.
 */
@NullMarked
package ohmtrail.report.casebook;

import org.jspecify.annotations.NullMarked;
