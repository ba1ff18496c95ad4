package ohmtrail.locate.search;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import ohmtrail.circuit.Joint;
import ohmtrail.locate.fit.InferenceProblem;
import ohmtrail.locate.fit.Workspace;
import ohmtrail.locate.hypothesis.Hypothesis.OneJoint;
import ohmtrail.predict.Degradation;
import ohmtrail.predict.Parameters;
import ohmtrail.predict.SurveyModel;

/**
 * The joints that may be degraded beside others, whose ohms give way: what was found for one joint
 * alone is often the sum of two. Remembers what it has scanned; belongs to one thread.
 */
final class FurtherJoints {
  private final ScannedCircuit circuit;
  private final Map<Asked, List<JointScan>> scanned = new LinkedHashMap<>();

  FurtherJoints(ScannedCircuit circuit) {
    this.circuit = circuit;
  }

  private record Asked(List<Degradation> base, List<Double> point) {}

  private double ohmsSigma() {
    return circuit.problem().settings().several().ohmsSigma();
  }

  /**
   * A scan of every other joint.
   *
   * @param base degraded joints with their ohms
   * @param point the parameters at their fit
   */
  List<JointScan> beside(List<Degradation> base, List<Double> point) {
    return scanned.computeIfAbsent(new Asked(List.copyOf(base), List.copyOf(point)), this::scan);
  }

  private List<JointScan> scan(Asked asked) {
    InferenceProblem problem = circuit.problem();
    List<Joint> others =
        problem.joints().stream()
            .filter(joint -> asked.base().stream().noneMatch(it -> it.joint().equals(joint.id())))
            .toList();
    Parameters known = problem.parameters().with(asked.base(), ohmsSigma());
    int stated = asked.point().size();
    List<Double> point =
        Stream.concat(
                asked.point().stream(), Collections.nCopies(known.size() - stated, 0.0).stream())
            .toList();
    List<Integer> felt =
        Stream.concat(
                circuit.workspace().active().stream(),
                IntStream.range(stated, known.size()).boxed())
            .toList();
    SurveyModel model =
        problem.model(
            known, point.stream().mapToDouble(Double::doubleValue).toArray(), others, asked.base());
    Workspace workspace = Workspace.of(problem, felt, model, circuit.workspace().sweeps());
    Scanner scanner = new Scanner(problem, model, point);
    return scanner.scan(scanner.near(others, Map.of()), workspace);
  }

  /**
   * A base and the joint that a scan saw beside it, each with the ohms that the scan gives it.
   *
   * @param base what {@link #beside} was asked beside
   * @param scan one of its answers
   */
  List<Degradation> together(List<Degradation> base, JointScan scan) {
    double[] mean = scan.startFor(scan.peaks().get(0), new BitSet());
    int place = circuit.workspace().active().size();
    List<Degradation> all = new ArrayList<>();
    for (Degradation each : base) {
      boolean givesWay = each.ohms() > 0 && Double.isFinite(each.ohms());
      double moved = givesWay ? each.ohms() * Math.exp(ohmsSigma() * mean[place++]) : each.ohms();
      all.add(each.withOhms(moved));
    }
    all.add(new Degradation(scan.joint().id(), scan.ohms()));
    return all;
  }

  /**
   * Every other joint followed over its ohms, but for those of which nothing is left.
   *
   * @param base degraded joints with their ohms
   * @param point the parameters at their fit
   */
  List<OneJoint> followed(List<Degradation> base, List<Double> point) {
    List<JointScan> scans = beside(base, point);
    double least =
        scans.stream().mapToDouble(JointScan::roughLogMarginalLikelihood).max().orElse(0)
            - circuit.problem().settings().shortlist().outOfReach();
    double best =
        scans.stream().mapToDouble(JointScan::logPosterior).max().orElse(Double.NEGATIVE_INFINITY);
    List<OneJoint> followed = new ArrayList<>();
    for (JointScan scan : scans) {
      if (scan.roughLogMarginalLikelihood() > least) {
        OneJoint leader = circuit.follow(scan, best);
        for (Joint twin : scan.twins()) {
          followed.add(leader.standingFor(twin, circuit.problem().priors().logOf(twin)));
        }
      }
    }
    return followed;
  }
}
