/**
 * The likelihood of what was read and seen under one hypothesis at one value of its ohms, the
 * nuisance parameters (everything known only roughly) integrated out.
 *
 * <p>{@link ohmtrail.locate.evidence.LinearGaussian} does the linear algebra; {@link
 * ohmtrail.locate.evidence.MarginalLikelihood} adds outliers, wider tolerances and what GFCIs and
 * RCDs did. May import {@code predict} and what it rests on, and the settings; knows no hypothesis.
 */
@NullMarked
package ohmtrail.locate.evidence;

import org.jspecify.annotations.NullMarked;
