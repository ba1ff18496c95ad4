package ohmtrail.map;

import ohmtrail.map.known.RunMap;

/**
 * A map with what speaks for it.
 *
 * @param map the map
 * @param probability after the readings
 * @param logPrior natural logarithm of its probability before them, up to a constant that all maps
 *     of a problem share
 * @param logEvidence natural logarithm of the density of the readings if it is so, lengths, sound
 *     joints, loads, supply and a bad joint or none integrated out
 */
public record RankedMap(RunMap map, double probability, double logPrior, double logEvidence) {}
