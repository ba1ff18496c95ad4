package ohmtrail.report.sweep;

import java.util.List;
import ohmtrail.predict.Degradation;
import ohmtrail.problem.Problem;
import ohmtrail.survey.Meter;
import ohmtrail.survey.Survey;
import ohmtrail.survey.load.Load;

/** Something that can be varied. Values are in SI units and positive. */
public sealed interface Swept {
  /** What it is called in a sentence. */
  String what();

  /** Unit of its values. */
  String unit();

  /** The problem with that value. */
  Problem in(Problem problem, double value);

  /** What is degraded at that value. */
  default List<Degradation> degradations(double value) {
    return List.of();
  }

  /** The voltage behind the supply impedance over the stated one, less 1, at that value. */
  default double drift(Problem problem, double value) {
    return 0;
  }

  /** Whether its values are spaced, and drawn, by ratios: they span decades. */
  default boolean isByRatio() {
    return false;
  }

  /**
   * Ohms added to a joint.
   *
   * @param joint its id
   */
  record JointOhms(String joint) implements Swept {
    @Override
    public String what() {
      return "ohms added to " + joint;
    }

    @Override
    public String unit() {
      return "ohm";
    }

    @Override
    public Problem in(Problem problem, double value) {
      return problem;
    }

    @Override
    public List<Degradation> degradations(double value) {
      return List.of(new Degradation(joint, value));
    }

    @Override
    public boolean isByRatio() {
      return true;
    }
  }

  /**
   * Length of the cable that leads to a box from upstream.
   *
   * @param box its name
   */
  record CableLength(String box) implements Swept {
    @Override
    public String what() {
      return "length of the cable to " + box;
    }

    @Override
    public String unit() {
      return "m";
    }

    @Override
    public Problem in(Problem problem, double value) {
      return new Problem(
          problem.circuit().withCableTo(box, value), problem.survey(), problem.assumptions());
    }
  }

  /**
   * What a load is rated at.
   *
   * @param load its name
   * @param unit of its rating
   */
  record LoadRating(String load, String unit) implements Swept {
    @Override
    public String what() {
      return "rating of " + load;
    }

    @Override
    public Problem in(Problem problem, double value) {
      List<Load> loads =
          problem.survey().loads().stream()
              .map(each -> each.name().equals(load) ? each.rated(value) : each)
              .toList();
      return problem.withSurvey(problem.survey().withLoads(loads));
    }
  }

  /** The voltage behind the supply impedance; what the supply is named for stays. */
  record SupplyVolts() implements Swept {
    @Override
    public String what() {
      return "supply voltage";
    }

    @Override
    public String unit() {
      return "V";
    }

    @Override
    public Problem in(Problem problem, double value) {
      return problem;
    }

    @Override
    public double drift(Problem problem, double value) {
      return value / problem.circuit().supply().volts() - 1;
    }
  }

  /**
   * Input resistance of a meter.
   *
   * @param meter its name
   */
  record MeterOhms(String meter) implements Swept {
    @Override
    public String what() {
      return "input resistance of " + meter;
    }

    @Override
    public String unit() {
      return "ohm";
    }

    @Override
    public Problem in(Problem problem, double value) {
      Survey survey = problem.survey();
      List<Meter> meters =
          survey.meters().stream()
              .map(each -> each.name().equals(meter) ? each.withInputOhms(value) : each)
              .toList();
      return problem.withSurvey(
          new Survey(
              meters,
              survey.loads(),
              survey.tests(),
              survey.findings(),
              survey.hardWired(),
              survey.complaints()));
    }

    @Override
    public boolean isByRatio() {
      return true;
    }
  }
}
