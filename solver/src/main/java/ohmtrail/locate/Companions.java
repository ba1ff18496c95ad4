package ohmtrail.locate;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import ohmtrail.circuit.Circuit;
import ohmtrail.circuit.Joint;
import ohmtrail.predict.Degradation;
import ohmtrail.predict.Parameters;

/**
 * The joints that may be degraded beside others, whose ohms give way: what was found for one joint
 * alone is often the sum of two. Remembers what it has looked at; belongs to one thread.
 */
final class Companions {
  /**
   * How far the ohms of joints already found may move while another is looked for, as a standard
   * deviation of ln R: the sum of two joints is split between them anew.
   */
  private static final double GIVING_WAY = 1;

  private final Circuit circuit;
  private final Weighing weighing;
  private final Priors priors;
  private final Map<Asked, List<JointScan>> seen = new LinkedHashMap<>();

  Companions(Circuit circuit, Weighing weighing, Priors priors) {
    this.circuit = circuit;
    this.weighing = weighing;
    this.priors = priors;
  }

  private record Asked(List<Degradation> base, List<Double> point) {}

  /**
   * A look at every other joint.
   *
   * @param base degraded joints with their ohms
   * @param point the parameters at their fit
   */
  List<JointScan> beside(List<Degradation> base, double[] point) {
    Asked asked = new Asked(List.copyOf(base), Arrays.stream(point).boxed().toList());
    return seen.computeIfAbsent(asked, key -> look(key.base(), point));
  }

  private List<JointScan> look(List<Degradation> base, double[] point) {
    List<Joint> others =
        circuit.joints().stream()
            .filter(joint -> base.stream().noneMatch(each -> each.joint().equals(joint.id())))
            .toList();
    Parameters known = weighing.parameters().with(base, GIVING_WAY);
    IntStream given = IntStream.range(point.length, known.size());
    int[] felt = IntStream.concat(Arrays.stream(weighing.active()), given).toArray();
    return weighing.scan(known, Arrays.copyOf(point, known.size()), felt, others, base);
  }

  /**
   * A base and the joint that a look saw beside it, each with the ohms that the look gives it.
   *
   * @param base what {@link #beside} was asked beside
   * @param seen one of its answers
   */
  List<Degradation> together(List<Degradation> base, JointScan seen) {
    double[] mean = seen.startFor(seen.peaks().get(0), new BitSet());
    int place = weighing.active().length;
    List<Degradation> all = new ArrayList<>();
    for (Degradation each : base) {
      boolean givesWay = each.ohms() > 0 && Double.isFinite(each.ohms());
      double moved = givesWay ? each.ohms() * Math.exp(GIVING_WAY * mean[place++]) : each.ohms();
      all.add(each.withOhms(moved));
    }
    all.add(new Degradation(seen.joint().id(), seen.ohms()));
    return all;
  }

  /**
   * Every other joint, its weight followed over the ohms.
   *
   * @param base degraded joints with their ohms
   * @param point the parameters at their fit
   */
  List<Candidate> weighed(List<Degradation> base, double[] point) {
    List<JointScan> looks = beside(base, point);
    double least =
        looks.stream().mapToDouble(JointScan::roughLogEvidence).max().orElse(0)
            - Weighing.OUT_OF_REACH;
    double best =
        looks.stream().mapToDouble(weighing::logPosterior).max().orElse(Double.NEGATIVE_INFINITY);
    List<Candidate> weighed = new ArrayList<>();
    for (JointScan look : looks) {
      if (look.roughLogEvidence() > least) {
        Candidate leader = weighing.follow(look.linearised(weighing.observations()), look, best);
        look.twins().forEach(twin -> weighed.add(leader.standingFor(twin, priors.of(twin))));
      }
    }
    return weighed;
  }
}
