package ohmtrail.predict;

import java.util.Collections;
import java.util.List;
import ohmtrail.problem.Problem;

/**
 * One point at which a survey is worked out: which joints are degraded, the value of everything
 * known only roughly, and where the supply stood in each test.
 *
 * @param degradations ohms added; one joint twice where its ohms differ between loaded and unloaded
 *     tests
 * @param parameters u of every parameter, in the order of {@link Parameters}
 * @param drifts one per test of the survey: the voltage behind the supply impedance in that test,
 *     over the fitted one, less 1
 */
public record OperatingConditions(
    List<Degradation> degradations, List<Double> parameters, List<Double> drifts) {
  /** Copies the lists. */
  public OperatingConditions {
    degradations = List.copyOf(degradations);
    parameters = List.copyOf(parameters);
    drifts = List.copyOf(drifts);
  }

  /**
   * Everything as stated, no test's supply apart from the others.
   *
   * @param problem circuit, tests and assumptions
   * @param degradations ohms added
   */
  public static OperatingConditions asStated(Problem problem, List<Degradation> degradations) {
    Parameters parameters =
        Parameters.of(problem.circuit(), problem.survey(), problem.assumptions());
    return new OperatingConditions(
        degradations,
        Collections.nCopies(parameters.size(), 0.0),
        Collections.nCopies(problem.survey().tests().size(), 0.0));
  }

  /** The same with every joint sound. */
  public OperatingConditions sound() {
    return with(List.of());
  }

  /** The same with other ohms added. */
  public OperatingConditions with(List<Degradation> others) {
    return new OperatingConditions(others, parameters, drifts);
  }

  /** The same with other drifts of the tests. */
  public OperatingConditions withDrifts(List<Double> others) {
    return new OperatingConditions(degradations, parameters, others);
  }

  /** u of every parameter, in a new array. */
  double[] point() {
    return parameters.stream().mapToDouble(Double::doubleValue).toArray();
  }
}
