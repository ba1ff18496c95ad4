package ohmtrail.predict;

import ohmtrail.survey.LoadInUse;

/**
 * Where a load settles during a test.
 *
 * @param use the load and where it is
 * @param runs whether it draws anything: false where it has no operating point, or lies below the
 *     voltage that it needs
 * @param volts across it, root mean square
 * @param amperes through it
 * @param watts in it
 */
public record LoadPoint(LoadInUse use, boolean runs, double volts, double amperes, double watts) {}
