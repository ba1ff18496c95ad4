package ohmtrail.network;

import java.util.ArrayList;
import java.util.List;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;

/**
 * A connected network drawn at random, kept as a recipe so that it shrinks and can be built again
 * with one branch changed. Each node hangs on one added before it, as {@link Network} asks; chords
 * close rings.
 *
 * @param limbs one per node but the reference: where it hangs, and through which impedance
 * @param chords further branches between any two nodes
 */
record DrawnNetwork(List<Limb> limbs, List<Chord> chords) {
  /** The impedance of a node's branch to the node before it that the draw, wrapped, points at. */
  record Limb(int draw, Complex ohms) {}

  /** An impedance between the two nodes that the draws, wrapped, point at. */
  record Chord(int firstDraw, int secondDraw, Complex ohms) {}

  /** A branch of the network by its impedance. */
  record Element(int from, int to, Complex ohms) {}

  private static final int LARGEST_DRAW = 999;

  int nodes() {
    return limbs.size() + 1;
  }

  List<Element> elements() {
    List<Element> elements = new ArrayList<>();
    for (int node = 1; node < nodes(); node++) {
      Limb limb = limbs.get(node - 1);
      elements.add(new Element(limb.draw() % node, node, limb.ohms()));
    }
    for (Chord chord : chords) {
      int from = chord.firstDraw() % nodes();
      int to = chord.secondDraw() % nodes();
      if (from != to) {
        elements.add(new Element(from, to, chord.ohms()));
      }
    }
    return elements;
  }

  Network network() {
    return build(nodes(), elements());
  }

  static Network build(int nodes, List<Element> elements) {
    Network.Builder builder = Network.builder();
    for (int node = 1; node < nodes; node++) {
      builder.addNode();
    }
    for (Element element : elements) {
      builder.addBranch(element.from(), element.to(), element.ohms().reciprocal());
    }
    return builder.build();
  }

  /** Every gap, then every node against the reference. */
  List<Port> ports() {
    List<Port> ports = new ArrayList<>();
    for (int branch = 0; branch < elements().size(); branch++) {
      ports.add(new Port.Gap(branch));
    }
    for (int node = 1; node < nodes(); node++) {
      ports.add(new Port.Pair(node, Network.REFERENCE));
    }
    return ports;
  }

  /** The number in {@link #ports()} of a node against the reference. */
  int voltageOf(int node) {
    return elements().size() + node - 1;
  }

  PortResponse response() {
    return PortResponse.ofAll(Elimination.of(network()), ports());
  }

  /** Resistors between the powers of ten given. */
  static Arbitrary<Complex> resistances(double lowDecade, double highDecade) {
    return decades(lowDecade, highDecade).map(ohms -> Complex.real(ohms));
  }

  /** Resistors, capacitors and everything between: no two of them cancel. */
  static Arbitrary<Complex> impedances(double lowDecade, double highDecade) {
    Arbitrary<Double> angle = Arbitraries.doubles().between(0, 1).ofScale(2);
    return Combinators.combine(decades(lowDecade, highDecade), angle)
        .as(
            (ohms, share) -> {
              double phase = -share * Math.PI / 2;
              return new Complex(ohms * Math.cos(phase), ohms * Math.sin(phase));
            });
  }

  private static Arbitrary<Double> decades(double low, double high) {
    return Arbitraries.doubles().between(low, high).ofScale(3).map(d -> Math.pow(10, d));
  }

  static Arbitrary<DrawnNetwork> of(Arbitrary<Complex> impedances, int mostNodes, int mostChords) {
    Arbitrary<Integer> draw = Arbitraries.integers().between(0, LARGEST_DRAW);
    Arbitrary<Limb> limb = Combinators.combine(draw, impedances).as(Limb::new).withoutEdgeCases();
    Arbitrary<Chord> chord =
        Combinators.combine(draw, draw, impedances).as(Chord::new).withoutEdgeCases();
    return Combinators.combine(
            limb.list().ofMinSize(1).ofMaxSize(mostNodes), chord.list().ofMaxSize(mostChords))
        .as(DrawnNetwork::new);
  }
}
