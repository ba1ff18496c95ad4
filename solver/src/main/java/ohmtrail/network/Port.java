package ohmtrail.network;

/** A place where a network can be excited and observed. */
public sealed interface Port {
  /**
   * The gap in a branch: excited by a voltage in series (volts, driving current from the branch's
   * first node to its second), observed by the current through the branch (amperes, same
   * direction).
   *
   * @param branch the branch's number
   */
  record Gap(int branch) implements Port {}

  /**
   * A pair of nodes: excited by a current (amperes, into {@code plus} and out of {@code minus}),
   * observed by the voltage of {@code plus} over {@code minus}.
   *
   * @param plus a node
   * @param minus another node
   */
  record Pair(int plus, int minus) implements Port {
    /** Rejects a pair of one node. */
    public Pair {
      if (plus == minus) {
        throw new IllegalArgumentException(
            "Pair of node (" + plus + ") with itself has no voltage");
      }
    }
  }
}
