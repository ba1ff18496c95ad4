package ohmtrail.slip;

import ohmtrail.problem.Problem;

/**
 * One of several ways in which a circuit may be wired, with the same survey on each.
 *
 * @param problem the circuit so, with the survey and the assumptions
 * @param logPrior natural logarithm of its probability before any reading, up to a constant that
 *     all of them share
 */
public record PossibleProblem(Problem problem, double logPrior) {}
