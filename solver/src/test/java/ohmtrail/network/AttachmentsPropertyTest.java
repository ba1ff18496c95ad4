package ohmtrail.network;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.ArrayList;
import java.util.List;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.From;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.Tuple;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Size;

/** What is attached to a solved network against the network built anew with it inside. */
class AttachmentsPropertyTest {

  /** Of the largest voltage or current present before or after. */
  private static final double SAME = 1e-9;

  /**
   * Of the volts present times the largest admittance. In a ring a current is a difference of two
   * paths and good to this, no more.
   */
  private static final double ROUNDING = 1e-13;

  /** Of ohms that a few sums and quotients make. */
  private static final double DIGITS = 1e-12;

  private static final double JOINT_OHMS = 0.002;

  private static final int TRIES = 150;

  /** Above this the drawn decades of ohms mean open. */
  private static final double MOST_DECADES = 12;

  /**
   * Where several joints leave an island, the ampere that drives it is known to one rounding, and
   * its potential to that times the ohms that hold it.
   */
  private static final double ISLAND_DECADES = 5;

  @Provide
  Arbitrary<DrawnNetwork> networks() {
    return DrawnNetwork.of(DrawnNetwork.impedances(-2, 3), 10, 6);
  }

  @Provide
  Arbitrary<DrawnNetwork> trees() {
    return DrawnNetwork.of(DrawnNetwork.impedances(-3, 9), 12, 0);
  }

  /** From a milliohm to a teraohm, and open now and then. */
  @Provide
  Arbitrary<Double> ohms() {
    Arbitrary<Double> finite =
        Arbitraries.doubles().between(-3, MOST_DECADES).ofScale(3).map(d -> Math.pow(10, d));
    return Arbitraries.frequencyOf(
        Tuple.of(9, finite), Tuple.of(1, Arbitraries.just(Double.POSITIVE_INFINITY)));
  }

  /** An impedance across two nodes. */
  record Shunt(int firstDraw, int secondDraw, Complex ohms) {}

  @Provide
  Arbitrary<Shunt> shunts() {
    Arbitrary<Integer> draw = Arbitraries.integers().between(0, 99);
    return Combinators.combine(draw, draw, DrawnNetwork.impedances(-2, 7)).as(Shunt::new);
  }

  @Property(tries = TRIES)
  void seriesOhmsMakeWhatARebuiltBranchMakes(
      @ForAll("networks") DrawnNetwork drawn,
      @ForAll @IntRange(max = 99) int branchDraw,
      @ForAll("ohms") double ohms) {
    int branch = branchDraw % drawn.elements().size();
    if (Double.isInfinite(ohms) && isBridge(drawn, branch)) {
      assertThrows(
          ArithmeticException.class,
          () -> Attachments.to(drawn.response(), List.of(Attachment.series(branch, ohms))));
      return;
    }
    assertSame(
        drawn,
        drawn.response(),
        List.of(Attachment.series(branch, ohms)),
        withOhms(drawn, branch, ohms).response());
  }

  @Property(tries = TRIES)
  void seriesOhmsInATreeOfTwelveDecadesMakeWhatARebuiltBranchMakes(
      @ForAll("trees") DrawnNetwork drawn,
      @ForAll @IntRange(max = 99) int branchDraw,
      @ForAll @DoubleRange(min = -3, max = MOST_DECADES) double decades) {
    int branch = branchDraw % drawn.elements().size();
    double ohms = Math.pow(10, decades);
    assertSame(
        drawn,
        drawn.response(),
        List.of(Attachment.series(branch, ohms)),
        withOhms(drawn, branch, ohms).response());
  }

  @Property(tries = TRIES)
  void aShuntMakesWhatAFurtherBranchMakes(
      @ForAll("networks") DrawnNetwork drawn, @ForAll("shunts") Shunt shunt) {
    int first = shunt.firstDraw() % drawn.nodes();
    int second = shunt.secondDraw() % drawn.nodes();
    if (first == second) {
      return;
    }
    List<Port> ports = new ArrayList<>(drawn.ports());
    ports.add(new Port.Pair(first, second));
    Rebuild rebuild = new Rebuild(drawn);
    rebuild.add(first, second, shunt.ohms());
    assertSame(
        drawn,
        PortResponse.ofAll(Elimination.of(drawn.network()), ports),
        List.of(Attachment.shunt(ports.size() - 1, shunt.ohms().reciprocal())),
        PortResponse.ofAll(Elimination.of(rebuild.network()), ports));
  }

  @Property(tries = TRIES)
  void severalThingsAttachedAtOnceMakeWhatTheNetworkRebuiltMakes(
      @ForAll("networks") DrawnNetwork drawn,
      @ForAll @Size(max = 3) List<@IntRange(max = 99) Integer> branchDraws,
      @ForAll @Size(3) List<@DoubleRange(min = -3, max = ISLAND_DECADES) Double> decades,
      @ForAll @Size(max = 3) List<@From("shunts") Shunt> shunts) {
    List<Port> ports = new ArrayList<>(drawn.ports());
    List<Attachment> attachments = new ArrayList<>();
    Rebuild rebuild = new Rebuild(drawn);
    List<Integer> taken = new ArrayList<>();
    for (int draw : branchDraws) {
      int branch = draw % drawn.elements().size();
      if (!taken.contains(branch)) {
        double ohms = Math.pow(10, decades.get(taken.size()));
        taken.add(branch);
        attachments.add(Attachment.series(branch, ohms));
        rebuild.raise(branch, ohms);
      }
    }
    for (Shunt shunt : shunts) {
      int first = shunt.firstDraw() % drawn.nodes();
      int second = shunt.secondDraw() % drawn.nodes();
      if (first != second) {
        ports.add(new Port.Pair(first, second));
        attachments.add(Attachment.shunt(ports.size() - 1, shunt.ohms().reciprocal()));
        rebuild.add(first, second, shunt.ohms());
      }
    }
    assertSame(
        drawn,
        PortResponse.ofAll(Elimination.of(drawn.network()), ports),
        attachments,
        PortResponse.ofAll(Elimination.of(rebuild.network()), ports));
  }

  /**
   * An ohmmeter's range across two open ways in series, one of them there from the start and one
   * attached: what it shows is neither of them and no difference of them.
   */
  @Property(tries = TRIES)
  void aRangeOfOhmsAcrossOpenWaysKeepsItsDigitsWhicheverIsTheLarger(
      @ForAll @DoubleRange(min = 5, max = 13) double decadesThere,
      @ForAll @DoubleRange(min = 5, max = 13) double decadesAttached,
      @ForAll @DoubleRange(min = 0, max = 4) double decadesOfRange) {
    double there = Math.pow(10, decadesThere);
    double attached = Math.pow(10, decadesAttached);
    double range = Math.pow(10, decadesOfRange);
    Network.Builder network = Network.builder();
    int far = network.addNode();
    int near = network.addNode();
    network.addBranch(far, Network.REFERENCE, Complex.real(1 / there));
    Port gap =
        new Port.Gap(network.addBranch(near, Network.REFERENCE, Complex.real(1 / JOINT_OHMS)));
    PortResponse bare =
        PortResponse.ofAll(Elimination.of(network.build()), List.of(gap, new Port.Pair(far, near)));
    Attachments both =
        Attachments.to(
            bare,
            List.of(Attachment.series(0, attached), Attachment.shunt(1, Complex.real(1 / range))));
    double expected = 1 / (1 / range + 1 / (there + attached + JOINT_OHMS));
    assertEquals(expected, both.transfer(1, 1).re(), DIGITS * expected);
  }

  /** Holds every response with the things attached against the same response rebuilt. */
  private static void assertSame(
      DrawnNetwork drawn, PortResponse bare, List<Attachment> attachments, PortResponse rebuilt) {
    Attachments attached = Attachments.to(bare, attachments);
    int size = bare.ports().size();
    double siemens =
        drawn.elements().stream().mapToDouble(e -> 1 / e.ohms().abs()).max().orElseThrow();
    for (int excited = 0; excited < size; excited++) {
      double[] all = attached.responses(excited);
      boolean byVolt = bare.ports().get(excited) instanceof Port.Gap;
      double amperes = Math.max(byVolt ? 0 : 1, largest(bare, rebuilt, excited, Port.Gap.class));
      double volts = Math.max(byVolt ? 1 : 0, largest(bare, rebuilt, excited, Port.Pair.class));
      for (int observed = 0; observed < size; observed++) {
        Complex expected = rebuilt.transfer(observed, excited);
        Complex one = attached.transfer(observed, excited);
        double tolerance =
            bare.ports().get(observed) instanceof Port.Gap
                ? SAME * amperes + ROUNDING * volts * siemens
                : SAME * volts;
        String place = "port " + observed + " driven at " + excited;
        assertEquals(0, expected.minus(one).abs(), tolerance, place);
        assertEquals(one.re(), all[2 * observed], tolerance, place);
        assertEquals(one.im(), all[2 * observed + 1], tolerance, place);
      }
    }
  }

  private static double largest(
      PortResponse bare, PortResponse rebuilt, int excited, Class<? extends Port> kind) {
    double largest = 0;
    for (int port = 0; port < bare.ports().size(); port++) {
      if (kind.isInstance(bare.ports().get(port))) {
        largest = Math.max(largest, bare.transfer(port, excited).abs());
        largest = Math.max(largest, rebuilt.transfer(port, excited).abs());
      }
    }
    return largest;
  }

  private static boolean isBridge(DrawnNetwork drawn, int branch) {
    Rebuild rebuild = new Rebuild(drawn);
    rebuild.elements.remove(branch);
    return !rebuild.network().floatingNodes().isEmpty();
  }

  private static Rebuilt withOhms(DrawnNetwork drawn, int branch, double ohms) {
    Rebuild rebuild = new Rebuild(drawn);
    rebuild.raise(branch, ohms);
    return new Rebuilt(rebuild.network(), drawn.ports());
  }

  private record Rebuilt(Network network, List<Port> ports) {
    PortResponse response() {
      return PortResponse.ofAll(Elimination.of(network), ports);
    }
  }

  /** The elements of a network, changed one by one. */
  private static final class Rebuild {
    /** Stands for open where the branch must keep its number: a current no test can see. */
    private static final double OPEN_OHMS = 1e30;

    private final int nodes;
    private final List<DrawnNetwork.Element> elements;

    Rebuild(DrawnNetwork drawn) {
      nodes = drawn.nodes();
      elements = new ArrayList<>(drawn.elements());
    }

    void raise(int branch, double ohms) {
      DrawnNetwork.Element old = elements.get(branch);
      double added = Math.min(ohms, OPEN_OHMS);
      elements.set(
          branch,
          new DrawnNetwork.Element(old.from(), old.to(), old.ohms().plus(Complex.real(added))));
    }

    void add(int from, int to, Complex ohms) {
      elements.add(new DrawnNetwork.Element(from, to, ohms));
    }

    Network network() {
      return DrawnNetwork.build(nodes, elements);
    }
  }
}
