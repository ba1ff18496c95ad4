package ohmtrail;

import java.util.List;
import ohmtrail.advise.AdviceReport;
import ohmtrail.advise.Situation;
import ohmtrail.circuit.Supply;
import ohmtrail.map.MapLocator;
import ohmtrail.map.MapReport;
import ohmtrail.map.known.MapProblem;
import ohmtrail.predict.Degradation;
import ohmtrail.predict.Predictor;
import ohmtrail.problem.Problem;
import ohmtrail.problem.ProblemBuilder;
import ohmtrail.reference.Minutes;
import ohmtrail.report.Report;

/**
 * The door to the library: a problem in; predictions, a report or advice out.
 *
 * <p>Every method computes from its arguments alone: nothing is remembered, printed, read or
 * written, and the same problem always gets the same answer. All are safe for use by several
 * threads.
 */
public final class Ohmtrail {
  private Ohmtrail() {}

  /**
   * Begins a problem at its panel.
   *
   * @param supply what feeds the panel
   * @param breakerAmperes rated current of the breaker, positive
   */
  public static ProblemBuilder problem(Supply supply, double breakerAmperes) {
    return new ProblemBuilder(supply, breakerAmperes);
  }

  /**
   * What each meter should show, everything as stated in the problem.
   *
   * @param degradations ohms supposed in joints, at most one entry per joint; none for a sound
   *     circuit
   * @return one figure per reading of the survey, in its order and in the unit of its measurand;
   *     infinite where a meter of ohms shows an open way
   */
  public static List<Double> predict(Problem problem, List<Degradation> degradations) {
    return new Predictor(problem.circuit(), problem.survey(), problem.assumptions())
        .readings(degradations);
  }

  /**
   * The answer in full, every figure at one point of the parameters: verdict, suspects with ohms,
   * heat and probabilities, boxes in the order to open them, every reading beside the fit, danger,
   * and what is missing.
   */
  public static Report report(Problem problem) {
    return Report.of(problem);
  }

  /**
   * What to do next: which reading, or which box to open, the quickest way first, with what must
   * not be done. The meters and loads of the problem are those at hand; minutes are the usual ones.
   */
  public static AdviceReport next(Problem problem) {
    return AdviceReport.of(problem, Situation.START, Minutes.defaults());
  }

  /**
   * Which box feeds which, where nobody has seen the cables: the maps with their probabilities, the
   * feeder of every box, estimated lengths, and where a joint may be bad whichever map is right.
   *
   * @throws ohmtrail.circuit.CircuitException when no map fits all that is known
   */
  public static MapReport map(MapProblem problem) {
    return new MapLocator().map(problem);
  }
}
