package ohmtrail.locate;

/**
 * A box and how likely the degraded joint is in it.
 *
 * @param box its name
 * @param probability the sum over its joints
 */
public record RankedBox(String box, double probability) {}
