package ohmtrail.slip;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import ohmtrail.circuit.Joint;
import ohmtrail.predict.Evaluation;
import ohmtrail.problem.Problem;
import ohmtrail.reference.Assumption;
import ohmtrail.reference.Assumptions;

/**
 * Where, and from which test on, a current that nobody listed explains the readings best.
 *
 * <p>Its power may be anything, so it is no parameter to linearise: with e the change that a load
 * of the usual power makes in the readings from some test on, r what is left of them without it,
 * both whitened, a load of (1 + a) times that power leaves
 *
 * <pre>
 * r.r - (r.e)^2 / (e.e + 1/s^2),     1 + a = r.e / (e.e + 1/s^2)
 * </pre>
 *
 * Whitening is linear, so the changes of single tests add up to those from each test on. The ends
 * of the run are tried first; the other boxes where a current there does explain something.
 */
final class CurrentSearch {
  /** Steps of the ohms of a joint per decade. */
  private static final double STEPS_PER_DECADE = 2;

  /** A current at an end that lowers the squared distance by less is none. */
  private static final double WORTH_PLACING = 12;

  /** By how much the powers of loads differ, as a multiple of the usual one. */
  private static final double POWER_SIGMA = 2;

  private static final double LEAST_POWER = 0.1;
  private static final double MOST_POWER = 6;
  private static final int BEST = 4;

  private final Problem stated;
  private final NormalReadings readings;
  private final Prediction asStated;
  private final Twins twins;
  private final NormalReadings.Covariance covariance;

  /**
   * Prepares.
   *
   * @param stated the problem as stated
   * @param readings of it
   * @param asStated what would be read as stated
   * @param twins its joints
   */
  CurrentSearch(Problem stated, NormalReadings readings, Prediction asStated, Twins twins) {
    this.stated = stated;
    this.readings = readings;
    this.asStated = asStated;
    this.twins = twins;
    Evaluation sound = asStated.buffer();
    asStated.sound(sound);
    this.covariance = readings.covariance(sound, 1, Optional.empty());
  }

  /** A current at a box from some test on, as good as any joint, or none, lets it be. */
  private record Found(String box, int from, double power, double misfit) {}

  /** A supposition with the natural logarithm of its weight. */
  record Weighed(Supposition supposition, double logWeight) {}

  /** The best few. */
  List<Weighed> best(UnlistedLoads loads) {
    Problem without = loads.without();
    List<Joint> joints =
        asStated.joints().stream()
            .map(joint -> OtherLeg.same(joint, without.circuit()).orElseThrow())
            .toList();
    List<Found> found = new ArrayList<>();
    List<String> ends = loads.ends();
    double plain = Double.POSITIVE_INFINITY;
    for (String box : ends) {
      found.addAll(at(box, loads, joints));
    }
    double[] volts = new double[readings.count()];
    for (Twins.Group group : twins.groups()) {
      for (double ohms : ohms()) {
        asStated.volts(group.place(), ohms, volts);
        plain = Math.min(plain, covariance.misfit(volts, plain));
      }
    }
    double least = found.stream().mapToDouble(Found::misfit).min().orElse(plain);
    if (plain - least < WORTH_PLACING) {
      return List.of();
    }
    loads.boxes().stream()
        .filter(box -> !ends.contains(box))
        .forEach(box -> found.addAll(at(box, loads, joints)));
    return found.stream()
        .sorted(
            Comparator.comparingDouble((Found each) -> each.misfit - 2 * loads.logPrior(each.from)))
        .limit(BEST)
        .map(each -> weighed(each, loads, joints))
        .toList();
  }

  private List<Double> ohms() {
    List<Double> ohms = new ArrayList<>(List.of(0.0, Double.POSITIVE_INFINITY));
    double factor = Math.pow(10, 1 / STEPS_PER_DECADE);
    double high = stated.assumptions().value(Assumption.DEGRADED_OHMS_HIGH);
    for (double each = stated.assumptions().value(Assumption.DEGRADED_OHMS_LOW);
        each < high;
        each *= factor) {
      ohms.add(each);
    }
    return ohms;
  }

  /** For each test that it may be on from, the best that a current at that box does. */
  private List<Found> at(String box, UnlistedLoads loads, List<Joint> joints) {
    int n = readings.count();
    int tests = stated.survey().tests().size();
    Prediction with =
        new Prediction.OfProblem(
            loads.with(box, 0, stated.assumptions().value(Assumption.UNLISTED_WATTS)), joints);
    Found[] best = new Found[tests];
    double[] before = new double[n];
    double[] after = new double[n];
    for (Twins.Group group : twins.groups()) {
      for (double ohms : ohms()) {
        asStated.volts(group.place(), ohms, before);
        with.volts(group.place(), ohms, after);
        double[] left = covariance.whitened(before);
        double own = dot(left, left);
        double[] change = new double[n];
        int r = n;
        for (int from = tests - 1; from >= 0; from--) {
          double[] ofTest = new double[n];
          boolean moves = false;
          while (r > 0 && readings.testOf(r - 1) == from) {
            r--;
            ofTest[r] = after[r] - before[r];
            moves |= ofTest[r] != 0;
          }
          if (!moves) {
            continue;
          }
          add(covariance.whitenedChange(ofTest, r), change);
          double slope = dot(change, change) + 1 / (POWER_SIGMA * POWER_SIGMA);
          double power = dot(left, change) / slope;
          double misfit = own - dot(left, change) * power;
          if (power > LEAST_POWER
              && power < MOST_POWER
              && (best[from] == null || misfit < best[from].misfit)) {
            best[from] = new Found(box, from, power, misfit);
          }
        }
      }
    }
    List<Found> found = new ArrayList<>();
    for (Found each : best) {
      if (each != null) {
        found.add(each);
      }
    }
    return found;
  }

  private static double dot(double[] a, double[] b) {
    double sum = 0;
    for (int i = 0; i < a.length; i++) {
      sum += a[i] * b[i];
    }
    return sum;
  }

  private static void add(double[] each, double[] into) {
    for (int i = 0; i < into.length; i++) {
      into[i] += each[i];
    }
  }

  /** At the power found, which is as far from the usual one as it is. */
  private Weighed weighed(Found found, UnlistedLoads loads, List<Joint> joints) {
    Assumptions assumptions = stated.assumptions();
    double watts = found.power * assumptions.value(Assumption.UNLISTED_WATTS);
    Problem problem = loads.with(found.box, found.from, watts);
    Sketch sketch =
        new Sketch(
            new NormalReadings(problem),
            new Prediction.OfProblem(problem, joints),
            Optional.empty(),
            twins,
            assumptions);
    double off = Math.log(found.power) / assumptions.value(Assumption.UNLISTED_WATTS_SPREAD);
    return new Weighed(
        loads.supposition(found.box, found.from),
        loads.logPrior(found.from) + sketch.logPosterior() - off * off / 2);
  }
}
