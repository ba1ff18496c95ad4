package ohmtrail.map;

/**
 * A cable of the most probable map, as long as the readings and what was known make it.
 *
 * @param feeder the box or panel that it comes from
 * @param box where it leads
 * @param loopOhms its hot and its neutral together with the joints at its ends, ohms
 * @param metres its length
 * @param probability that this cable is there, over all maps
 * @param isMeasured whether the readings bear on its length; where not, the figures are the
 *     assumption's
 */
public record EstimatedCable(
    String feeder,
    String box,
    Estimate loopOhms,
    Estimate metres,
    double probability,
    boolean isMeasured) {}
