package ohmtrail.network;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.ArrayList;
import java.util.List;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Size;

/**
 * On runs of cable the admittance seen in the gap of a joint is good to its own size, however
 * little lies behind the joint: half a milliohm beside a few picofarads.
 */
class CableRunPropertyTest {

  /** Relative, of each driving-point admittance itself. */
  private static final double RELATIVE = 1e-9;

  /**
   * Of what the gap saw before. Ohms added in one joint leave the next one, with no cable between
   * them, only themselves to see: a difference of equal admittances, good to a few roundings.
   */
  private static final double ROUNDING = 1e-14;

  /** Of the supply's voltage. */
  private static final double OF_THE_SUPPLY = 1e-9;

  /**
   * Two joints with no cable between them hold the wire between them all by themselves: above a
   * gigohm each, some digits of its potential go.
   */
  private static final double PAIR_DECADES = 9;

  private static final int TRIES = 150;

  @Provide
  Arbitrary<CableRun> runs() {
    Arbitrary<Integer> draw = Arbitraries.integers().between(0, 99);
    Arbitrary<Double> joint = decades(-4, -1);
    Arbitrary<Double> cable = decades(-3, 1);
    Arbitrary<Double> siemens = decades(-9, -5);
    return Combinators.combine(draw, joint, cable, siemens)
        .as(CableRun.Section::new)
        .withoutEdgeCases()
        .list()
        .ofMinSize(1)
        .ofMaxSize(6)
        .map(CableRun::new);
  }

  private static Arbitrary<Double> decades(double low, double high) {
    return Arbitraries.doubles().between(low, high).ofScale(2).map(d -> Math.pow(10, d));
  }

  @Property(tries = TRIES)
  void ohmsAddedInOneJointChangeWhatEveryOtherGapSeesAsARebuiltRunDoes(
      @ForAll("runs") CableRun run,
      @ForAll @IntRange(max = 99) int jointDraw,
      @ForAll @DoubleRange(min = -3, max = 12) double decades) {
    int joint = run.joints().get(jointDraw % run.joints().size());
    double ohms = Math.pow(10, decades);
    Network network = run.network();
    PortResponse bare = PortResponse.ofAll(Elimination.of(network), gaps(network));
    Attachments attached = Attachments.to(bare, List.of(Attachment.series(joint, ohms)));
    Network raised = withOhms(network, joint, ohms);
    PortResponse rebuilt = PortResponse.ofAll(Elimination.of(raised), gaps(raised));
    for (int gap = 0; gap < network.branches().size(); gap++) {
      Complex expected = rebuilt.transfer(gap, gap);
      Complex seen = attached.transfer(gap, gap);
      double tolerance = RELATIVE * expected.abs() + ROUNDING * bare.transfer(gap, gap).abs();
      assertEquals(0, seen.minus(expected).abs(), tolerance, "gap " + gap + " " + expected);
    }
  }

  @Property(tries = TRIES)
  void twoJointsALoadAndAMeterTogetherMakeWhatARebuiltRunMakes(
      @ForAll("runs") CableRun run,
      @ForAll @Size(2) List<@IntRange(max = 99) Integer> jointDraws,
      @ForAll @Size(2) List<@DoubleRange(min = -3, max = PAIR_DECADES) Double> decades,
      @ForAll @Size(2) List<@IntRange(max = 99) Integer> boxDraws,
      @ForAll @DoubleRange(min = 3, max = 7) double meterDecades) {
    Network network = run.network();
    Network rebuilt = network;
    List<Port> ports = new ArrayList<>(gaps(network));
    List<Attachment> attachments = new ArrayList<>();
    int joints = run.joints().size();
    int firstJoint = jointDraws.get(0) % joints;
    double[] shunts = {0.1, Math.pow(10, -meterDecades)};
    for (int i = 0; i < 2; i++) {
      Port.Pair plug = run.plug(boxDraws.get(i) % run.boxes());
      ports.add(plug);
      attachments.add(Attachment.shunt(ports.size() - 1, Complex.real(shunts[i])));
      rebuilt = withBranch(rebuilt, plug, shunts[i]);
      // The second differs from the first: a port takes one attachment.
      int draw = i == 0 ? firstJoint : firstJoint + 1 + jointDraws.get(1) % (joints - 1);
      int joint = run.joints().get(draw % joints);
      double ohms = Math.pow(10, decades.get(i));
      attachments.add(Attachment.series(joint, ohms));
      rebuilt = withOhms(rebuilt, joint, ohms);
    }
    for (int box = 0; box < run.boxes(); box++) {
      ports.add(run.plug(box));
    }
    Attachments attached =
        Attachments.to(PortResponse.ofAll(Elimination.of(network), ports), attachments);
    int supply = run.supplyBranch();
    PortResponse expected = PortResponse.of(Elimination.of(rebuilt), ports, List.of(supply));
    for (int box = 0; box < run.boxes(); box++) {
      int port = ports.size() - run.boxes() + box;
      Complex volts = attached.transfer(port, supply);
      assertEquals(
          0, volts.minus(expected.transfer(port, supply)).abs(), OF_THE_SUPPLY, "box " + box);
    }
  }

  @Property(tries = TRIES)
  void aLoadAttachedChangesWhatEveryGapSeesAsARebuiltRunDoes(
      @ForAll("runs") CableRun run,
      @ForAll @IntRange(max = 99) int boxDraw,
      @ForAll @DoubleRange(min = 0, max = 7) double decades) {
    Port.Pair plug = run.plug(boxDraw % run.boxes());
    double siemens = Math.pow(10, -decades);
    Network network = run.network();
    List<Port> ports = new ArrayList<>(gaps(network));
    ports.add(plug);
    Attachments attached =
        Attachments.to(
            PortResponse.ofAll(Elimination.of(network), ports),
            List.of(Attachment.shunt(ports.size() - 1, Complex.real(siemens))));
    Network loaded = withBranch(network, plug, siemens);
    PortResponse rebuilt = PortResponse.ofAll(Elimination.of(loaded), gaps(network));
    for (int gap = 0; gap < network.branches().size(); gap++) {
      Complex expected = rebuilt.transfer(gap, gap);
      Complex seen = attached.transfer(gap, gap);
      assertEquals(
          0, seen.minus(expected).abs(), RELATIVE * expected.abs(), "gap " + gap + " " + expected);
    }
  }

  private static List<Port> gaps(Network network) {
    List<Port> gaps = new ArrayList<>();
    for (int branch = 0; branch < network.branches().size(); branch++) {
      if (network.branches().get(branch).admittance().re() > 0) {
        gaps.add(new Port.Gap(branch));
      } else {
        // A capacitance: its ends stand in for it, so that ports keep the numbers of branches.
        Network.Branch capacitance = network.branches().get(branch);
        gaps.add(new Port.Pair(capacitance.from(), capacitance.to()));
      }
    }
    return gaps;
  }

  private static Network withOhms(Network network, int changed, double ohms) {
    Network.Builder builder = nodesOf(network);
    for (int branch = 0; branch < network.branches().size(); branch++) {
      Network.Branch old = network.branches().get(branch);
      Complex admittance =
          branch == changed
              ? old.admittance().reciprocal().plus(Complex.real(ohms)).reciprocal()
              : old.admittance();
      builder.addBranch(old.from(), old.to(), admittance);
    }
    return builder.build();
  }

  private static Network withBranch(Network network, Port.Pair pair, double siemens) {
    Network.Builder builder = nodesOf(network);
    for (Network.Branch old : network.branches()) {
      builder.addBranch(old.from(), old.to(), old.admittance());
    }
    builder.addBranch(pair.plus(), pair.minus(), Complex.real(siemens));
    return builder.build();
  }

  private static Network.Builder nodesOf(Network network) {
    Network.Builder builder = Network.builder();
    for (int node = 1; node < network.nodeCount(); node++) {
      builder.addNode();
    }
    return builder;
  }
}
