package ohmtrail.map.plan;

import java.util.List;

/**
 * What to read next for the map.
 *
 * @param visits the walks round that tell most for each minute, the best first; none where the map
 *     is settled or nothing more is to be learnt with what is at hand
 * @param isJointFound whether one box is probable enough to be opened: the joint is the aim, and
 *     the map of no more use then
 * @param entropy what is not known of the map, nats; 0 where one map is certain
 */
public record MapPlan(List<MapVisit> visits, boolean isJointFound, double entropy) {
  /** Copies the list. */
  public MapPlan {
    visits = List.copyOf(visits);
  }
}
