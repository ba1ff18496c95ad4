package ohmtrail.network;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * A solved network with a few things attached: series ohms, loads, a meter. Nothing is factored
 * anew.
 *
 * <p>With H the response of the bare network, a the attached ports and x = -D w their laws, each
 * response becomes
 *
 * <pre>H'(p, c) = H(p, c) - H(p, a) N H(a, c),   N = D (1 + H(a, a) D)^-1</pre>
 *
 * (Sherman-Morrison-Woodbury; for one series resistance R this is i = i0/(1 + y R) and every
 * reading moved by its transfer times -R i). N has as many rows as things attached. Where c itself
 * is attached the same is
 *
 * <pre>H'(p, c) = H(p, a) N(a, c) / D(c)</pre>
 *
 * which is used where its terms are the smaller ones, for what rounding takes goes with the terms
 * and not with what is left of them: a range of kilohms across an open way of gigohms is no
 * difference of gigohms then. Cost: O(k^3) to build, O(k) or O(k^2) per response. Immutable.
 */
public final class Attachments {
  /** Terms must be smaller than this share of the plain ones to be preferred to them. */
  private static final double CLEARLY_SMALLER = 0.5;

  private final PortResponse response;
  private final int[] ports;

  /** The matrix N, complex interleaved, row by row. */
  private final double[] core;

  /** 1/D of each whose own port is better seen through it; empty for the others. */
  private final List<Optional<Complex>> loosening;

  private Attachments(
      PortResponse response, int[] ports, double[] core, List<Optional<Complex>> loosening) {
    this.response = response;
    this.ports = ports;
    this.core = core;
    this.loosening = loosening;
  }

  /**
   * Attaches.
   *
   * @param response the bare network; every attached port must be excited in it
   * @param attachments at most one per port
   * @throws ArithmeticException when the attachments leave a current or voltage undefined
   */
  public static Attachments to(PortResponse response, List<Attachment> attachments) {
    int size = attachments.size();
    int[] ports = new int[size];
    for (int a = 0; a < size; a++) {
      ports[a] = attachments.get(a).port();
    }
    double[] core = core(response, attachments, ports);
    List<Optional<Complex>> loosening = new ArrayList<>();
    for (int a = 0; a < size; a++) {
      loosening.add(loosening(response, ports, core, a, attachments.get(a)));
    }
    return new Attachments(response, ports, core, loosening);
  }

  /** 1/D of one, where the response of its own port to itself has the smaller terms through it. */
  private static Optional<Complex> loosening(
      PortResponse response, int[] ports, double[] core, int place, Attachment attachment) {
    if (attachment.driven().equals(Complex.ZERO)) {
      return Optional.empty();
    }
    Complex loose = attachment.observed().dividedBy(attachment.driven());
    int port = ports[place];
    double[] own = response.column(port);
    double plain = size(own, port);
    double through = 0;
    for (int row = 0; row < ports.length; row++) {
      double seen = size(response.column(ports[row]), port);
      double weight = 0;
      for (int col = 0; col < ports.length; col++) {
        weight += size(core, row * ports.length + col) * size(own, ports[col]);
      }
      plain += seen * weight;
      through += seen * size(core, row * ports.length + place) * size(loose);
    }
    return through < CLEARLY_SMALLER * plain ? Optional.of(loose) : Optional.empty();
  }

  private static double size(double[] values, int place) {
    return Math.abs(values[2 * place]) + Math.abs(values[2 * place + 1]);
  }

  private static double size(Complex value) {
    return Math.abs(value.re()) + Math.abs(value.im());
  }

  private static double[] core(PortResponse response, List<Attachment> attachments, int[] ports) {
    int size = ports.length;
    double[] system = new double[2 * size * size];
    for (int col = 0; col < size; col++) {
      double[] column = response.column(ports[col]);
      Complex driven = attachments.get(col).driven();
      for (int row = 0; row < size; row++) {
        double re = column[2 * ports[row]];
        double im = column[2 * ports[row] + 1];
        int at = 2 * (row * size + col);
        system[at] = re * driven.re() - im * driven.im();
        system[at + 1] = re * driven.im() + im * driven.re();
      }
      int diagonal = 2 * (col * size + col);
      system[diagonal] += attachments.get(col).observed().re();
      system[diagonal + 1] += attachments.get(col).observed().im();
    }
    double[] core = SmallComplex.invert(system, size);
    for (int row = 0; row < size; row++) {
      Complex driven = attachments.get(row).driven();
      for (int col = 0; col < size; col++) {
        int at = 2 * (row * size + col);
        double re = core[at];
        double im = core[at + 1];
        core[at] = re * driven.re() - im * driven.im();
        core[at + 1] = re * driven.im() + im * driven.re();
      }
    }
    return core;
  }

  /**
   * The same things attached, answering to the ports that another response drives.
   *
   * @param more a response of the same network and ports, such as {@link PortResponse#driving}
   *     gives
   */
  public Attachments through(PortResponse more) {
    return more == response ? this : new Attachments(more, ports, core, loosening);
  }

  /** The response of one port to one unit at an excited port, with everything attached. */
  public Complex transfer(int observed, int excited) {
    double[] value = new double[2];
    transfer(observed, excited, value, 0);
    return new Complex(value[0], value[1]);
  }

  /**
   * The same, written into an array.
   *
   * @param into receives the response, complex interleaved, at place {@code at}
   */
  public void transfer(int observed, int excited, double[] into, int at) {
    double[] weights = weights(excited);
    double share = isLoosened(excited) ? 0 : 1;
    double[] plain = response.column(excited);
    double re = share * plain[2 * observed];
    double im = share * plain[2 * observed + 1];
    for (int a = 0; a < ports.length; a++) {
      double[] column = response.column(ports[a]);
      double hRe = column[2 * observed];
      double hIm = column[2 * observed + 1];
      re -= hRe * weights[2 * a] - hIm * weights[2 * a + 1];
      im -= hRe * weights[2 * a + 1] + hIm * weights[2 * a];
    }
    into[2 * at] = re;
    into[2 * at + 1] = im;
  }

  /**
   * The responses of all ports to one unit at an excited port, with everything attached.
   *
   * @return complex interleaved, one per port of the response
   */
  public double[] responses(int excited) {
    double[] weights = weights(excited);
    double[] plain = response.column(excited);
    double[] result =
        isLoosened(excited) ? new double[plain.length] : Arrays.copyOf(plain, plain.length);
    for (int a = 0; a < ports.length; a++) {
      double wRe = weights[2 * a];
      double wIm = weights[2 * a + 1];
      if (wRe == 0 && wIm == 0) {
        continue;
      }
      double[] column = response.column(ports[a]);
      for (int p = 0; p < result.length; p += 2) {
        result[p] -= column[p] * wRe - column[p + 1] * wIm;
        result[p + 1] -= column[p] * wIm + column[p + 1] * wRe;
      }
    }
    return result;
  }

  /**
   * N H(a, c): what the attached ports are driven by, sign reversed, when port c is driven by one
   * unit; -N(a, c)/D(c), which takes in port c itself, where that is loosened.
   */
  private double[] weights(int excited) {
    return isLoosened(excited) ? loosened(place(excited)) : weightsBeside(excited);
  }

  private boolean isLoosened(int port) {
    int place = place(port);
    return place >= 0 && loosening.get(place).isPresent();
  }

  private int place(int port) {
    for (int a = 0; a < ports.length; a++) {
      if (ports[a] == port) {
        return a;
      }
    }
    return -1;
  }

  private double[] loosened(int place) {
    Complex loose = loosening.get(place).orElseThrow();
    double[] weights = new double[2 * ports.length];
    for (int row = 0; row < ports.length; row++) {
      int at = 2 * (row * ports.length + place);
      Complex weight = new Complex(core[at], core[at + 1]).times(loose);
      weights[2 * row] = -weight.re();
      weights[2 * row + 1] = -weight.im();
    }
    return weights;
  }

  private double[] weightsBeside(int excited) {
    double[] plain = response.column(excited);
    double[] weights = new double[core.length == 0 ? 0 : 2 * ports.length];
    for (int row = 0; row < ports.length; row++) {
      double re = 0;
      double im = 0;
      for (int col = 0; col < ports.length; col++) {
        int at = 2 * (row * ports.length + col);
        double hRe = plain[2 * ports[col]];
        double hIm = plain[2 * ports[col] + 1];
        re += core[at] * hRe - core[at + 1] * hIm;
        im += core[at] * hIm + core[at + 1] * hRe;
      }
      weights[2 * row] = re;
      weights[2 * row + 1] = im;
    }
    return weights;
  }
}
