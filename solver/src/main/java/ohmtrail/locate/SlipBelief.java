package ohmtrail.locate;

import ohmtrail.problem.Slip;

/**
 * A way in which the problem may not be as it is stated, and how probable that is after the
 * readings.
 *
 * @param slip what is supposed: the most probable of its kind
 * @param probability of this one
 * @param ofItsKind of all of its kind together, as of a load that failed to draw in whichever tests
 */
public record SlipBelief(Slip slip, double probability, double ofItsKind) {}
