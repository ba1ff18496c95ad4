package ohmtrail.map;

import java.util.List;
import java.util.Optional;
import ohmtrail.map.known.MapProblem;
import ohmtrail.map.known.RunMap;
import ohmtrail.problem.Problem;

/**
 * What is believed of how the boxes of a run hang together.
 *
 * @param problem what was asked
 * @param maps the most probable maps, the most probable first; at least one
 * @param boxes what may feed each box, in the order of the most probable map
 * @param cables the cables of the most probable map, in its order
 * @param alike sets of two or more boxes between which no reading tells: however they change places
 *     among themselves, the readings are as likely
 * @param badJoint where a joint may be bad, over all maps
 * @param search how the answer was found
 */
public record MapReport(
    MapProblem problem,
    List<RankedMap> maps,
    List<BoxFeeders> boxes,
    List<EstimatedCable> cables,
    List<List<String>> alike,
    BadJoint badJoint,
    Search search) {
  /**
   * How the maps were gone through.
   *
   * @param exact whether every map that is possible was weighed
   * @param mapsWeighed how many were
   * @param seed what chance was drawn from where not every map was weighed
   * @param drawn how many maps the sampler drew; 0 where every map was weighed
   * @param readingsLeftOut how many readings had no part in it: of a kind that the model of maps
   *     does not have, such as a clamp around a cable
   */
  public record Search(
      boolean exact, long mapsWeighed, long seed, long drawn, int readingsLeftOut) {}

  /** Copies the lists. */
  public MapReport {
    maps = List.copyOf(maps);
    boxes = List.copyOf(boxes);
    cables = List.copyOf(cables);
    alike = alike.stream().map(List::copyOf).toList();
  }

  /** The most probable map. */
  public RankedMap likeliest() {
    return maps.get(0);
  }

  /** The problem if the boxes hang together as is most probable. */
  public Problem asLikeliest() {
    return problem.with(likeliest().map());
  }

  /** What may feed a box. */
  public Optional<BoxFeeders> feedersOf(String box) {
    return boxes.stream().filter(feeders -> feeders.box().equals(box)).findFirst();
  }

  /** Whether every box has a feeder that can be taken for known. */
  public boolean isSettled() {
    return boxes.stream().allMatch(BoxFeeders::isSettled);
  }

  /** The boxes that are probably not on this circuit, as the map has them. */
  public List<String> foreign() {
    return boxes.stream()
        .filter(feeders -> feeders.likeliest().feeder().equals(RunMap.ANOTHER_CIRCUIT))
        .map(BoxFeeders::box)
        .toList();
  }
}
