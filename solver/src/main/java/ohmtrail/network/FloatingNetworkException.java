package ohmtrail.network;

import java.util.List;

/**
 * Thrown when part of a network has no path to the reference, so that its voltages are not defined.
 */
public final class FloatingNetworkException extends RuntimeException {
  private static final long serialVersionUID = 1;

  private final transient List<Integer> nodes;

  /**
   * @param nodes the nodes without a path
   */
  public FloatingNetworkException(List<Integer> nodes) {
    super(
        "Nodes ("
            + nodes
            + ") have no path to the reference node\n"
            + "Maybe a branch is missing between them and the rest.");
    this.nodes = List.copyOf(nodes);
  }

  /** The nodes without a path, ascending. */
  public List<Integer> nodes() {
    return nodes;
  }
}
