/**
 * Compares hypotheses: a quick screening of every joint, a closer scan of those that come near the
 * readings, fits and profiles of those that matter, and then several joints, unstable ones and
 * outliers where something is left unexplained.
 *
 * <p>May import the rooms for fits, hypotheses and evidence, and what they rest on. {@link
 * ohmtrail.locate.search.Hypotheses} is what comes out.
 */
@NullMarked
package ohmtrail.locate.search;

import org.jspecify.annotations.NullMarked;
