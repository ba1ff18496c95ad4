package ohmtrail.map.evidence;

/**
 * A load that is on in a test.
 *
 * @param node where it is plugged in
 * @param number of the load in the survey
 * @param siemens its nominal conductance
 */
record ReducedLoad(int node, int number, double siemens) {}
