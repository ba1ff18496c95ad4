package ohmtrail.map.search;

/**
 * How far to go through the maps.
 *
 * @param mostListed up to so many maps every one is weighed
 * @param starts climbs from different starts
 * @param mostWeighed no further map is weighed after so many
 * @param sweeps how often the sampler goes over all boxes
 * @param settledShare the sampler's share of new maps below which all that was weighed stands for
 *     all there is
 */
public record SearchEffort(
    int mostListed, int starts, int mostWeighed, int sweeps, double settledShare) {
  /** What {@code map} takes. */
  public static SearchEffort usual() {
    return new SearchEffort(2000, 4, 30_000, 200, 0.002);
  }

  /** The same, every map weighed where there are at most so many. */
  public SearchEffort listing(int most) {
    return new SearchEffort(most, starts, mostWeighed, sweeps, settledShare);
  }
}
