package ohmtrail.report.caution;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import ohmtrail.circuit.ConductorRole;
import ohmtrail.circuit.Joint;
import ohmtrail.circuit.JointRole;
import ohmtrail.circuit.Supply;
import ohmtrail.locate.Diagnosis;
import ohmtrail.locate.FittedParameter;
import ohmtrail.predict.Degradation;
import ohmtrail.predict.Parameter;
import ohmtrail.predict.Predictor;
import ohmtrail.problem.Problem;
import ohmtrail.reference.Assumption;
import ohmtrail.reference.SupplyVoltageRange;
import ohmtrail.survey.Finding;
import ohmtrail.survey.Meter;
import ohmtrail.survey.Reading;
import ohmtrail.survey.ReadingError;
import ohmtrail.survey.Survey;
import ohmtrail.survey.Test;

/**
 * Whether what the meters show is reason enough to have the supply looked into before anything of
 * the run is: a voltage out of its range, or two legs that stand apart where no joint of the run
 * can set them apart. Joints before the panel are hypotheses like any other.
 */
public final class SupplySide {
  private SupplySide() {}

  /**
   * Two legs that stand apart with nothing of the run on.
   *
   * @param test the name of the test
   * @param box where they were read
   * @param firstVolts the first leg to neutral
   * @param secondVolts the second leg to neutral
   */
  public record UnequalLegs(String test, String box, double firstVolts, double secondVolts) {
    /** How far apart they stand, volts, not negative. */
    public double apartVolts() {
      return Math.abs(firstVolts - secondVolts);
    }
  }

  /**
   * A supply that stands where its region does not let it stand.
   *
   * @param volts to neutral, behind its source impedance, by the readings
   * @param nominal volts
   * @param range of the region
   */
  public record OutOfRange(double volts, double nominal, SupplyVoltageRange range) {
    /** Whether it stands too high; too low if not. */
    public boolean isAbove() {
      return volts > nominal;
    }

    /** The bound that it has passed, volts. */
    public double limitVolts() {
      return nominal * (isAbove() ? range.most() : range.least());
    }
  }

  /**
   * Whether the supply comes first, and nobody has looked at it yet: its voltage lies outside the
   * range that its region allows ({@link SupplyVoltageRange}), or its legs stand apart.
   */
  public static boolean isAtFault(Problem problem, Diagnosis diagnosis) {
    return outOfRange(problem, diagnosis).isPresent() || unequalLegs(problem).isPresent();
  }

  private static boolean isOpenToQuestion(Problem problem) {
    return !problem.survey().lookedSound().contains(Finding.SUPPLY);
  }

  /**
   * A voltage outside of the range of its region; empty where somebody has looked at the supply.
   */
  public static Optional<OutOfRange> outOfRange(Problem problem, Diagnosis diagnosis) {
    Supply supply = problem.circuit().supply();
    SupplyVoltageRange range = SupplyVoltageRange.of(supply.volts(), supply.hertz());
    return isOpenToQuestion(problem)
        ? diagnosis.parameters().stream()
            .flatMap(fitted -> supplyVolts(fitted, range).stream())
            .filter(found -> !range.permits(found.volts() / found.nominal()))
            .findFirst()
        : Optional.empty();
  }

  private static Optional<OutOfRange> supplyVolts(
      FittedParameter fitted, SupplyVoltageRange range) {
    return fitted.parameter() instanceof Parameter.SupplyVoltage supply
        ? Optional.of(new OutOfRange(fitted.value(), supply.nominal(), range))
        : Optional.empty();
  }

  /**
   * The legs that stand farthest apart for a cause before the panel: read with nothing on, farther
   * apart than the meters' errors and than any one joint of the run, open even, would set them.
   * Nothing flows in the run then, and what does not flow drops no volts; at the panel no joint of
   * the run sets anything apart, and beyond one only what a meter draws. Empty where somebody has
   * looked at the supply.
   */
  public static Optional<UnequalLegs> unequalLegs(Problem problem) {
    Supply supply = problem.circuit().supply();
    if (supply.legs() == Supply.Legs.ONE || !isOpenToQuestion(problem)) {
      return Optional.empty();
    }
    return problem.survey().tests().stream()
        .filter(test -> !test.isDead() && problem.survey().loadsOn(test).isEmpty())
        .flatMap(test -> pairs(test, supply.legs().conductors()).stream())
        .filter(pair -> pair.isApart(problem))
        .filter(pair -> !pair.canComeFromTheRun(problem))
        .map(Pair::asFound)
        .max(Comparator.comparingDouble(UnequalLegs::apartVolts));
  }

  private static List<Pair> pairs(Test test, List<ConductorRole> legs) {
    List<Pair> pairs = new ArrayList<>();
    for (Reading first : test.readings()) {
      for (Reading second : test.readings()) {
        if (isToNeutral(first, legs.get(0))
            && isToNeutral(second, legs.get(1))
            && first.box().equals(second.box())) {
          pairs.add(new Pair(test, first, second));
        }
      }
    }
    return pairs;
  }

  private static boolean isToNeutral(Reading reading, ConductorRole leg) {
    return reading
        .between()
        .filter(points -> points.first() == leg && points.second() == ConductorRole.NEUTRAL)
        .isPresent();
  }

  /** Each leg to neutral at one box, in one test with nothing on. */
  private record Pair(Test test, Reading first, Reading second) {
    double apart() {
      return first.value() - second.value();
    }

    UnequalLegs asFound() {
      return new UnequalLegs(test.name(), first.box(), first.value(), second.value());
    }

    boolean isApart(Problem problem) {
      double share = problem.assumptions().value(Assumption.LEGS_APART_SHARE);
      return Math.abs(apart()) > share * problem.circuit().supply().volts()
          && Math.abs(apart()) > error(problem);
    }

    /** What of the difference may be an error of the meters, volts. */
    private double error(Problem problem) {
      return problem.assumptions().value(Assumption.LEGS_APART_SIGMAS) * sigma(problem);
    }

    /** Of the difference: each reading's own error, and the gain that is not common to both. */
    private double sigma(Problem problem) {
      double own = own(first, problem) + own(second, problem);
      double firstGain = gain(first, problem.survey());
      double gain =
          first.meter().equals(second.meter())
              ? firstGain * apart()
              : Math.hypot(
                  firstGain * first.value(), gain(second, problem.survey()) * second.value());
      return Math.sqrt(own + gain * gain);
    }

    private static double own(Reading reading, Problem problem) {
      Meter meter = problem.survey().meter(reading.meter());
      return ReadingError.of(reading, meter, problem.assumptions()).variance();
    }

    private static double gain(Reading reading, Survey survey) {
      return survey.meter(reading.meter()).accuracy().gainSigma();
    }

    /** A joint sets them the farther apart the more ohms it has, and the farthest when open. */
    boolean canComeFromTheRun(Problem problem) {
      List<Test> alone = List.of(test.withReadings(List.of(first, second)));
      Predictor predictor =
          new Predictor(
              problem.circuit(), problem.survey().withTests(alone), problem.assumptions());
      double error = error(problem);
      double sound = apart(predictor.readings(List.of()));
      return problem.circuit().joints().stream()
          .filter(joint -> joint.role() != JointRole.SUPPLY)
          .map(Joint::id)
          .map(id -> predictor.readings(List.of(new Degradation(id, Double.POSITIVE_INFINITY))))
          .anyMatch(shown -> Math.abs(apart(shown) - sound) > Math.abs(apart() - sound) - error);
    }

    private static double apart(List<Double> shown) {
      return shown.get(0) - shown.get(1);
    }
  }
}
