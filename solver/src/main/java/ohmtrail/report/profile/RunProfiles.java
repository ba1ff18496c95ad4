package ohmtrail.report.profile;

import java.util.ArrayList;
import java.util.List;
import ohmtrail.circuit.Box;
import ohmtrail.circuit.Circuit;
import ohmtrail.circuit.ConductorRole;
import ohmtrail.predict.Degradation;
import ohmtrail.predict.OperatingConditions;
import ohmtrail.problem.Problem;
import ohmtrail.report.Report;
import ohmtrail.survey.ProbePoints;

/**
 * The voltages along the run under every way that the tests put the loads on.
 *
 * @param problem what was asked
 * @param explained the point with the degraded joints
 * @param sound the point without
 * @param arrangements the heaviest load first, then the most readings
 */
public record RunProfiles(
    Problem problem,
    OperatingConditions explained,
    OperatingConditions sound,
    List<Arrangement> arrangements) {
  /** Copies the list. */
  public RunProfiles {
    arrangements = List.copyOf(arrangements);
  }

  /** At the point of a report. */
  public static RunProfiles of(Report report) {
    return new RunProfiles(
        report.problem(), report.at(), report.soundAt(), Arrangement.of(report.problem().survey()));
  }

  /** With ohms that are supposed and everything as stated. */
  public static RunProfiles of(Problem problem, List<Degradation> degradations) {
    OperatingConditions at = OperatingConditions.asStated(problem, degradations);
    return new RunProfiles(problem, at, at.sound(), Arrangement.of(problem.survey()));
  }

  /**
   * What every box would show under one of the arrangements; a carried load is shown where it can
   * be plugged in.
   */
  public ArrangementProfile profile(Arrangement arrangement) {
    List<String> boxes =
        problem.circuit().boxes().stream()
            .filter(box -> shows(arrangement, box))
            .map(Box::name)
            .toList();
    return ArrangementProfile.of(arrangement, boxes, problem, explained, sound);
  }

  /** Whether a box has a place in the profile of an arrangement. */
  public static boolean shows(Arrangement arrangement, Box box) {
    return arrangement.carried().isEmpty() || box.hasReceptacle();
  }

  /**
   * The pairs of conductors that are told: each live one to neutral, and neutral to ground; leg to
   * leg where no neutral is.
   */
  public static List<ProbePoints> pairs(Circuit circuit) {
    List<ProbePoints> pairs = new ArrayList<>();
    List<ConductorRole> live = circuit.supply().legs().conductors();
    live.forEach(leg -> pairs.add(new ProbePoints(leg, ConductorRole.NEUTRAL)));
    pairs.add(new ProbePoints(ConductorRole.SWITCHED, ConductorRole.NEUTRAL));
    pairs.add(ProbePoints.NEUTRAL_GROUND);
    if (live.size() == 2) {
      pairs.add(0, new ProbePoints(live.get(0), live.get(1)));
    }
    pairs.removeIf(
        pair ->
            circuit.boxes().stream().skip(1).noneMatch(box -> reaches(circuit, box.name(), pair)));
    return List.copyOf(pairs);
  }

  /** Whether both conductors reach a box. */
  public static boolean reaches(Circuit circuit, String box, ProbePoints pair) {
    return circuit.conductorsAt(box).containsAll(List.of(pair.first(), pair.second()));
  }
}
