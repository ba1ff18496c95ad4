package ohmtrail.network;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * What every observed port of a network does when each excited port in turn is driven by one unit,
 * with nothing attached.
 *
 * <p>Rows are the observed ports; columns are those of them that are excited, 16 bytes per row
 * each. Excite what carries attachments and little else: of 200 receptacles on a run, each with its
 * joints, all columns are half a gigabyte and grow with the square. A column that is needed for a
 * while is had by {@link #driving}, at the cost of one substitution, which is linear in the number
 * of nodes on a tree. One that was not asked for follows from reciprocity ({@link #transfer}).
 * Immutable and safe to share between threads.
 */
public final class PortResponse {
  private final Elimination elimination;
  private final List<Port> ports;

  /** One array per observed port that is excited, complex interleaved; empty for the others. */
  private final double[][] columns;

  private PortResponse(Elimination elimination, List<Port> ports, double[][] columns) {
    this.elimination = elimination;
    this.ports = ports;
    this.columns = columns;
  }

  /**
   * Drives the chosen ports one after the other.
   *
   * @param elimination the solved network
   * @param ports the observed ports
   * @param excited places in {@code ports} of those to drive; they alone may carry attachments
   */
  public static PortResponse of(
      Elimination elimination, List<Port> ports, Iterable<Integer> excited) {
    List<Port> observed = List.copyOf(ports);
    double[][] columns = new double[observed.size()][0];
    for (int port : excited) {
      if (columns[port].length == 0 && !observed.isEmpty()) {
        columns[port] = column(elimination, observed, port);
      }
    }
    return new PortResponse(elimination, observed, columns);
  }

  private static double[] column(Elimination elimination, List<Port> ports, int excited) {
    double[] column = new double[2 * ports.size()];
    elimination.respond(ports.get(excited), ports, column, 0);
    return column;
  }

  /**
   * The same network with one more port driven: itself where it is driven already.
   *
   * @param port its place among the observed ports
   */
  public PortResponse driving(int port) {
    if (isExcited(port)) {
      return this;
    }
    double[][] more = columns.clone();
    more[port] = column(elimination, ports, port);
    return new PortResponse(elimination, ports, more);
  }

  /** Drives every port. */
  public static PortResponse ofAll(Elimination elimination, List<Port> ports) {
    List<Integer> all = new ArrayList<>();
    for (int port = 0; port < ports.size(); port++) {
      all.add(port);
    }
    return of(elimination, ports, all);
  }

  /** The observed ports, in the order that their numbers here refer to. */
  public List<Port> ports() {
    return ports;
  }

  /** Whether a port was driven. */
  public boolean isExcited(int port) {
    return columns[port].length > 0;
  }

  /**
   * The response of port {@code observed} to one unit at port {@code excited}: amperes or volts per
   * volt for a gap, amperes or volts per ampere for a pair.
   *
   * @throws IllegalArgumentException when neither of the two was driven
   */
  public Complex transfer(int observed, int excited) {
    if (isExcited(excited)) {
      return new Complex(columns[excited][2 * observed], columns[excited][2 * observed + 1]);
    }
    double[] column = column(observed);
    double sign = reciprocalSign(observed, excited);
    return new Complex(sign * column[2 * excited], sign * column[2 * excited + 1]);
  }

  /**
   * Reciprocity of the hybrid description: equal between ports of one sort, opposite between a gap
   * and a pair (Tellegen's theorem; any text on two-ports).
   */
  public double reciprocalSign(int first, int second) {
    return ports.get(first) instanceof Port.Gap == ports.get(second) instanceof Port.Gap ? 1 : -1;
  }

  /** The driven column, complex interleaved; a copy. */
  public double[] responses(int excited) {
    double[] column = column(excited);
    return Arrays.copyOf(column, column.length);
  }

  /** The driven column itself, for reading only. */
  double[] column(int excited) {
    if (columns[excited].length == 0) {
      throw new IllegalArgumentException(
          "Port ("
              + excited
              + ") was not driven\n"
              + "Maybe add it to the excited ports when the response is computed.");
    }
    return columns[excited];
  }
}
