package ohmtrail.predict;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import ohmtrail.network.Port;
import ohmtrail.network.PortResponse;

/**
 * Everything whose size depends on a parameter, port by port, as flat arrays: the innermost loops
 * of the method run over it.
 *
 * <p>With w what flows or stands at a port and c how the port responds to the meter, a change of
 * the element there moves the complex reading by - sign c w times the change; the sign is that of
 * reciprocity between the meter, a pair, and the port. The column of a meter that is a gap is
 * reversed by the caller, so that the same sign holds.
 */
final class Elements {
  private final int[] port;

  /** The elements of port i are those from {@code start[i]} to {@code start[i + 1]}. */
  private final int[] start;

  private final int[] parameter;

  /** Times the sign of the port. */
  private final double[] slopeRe;

  private final double[] slopeIm;

  private Elements(int ports, int elements) {
    port = new int[ports];
    start = new int[ports + 1];
    parameter = new int[elements];
    slopeRe = new double[elements];
    slopeIm = new double[elements];
  }

  /**
   * Gathers elements by port.
   *
   * @param response tells gaps from pairs
   */
  static Elements of(List<Wiring.Element> elements, PortResponse response) {
    Map<Integer, List<Wiring.Element>> byPort = new LinkedHashMap<>();
    for (Wiring.Element element : elements) {
      byPort.computeIfAbsent(element.port(), key -> new ArrayList<>()).add(element);
    }
    Elements gathered = new Elements(byPort.size(), elements.size());
    int at = 0;
    int place = 0;
    for (Map.Entry<Integer, List<Wiring.Element>> entry : byPort.entrySet()) {
      gathered.port[place] = entry.getKey();
      double sign = response.ports().get(entry.getKey()) instanceof Port.Gap ? -1 : 1;
      gathered.start[place++] = at;
      for (Wiring.Element element : entry.getValue()) {
        gathered.parameter[at] = element.parameter();
        gathered.slopeRe[at] = sign * element.slope().re();
        gathered.slopeIm[at++] = sign * element.slope().im();
      }
    }
    gathered.start[place] = at;
    return gathered;
  }

  /**
   * Those of some parameters.
   *
   * @param places theirs, ascending
   */
  Elements only(int[] places) {
    int ports = 0;
    int elements = 0;
    Elements some = new Elements(port.length, parameter.length);
    for (int i = 0; i < port.length; i++) {
      some.start[ports] = elements;
      for (int e = start[i]; e < start[i + 1]; e++) {
        if (Arrays.binarySearch(places, parameter[e]) >= 0) {
          some.parameter[elements] = parameter[e];
          some.slopeRe[elements] = slopeRe[e];
          some.slopeIm[elements++] = slopeIm[e];
        }
      }
      some.port[ports] = port[i];
      ports += elements > some.start[ports] ? 1 : 0;
    }
    return some.first(ports, elements);
  }

  private Elements first(int ports, int elements) {
    Elements first = new Elements(ports, elements);
    System.arraycopy(port, 0, first.port, 0, ports);
    System.arraycopy(start, 0, first.start, 0, ports);
    first.start[ports] = elements;
    System.arraycopy(parameter, 0, first.parameter, 0, elements);
    System.arraycopy(slopeRe, 0, first.slopeRe, 0, elements);
    System.arraycopy(slopeIm, 0, first.slopeIm, 0, elements);
    return first;
  }

  /** Adds sign c w times the slope of each element to the slope of its parameter. */
  void addPlain(double[] c, double[] w, double[] slopes) {
    for (int i = 0; i < port.length; i++) {
      int p = 2 * port[i];
      add(i, c[p] * w[p] - c[p + 1] * w[p + 1], c[p] * w[p + 1] + c[p + 1] * w[p], slopes);
    }
  }

  /**
   * Adds the coefficients of k and of k squared (see {@link JointSweep}); those of k squared lack
   * the factor that is the same for all.
   *
   * @param y how every port responds to the joint's gap
   * @param gap the joint's port
   */
  void addProducts(
      double[] c, double[] w, double[] y, int gap, double[] linear, double[] quadratic) {
    double iRe = w[2 * gap];
    double iIm = w[2 * gap + 1];
    double cRe = c[2 * gap];
    double cIm = c[2 * gap + 1];
    for (int i = 0; i < port.length; i++) {
      int p = 2 * port[i];
      double yRe = y[p];
      double yIm = y[p + 1];
      double mixRe = c[p] * iRe - c[p + 1] * iIm + w[p] * cRe - w[p + 1] * cIm;
      double mixIm = c[p] * iIm + c[p + 1] * iRe + w[p] * cIm + w[p + 1] * cRe;
      add(i, yRe * mixRe - yIm * mixIm, yRe * mixIm + yIm * mixRe, linear);
      add(i, yRe * yRe - yIm * yIm, 2 * yRe * yIm, quadratic);
    }
  }

  private void add(int place, double re, double im, double[] slopes) {
    for (int e = start[place]; e < start[place + 1]; e++) {
      int at = 2 * parameter[e];
      slopes[at] += slopeRe[e] * re - slopeIm[e] * im;
      slopes[at + 1] += slopeRe[e] * im + slopeIm[e] * re;
    }
  }
}
