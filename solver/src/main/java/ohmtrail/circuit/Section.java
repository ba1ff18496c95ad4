package ohmtrail.circuit;

import java.util.List;

/**
 * One conductor of one cable with the joints at its two ends: what a voltage reading on either side
 * cannot divide.
 *
 * @param cable the cable
 * @param conductor the conductor
 * @param near the joint at {@link Cable#from()}
 * @param far the joint at {@link Cable#to()}
 */
public record Section(Cable cable, ConductorRole conductor, Joint near, Joint far) {
  /** Both joints, the near one first. */
  public List<Joint> joints() {
    return List.of(near, far);
  }
}
