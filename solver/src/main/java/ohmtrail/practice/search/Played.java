package ohmtrail.practice.search;

/**
 * A game that is over.
 *
 * @param minutes until the degraded joint was seen
 * @param boxes opened, the one with the joint among them
 * @param readings taken
 * @param harms tests that tripped, overvolted or overheated under the truth
 * @param stoppedWrongly whether the circuit was once called sound, which it was not
 */
public record Played(double minutes, int boxes, int readings, int harms, boolean stoppedWrongly) {}
