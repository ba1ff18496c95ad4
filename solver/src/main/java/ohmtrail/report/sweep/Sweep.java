package ohmtrail.report.sweep;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import ohmtrail.circuit.Circuit;
import ohmtrail.predict.Degradation;
import ohmtrail.predict.LoadPoint;
import ohmtrail.predict.OperatingConditions;
import ohmtrail.predict.SolvedSurvey;
import ohmtrail.problem.Problem;
import ohmtrail.report.VoltageDrop;
import ohmtrail.survey.Measurand;
import ohmtrail.survey.Meter;
import ohmtrail.survey.ProbePoints;
import ohmtrail.survey.Reading;
import ohmtrail.survey.SurveyException;
import ohmtrail.survey.Test;

/**
 * What happens at one box in one test while one thing, or two, take the values of a range; all else
 * as stated. Each value is solved anew: the cost is that of a prediction per point.
 *
 * @param across what is varied along each line
 * @param family what differs from line to line; empty for a single line
 * @param test the test that is looked at
 * @param box the box that is looked at
 * @param between the conductors there
 * @param meter what is held to them
 * @param lines one per value of the family, in their order
 */
public record Sweep(
    Axis across,
    Optional<Axis> family,
    String test,
    String box,
    ProbePoints between,
    String meter,
    List<Line> lines) {
  /** Copies the list. */
  public Sweep {
    lines = List.copyOf(lines);
  }

  /**
   * The values of {@code across} at one value of the family.
   *
   * @param value that one; empty where there is no family
   * @param points one per value
   */
  public record Line(OptionalDouble value, List<Point> points) {
    /** Copies the list. */
    public Line {
      points = List.copyOf(points);
    }
  }

  /**
   * One solution.
   *
   * @param value of what is varied along the line
   * @param volts at the box, as a meter that draws nothing would show them
   * @param shownVolts as the meter shows them, which draws a current of its own
   * @param dropVolts lost between the panel and the box
   * @param dropFraction of the nominal voltage
   * @param loadAmperes drawn by all loads of the test together, each at its own angle, as a sum of
   *     sizes
   * @param jointWatts heat in the joints whose ohms are varied
   */
  public record Point(
      double value,
      double volts,
      double shownVolts,
      double dropVolts,
      double dropFraction,
      double loadAmperes,
      double jointWatts) {}

  /**
   * Works it out.
   *
   * @param problem circuit, tests and assumptions
   * @param test one of its tests, live
   * @param box any but the panel
   * @param meter one of its voltmeters
   * @param across what is varied
   * @param family what else, if anything; something else than {@code across}
   * @throws SurveyException where the box has no drop to look at in the test: it is behind a switch
   *     that is open
   */
  public static Sweep of(
      Problem problem, Test test, String box, Meter meter, Axis across, Optional<Axis> family) {
    ProbePoints between = ProbePoints.usual(problem.circuit(), box);
    Test looked = test.withReadings(List.of(new Reading(box, between, meter.name(), 0)));
    Problem at = problem.withSurvey(problem.survey().withTests(List.of(looked)));
    List<Line> lines = new ArrayList<>();
    if (family.isEmpty()) {
      lines.add(line(at, looked, box, across, Optional.empty(), OptionalDouble.empty()));
    } else {
      for (double value : family.get().values()) {
        lines.add(line(at, looked, box, across, family, OptionalDouble.of(value)));
      }
    }
    return new Sweep(across, family, test.name(), box, between, meter.name(), lines);
  }

  /** The voltmeter that a sweep holds to the box where nobody says which: the first one. */
  public static Meter usualMeter(Problem problem) {
    return problem.survey().meters(Measurand.VOLTAGE).stream()
        .findFirst()
        .orElseGet(() -> Meter.highImpedance("10 Mohm meter"));
  }

  /**
   * The box that loses most in a test with everything as stated, the last of those; empty where
   * none can be read.
   */
  public static Optional<String> worstBox(Problem problem, Test test) {
    SolvedSurvey solved = SolvedSurvey.asStated(problem, List.of());
    return VoltageDrop.along(solved.profile(test), problem.circuit(), test).stream()
        .reduce((one, later) -> one.dropVolts() > later.dropVolts() ? one : later)
        .map(VoltageDrop::box);
  }

  private static Line line(
      Problem problem,
      Test test,
      String box,
      Axis across,
      Optional<Axis> family,
      OptionalDouble held) {
    Optional<Swept> other = family.map(Axis::swept);
    Problem base = other.isPresent() ? other.get().in(problem, held.getAsDouble()) : problem;
    List<Degradation> degraded =
        other.map(swept -> swept.degradations(held.getAsDouble())).orElse(List.of());
    double drift = other.map(swept -> swept.drift(problem, held.getAsDouble())).orElse(0.0);
    List<Point> points = new ArrayList<>();
    for (double value : across.values()) {
      Problem changed = across.swept().in(base, value);
      List<Degradation> all =
          Stream.concat(degraded.stream(), across.swept().degradations(value).stream()).toList();
      double moved = drift + across.swept().drift(changed, value);
      points.add(point(changed, test, box, value, all, moved));
    }
    return new Line(held, points);
  }

  private static Point point(
      Problem problem,
      Test test,
      String box,
      double value,
      List<Degradation> degraded,
      double drift) {
    SolvedSurvey stated = SolvedSurvey.asStated(problem, degraded);
    OperatingConditions moved =
        stated.conditions().withDrifts(Collections.nCopies(problem.survey().tests().size(), drift));
    SolvedSurvey solved = drift == 0 ? stated : stated.with(moved);
    Circuit circuit = problem.circuit();
    VoltageDrop drop =
        VoltageDrop.along(solved.profile(test), circuit, test).stream()
            .filter(each -> each.box().equals(box))
            .findFirst()
            .orElseThrow(
                () ->
                    new SurveyException(
                        "Box ("
                            + box
                            + ") has no voltage to look at in test ("
                            + test.name()
                            + ").\nMaybe its switch is open there."));
    return new Point(
        value,
        drop.volts(),
        solved.readings(test).get(0).shown(),
        drop.dropVolts(),
        drop.fraction(),
        solved.loadPoints(test).stream().mapToDouble(LoadPoint::amperes).sum(),
        degraded.stream().mapToDouble(each -> watts(each, solved, test)).sum());
  }

  private static double watts(Degradation degradation, SolvedSurvey solved, Test test) {
    double amperes = solved.jointAmperes(test, degradation.joint());
    return degradation.ohms() * amperes * amperes;
  }
}
