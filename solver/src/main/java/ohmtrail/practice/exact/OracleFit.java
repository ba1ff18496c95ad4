package ohmtrail.practice.exact;

import java.util.ArrayList;
import java.util.List;
import ohmtrail.circuit.Circuit;
import ohmtrail.circuit.Joint;
import ohmtrail.practice.PracticeCase;
import ohmtrail.predict.Degradation;
import ohmtrail.predict.Evaluation;
import ohmtrail.predict.JointSweep;
import ohmtrail.predict.Parameters;
import ohmtrail.predict.SurveyModel;
import ohmtrail.reference.Assumption;
import ohmtrail.reference.Assumptions;
import ohmtrail.survey.Reading;
import ohmtrail.survey.Survey;
import ohmtrail.survey.Test;
import org.ejml.data.DMatrixRMaj;
import org.ejml.dense.row.CommonOps_DDRM;

/**
 * The evidence of a joint at given ohms: the likelihood of the readings integrated over everything
 * known only roughly, with the circuit solved anew wherever the unknowns move.
 *
 * <p>The unknowns x are u of every parameter and the drift of every test, all standard normal. The
 * mode of their posterior is found by Gauss and Newton's method in the space of the readings, and
 * the integral is that of the normal distribution there (Laplace): with N the variances of the n
 * readings' own errors, J their slopes at the mode, and b what is left of the readings once those
 * slopes are followed back to x = 0,
 *
 * <pre>ln E = -(b' (N + J J')^-1 b + ln det(N + J J') + n ln(2 pi))/2</pre>
 */
final class OracleFit {
  /**
   * Slopes hold as long as no unknown moves farther, standard deviations: half the square of this
   * times that of the widest spread (0.7) is a four-hundredth of the quantity that it scales.
   */
  private static final double SETTLED = 0.1;

  /** No step is longer in any unknown, standard deviations: slopes hold nowhere near that far. */
  private static final double LONGEST_MOVE = 3;

  /** What has not settled by then fits so badly that its evidence is nil, whatever its digits. */
  private static final int MOST_STEPS = 15;

  /** Nats; what would cost more even if the slopes held that far is not worth following. */
  private static final double NIL = 1000;

  private static final double SHORTEST_STEP = 0.05;

  private final Circuit circuit;
  private final Survey survey;
  private final Assumptions assumptions;
  private final Parameters parameters;
  private final List<Degradation> placed;
  private final double drift;
  private final List<Double> volts = new ArrayList<>();
  private final List<Double> variances = new ArrayList<>();
  private final List<Integer> testOf = new ArrayList<>();

  /** A fit of one joint at most, whose ohms are given with every question. */
  OracleFit(PracticeCase practiceCase) {
    this(practiceCase, List.of(), 0);
  }

  /**
   * A fit with ohms in place that are unknown as well.
   *
   * @param placed joints with the middle of their ohms
   * @param sigma standard deviation of the logarithm of each
   */
  OracleFit(PracticeCase practiceCase, List<Degradation> placed, double sigma) {
    this.placed = List.copyOf(placed);
    this.circuit = practiceCase.circuit();
    this.survey = practiceCase.survey();
    this.assumptions = practiceCase.assumptions();
    this.parameters = Parameters.of(circuit, survey, assumptions).with(placed, sigma);
    this.drift = assumptions.value(Assumption.SUPPLY_DRIFT);
    double scatter = assumptions.value(Assumption.READING_SCATTER);
    for (int place = 0; place < survey.tests().size(); place++) {
      Test test = survey.tests().get(place);
      for (Reading reading : test.readings()) {
        double own = survey.meter(reading.meter()).readingSigma();
        volts.add(reading.value());
        variances.add(own * own + scatter * scatter);
        testOf.add(place);
      }
    }
  }

  /** The number of readings. */
  int readings() {
    return volts.size();
  }

  /** Variance of a reading's own error, volts squared. */
  double variance(int reading) {
    return variances.get(reading);
  }

  /** Room for every reading. */
  Evaluation buffer() {
    return new Evaluation(volts.size(), parameters.size());
  }

  /** Where everything is as stated. */
  DMatrixRMaj nominal() {
    return new DMatrixRMaj(parameters.size() + survey.tests().size(), 1);
  }

  /** A point with other ohms in place: u of each. */
  DMatrixRMaj elsewhere(DMatrixRMaj point, double[] ofPlaced) {
    DMatrixRMaj moved = point.copy();
    for (int each = 0; each < ofPlaced.length; each++) {
      moved.set(placeOf(each), 0, ofPlaced[each]);
    }
    return moved;
  }

  /** u of the ohms in place. */
  double[] placed(DMatrixRMaj point) {
    double[] ofPlaced = new double[placed.size()];
    for (int each = 0; each < ofPlaced.length; each++) {
      ofPlaced[each] = point.get(placeOf(each), 0);
    }
    return ofPlaced;
  }

  private int placeOf(int each) {
    return parameters.placeOf(placed.get(each)).orElseThrow();
  }

  /** The circuit as a function of the ohms in a joint, at one point of the unknowns. */
  interface Solved {
    /** The unknowns. */
    DMatrixRMaj point();

    /** Readings and slopes at that point. */
    void evaluate(double ohms, Evaluation into);
  }

  /** Solves the circuit for ohms in one joint. */
  Solved solve(Joint joint, DMatrixRMaj point) {
    JointSweep sweep = model(point, List.of(joint)).sweep(joint);
    return solved(point, sweep::evaluate);
  }

  /** Solves the circuit with no ohms but those in place. */
  Solved solveAsPlaced(DMatrixRMaj point) {
    SurveyModel model = model(point, List.of());
    return solved(point, (ohms, into) -> model.evaluate(into));
  }

  private SurveyModel model(DMatrixRMaj point, List<Joint> joints) {
    double[] ofParameters = new double[parameters.size()];
    System.arraycopy(point.data, 0, ofParameters, 0, ofParameters.length);
    return SurveyModel.of(circuit, survey, assumptions, parameters, ofParameters, joints, placed);
  }

  private interface Evaluator {
    void evaluate(double ohms, Evaluation into);
  }

  private static Solved solved(DMatrixRMaj point, Evaluator evaluator) {
    return new Solved() {
      @Override
      public DMatrixRMaj point() {
        return point;
      }

      @Override
      public void evaluate(double ohms, Evaluation into) {
        evaluator.evaluate(ohms, into);
      }
    };
  }

  /** Solves at a point. */
  interface Solver {
    Solved at(DMatrixRMaj point);
  }

  /**
   * The posterior of the unknowns at given ohms.
   *
   * @param solved the circuit, close enough to the mode for its slopes to hold there, unless the
   *     readings are out of reach
   * @param logEvidence the logarithm of the integral
   */
  record Mode(Solved solved, double logEvidence) {}

  /** Finds the mode from a start; solves again until the slopes hold. */
  Mode mode(Solver solver, Solved start, double ohms) {
    Solved solved = start;
    Linear linear = linear(solved, ohms);
    for (int step = 0; step < MOST_STEPS && linear.worthFollowing(); step++) {
      Solved next = solved;
      Linear ofNext = linear;
      double length = Math.min(1, LONGEST_MOVE / linear.farthestMove());
      do {
        next = solver.at(linear.towardsTarget(length));
        ofNext = linear(next, ohms);
        length /= 2;
      } while (!(ofNext.cost() < linear.cost()) && length > SHORTEST_STEP);
      if (!(ofNext.cost() < linear.cost())) {
        break;
      }
      solved = next;
      linear = ofNext;
    }
    return new Mode(solved, linear.logEvidence());
  }

  /** Readings and slopes at a solved point, the supply's drift put in. */
  Linear linear(Solved solved, double ohms) {
    Evaluation evaluation = buffer();
    solved.evaluate(ohms, evaluation);
    DMatrixRMaj point = solved.point();
    DMatrixRMaj misses = new DMatrixRMaj(volts.size(), 1);
    DMatrixRMaj slopes = new DMatrixRMaj(volts.size(), point.numRows);
    for (int r = 0; r < volts.size(); r++) {
      int driftPlace = parameters.size() + testOf.get(r);
      double factor = 1 + drift * point.get(driftPlace, 0);
      double undrifted = evaluation.volts()[r];
      misses.set(r, 0, volts.get(r) - undrifted * factor);
      for (int p = 0; p < parameters.size(); p++) {
        slopes.set(r, p, evaluation.jacobian()[r * parameters.size() + p] * factor);
      }
      slopes.set(r, driftPlace, undrifted * drift);
    }
    return new Linear(point, misses, slopes, variances);
  }

  /** The readings as straight functions of the unknowns, and what follows. */
  static final class Linear {
    private final DMatrixRMaj point;
    private final DMatrixRMaj misses;
    private final DMatrixRMaj slopes;
    private final List<Double> variances;
    private final NormalDensity density;
    private final DMatrixRMaj target;
    private final double logEvidence;

    Linear(DMatrixRMaj point, DMatrixRMaj misses, DMatrixRMaj slopes, List<Double> variances) {
      this.point = point;
      this.misses = misses;
      this.slopes = slopes;
      this.variances = variances;
      this.target = point.createLike();
      this.density = new NormalDensity(covariance());
      DMatrixRMaj left = misses.copy();
      CommonOps_DDRM.multAdd(slopes, point, left);
      this.logEvidence = density.logAt(left);
      CommonOps_DDRM.multTransA(slopes, density.solve(left), target);
    }

    /** Of the readings: their own errors, and what the unknowns do to them. */
    private DMatrixRMaj covariance() {
      DMatrixRMaj covariance = new DMatrixRMaj(misses.numRows, misses.numRows);
      CommonOps_DDRM.multTransB(slopes, slopes, covariance);
      for (int r = 0; r < misses.numRows; r++) {
        covariance.add(r, r, variances.get(r));
      }
      return covariance;
    }

    /** The mode, as far as the slopes hold. */
    DMatrixRMaj target() {
      return target;
    }

    double logEvidence() {
      return logEvidence;
    }

    /** Minus the logarithm of likelihood and prior at the point itself, constants left out. */
    double cost() {
      return costAt(point);
    }

    /** The same elsewhere, as far as the slopes hold. */
    double costAt(DMatrixRMaj place) {
      DMatrixRMaj move = place.copy();
      CommonOps_DDRM.subtractEquals(move, point);
      DMatrixRMaj left = misses.copy();
      CommonOps_DDRM.multAdd(-1, slopes, move, left);
      double sum = CommonOps_DDRM.dot(place, place);
      for (int r = 0; r < left.numRows; r++) {
        sum += left.get(r, 0) * left.get(r, 0) / variances.get(r);
      }
      return sum / 2;
    }

    /**
     * A deviation from the mode, distributed as the posterior is while the slopes hold: one of the
     * prior, less what the readings that go with it would have told of it.
     *
     * @param unknowns standard normal numbers
     * @param errors as many as there are readings
     */
    DMatrixRMaj deviation(DMatrixRMaj unknowns, DMatrixRMaj errors) {
      DMatrixRMaj shown = errors.createLike();
      CommonOps_DDRM.mult(slopes, unknowns, shown);
      for (int r = 0; r < shown.numRows; r++) {
        shown.add(r, 0, Math.sqrt(variances.get(r)) * errors.get(r, 0));
      }
      DMatrixRMaj deviation = unknowns.copy();
      CommonOps_DDRM.multAddTransA(-1, slopes, density.solve(shown), deviation);
      return deviation;
    }

    /** Whether the slopes hold as far as the mode. */
    boolean settled() {
      return farthestMove() <= SETTLED;
    }

    boolean worthFollowing() {
      return !settled() && costAt(target) < NIL;
    }

    /** How far the mode lies from the point, in the unknown that moves most. */
    double farthestMove() {
      DMatrixRMaj move = target.copy();
      CommonOps_DDRM.subtractEquals(move, point);
      return CommonOps_DDRM.elementMaxAbs(move);
    }

    /** That share of the way from the point to the mode. */
    DMatrixRMaj towardsTarget(double share) {
      DMatrixRMaj there = point.createLike();
      CommonOps_DDRM.add(1 - share, point, share, target, there);
      return there;
    }
  }
}
