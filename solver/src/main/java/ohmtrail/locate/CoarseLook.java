package ohmtrail.locate;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import ohmtrail.circuit.Joint;
import ohmtrail.predict.JointResponse;

/**
 * The quickest look at a joint: the ohms at which the readings come nearest to it, measured with a
 * covariance found elsewhere. Good enough to start from, and to set aside what is far off.
 *
 * @param joint the joint
 * @param twins the joints that no reading tells from it, itself among them
 * @param response its readings over the ohms
 * @param starts the ohms at the bottom of each valley of a coarse sweep, every reading in, and of
 *     the deepest with one called wrong; the deepest first; may hold infinity
 * @param misfit the squared distance at the best of them, one reading called wrong where that pays
 * @param course the steps of the sweep, from the lowest ohms to open
 */
record CoarseLook(
    Joint joint,
    List<Joint> twins,
    JointResponse response,
    List<Double> starts,
    double misfit,
    List<Step> course) {
  /** The readings move over about a decade of ohms: two steps in each find every valley. */
  private static final int STEPS_PER_DECADE = 2;

  /** More valleys than this are not followed. */
  private static final int MOST_VALLEYS = 2;

  /**
   * What it costs, in squared standard deviations, to call a reading wrong while looking for a
   * start.
   */
  private static final double WRONG_READING_COST = 22;

  /**
   * The healthy covariance knows nothing of how strongly a degraded joint makes readings depend on
   * the load's true power. That can raise the misfit of the right joint several times over, never
   * this much.
   */
  private static final double FAR_OFF_RATIO = 10;

  private static final double FAR_OFF_MARGIN = 200;

  /**
   * Above so many ohms a reading hangs on capacitances that a healthy circuit does not feel, known
   * to a factor of two: then the healthy covariance sets next to nothing aside.
   */
  private static final double CAPACITIVE_OHMS = 1e5;

  private static final double FAR_OFF_CAPACITIVE_MARGIN = 1e5;

  /**
   * Joints whose squared distances differ by less than this, and by less than this share of
   * themselves, all along the sweep, are twins; a larger share will do where they are far off.
   */
  private static final double TWIN_MARGIN = 0.01;

  private static final double TWIN_SHARE = 1e-3;
  private static final double FAR_OFF_TWIN_SHARE = 0.05;
  private static final double FAR_OFF_TWIN = 1e4;

  /**
   * Whether the joint is too far from the readings to be worth a closer look, given the nearest
   * one.
   */
  boolean isFarOff(double nearest) {
    return course.stream()
        .min(Comparator.comparingDouble(Step::forgiving))
        .map(deepest -> deepest.isFarOff(nearest))
        .orElse(false);
  }

  private static boolean isFarOff(double misfit, double nearest) {
    return misfit > FAR_OFF_RATIO * nearest + FAR_OFF_MARGIN;
  }

  /**
   * Whether at so many ohms, and a step of the sweep to either side, the joint is too far from the
   * readings to be worth a closer look.
   */
  boolean isFarOffAt(double ohms, double nearest) {
    int above = 0;
    while (above < course.size() && course.get(above).ohms() < ohms) {
      above++;
    }
    for (int step = Math.max(0, above - 1); step <= above && step < course.size(); step++) {
      if (!isFarOff(course.get(step).forgiving(), nearest)) {
        return false;
      }
    }
    return true;
  }

  /** The same with further ohms to start from. */
  CoarseLook withStarts(List<Double> further) {
    Set<Double> all = new LinkedHashSet<>(starts);
    all.addAll(further);
    return new CoarseLook(joint, twins, response, List.copyOf(all), misfit, course);
  }

  /**
   * Joins the looks at joints that no reading tells from each other.
   *
   * @param looks in any order; the first of twins stands for all of them
   * @param nearest the misfit of the nearest joint: where two joints are both too far off, it does
   *     not matter that they differ
   */
  static List<CoarseLook> joined(List<CoarseLook> looks, double nearest) {
    List<CoarseLook> joined = new ArrayList<>();
    for (CoarseLook look : looks) {
      int place = 0;
      while (place < joined.size() && !joined.get(place).isTwin(look, nearest)) {
        place++;
      }
      if (place == joined.size()) {
        joined.add(look);
      } else {
        joined.set(place, joined.get(place).withTwins(look.twins));
      }
    }
    return joined;
  }

  private boolean isTwin(CoarseLook other, double nearest) {
    for (int step = 0; step < course.size(); step++) {
      Step own = course.get(step);
      Step others = other.course.get(step);
      boolean isNear = !own.isFarOff(nearest) || !others.isFarOff(nearest);
      if (isNear && !own.isTwin(others)) {
        return false;
      }
    }
    return true;
  }

  private CoarseLook withTwins(List<Joint> further) {
    List<Joint> all = new ArrayList<>(twins);
    all.addAll(further);
    return new CoarseLook(joint, List.copyOf(all), response, starts, misfit, course);
  }

  /** Looks at joints with one set of buffers. */
  static final class Looker {
    private final Observations observations;
    private final FrozenCovariance frozen;
    private final OhmsCurve.Prior prior;
    private final double[] shift;
    private final double[] residual;

    /**
     * Prepares.
     *
     * @param shift what the parameters contribute where the model was linearised: J u, one per
     *     reading
     */
    Looker(
        Observations observations, FrozenCovariance frozen, OhmsCurve.Prior prior, double[] shift) {
      this.shift = shift.clone();
      this.observations = observations;
      this.frozen = frozen;
      this.prior = prior;
      this.residual = new double[observations.count()];
    }

    CoarseLook look(Joint joint, JointResponse response) {
      double factor = Math.pow(10, 1.0 / STEPS_PER_DECADE);
      List<Step> points = new ArrayList<>();
      for (double ohms = prior.low(); ohms < prior.high(); ohms *= factor) {
        points.add(step(response, ohms));
      }
      points.add(step(response, Double.POSITIVE_INFINITY));
      Set<Double> starts = new LinkedHashSet<>();
      bottoms(points).stream()
          .sorted(Comparator.comparingDouble(Step::misfit))
          .limit(MOST_VALLEYS)
          .forEach(valley -> starts.add(valley.ohms()));
      Step deepest = points.stream().min(Comparator.comparingDouble(Step::forgiving)).orElseThrow();
      starts.add(deepest.ohms());
      return new CoarseLook(
          joint,
          List.of(joint),
          response,
          List.copyOf(starts),
          deepest.forgiving(),
          List.copyOf(points));
    }

    private static List<Step> bottoms(List<Step> points) {
      List<Step> bottoms = new ArrayList<>();
      for (int i = 0; i < points.size(); i++) {
        boolean fallsTo = i == 0 || points.get(i - 1).misfit() > points.get(i).misfit();
        boolean rises =
            i == points.size() - 1 || points.get(i + 1).misfit() >= points.get(i).misfit();
        if (fallsTo && rises) {
          bottoms.add(points.get(i));
        }
      }
      return bottoms;
    }

    private Step step(JointResponse response, double ohms) {
      response.volts(ohms, residual);
      for (int r = 0; r < residual.length; r++) {
        residual[r] = observations.value(r) - residual[r] + shift[r];
      }
      FrozenCovariance.Misfit misfit = frozen.misfit(residual);
      double forgiving = Math.min(misfit.all(), misfit.withoutWorst() + WRONG_READING_COST);
      double trips = response.watched().map(devices -> trips(devices, ohms)).orElse(0.0);
      return new Step(ohms, misfit.all() + trips, forgiving + trips);
    }

    /** What the GFCIs and RCDs did, as a squared distance: -2 ln p. */
    private double trips(JointResponse devices, double ohms) {
      double[] amperes = new double[observations.trips().count()];
      devices.volts(ohms, amperes);
      return -2 * observations.trips().logProbability(amperes);
    }
  }

  /**
   * One step of the sweep: the squared distance with every reading in, and with one called wrong
   * where that pays.
   */
  record Step(double ohms, double misfit, double forgiving) {
    /** Whether the joint with so many ohms is too far from the readings, given the nearest one. */
    boolean isFarOff(double nearest) {
      return ohms < CAPACITIVE_OHMS
          ? CoarseLook.isFarOff(forgiving, nearest)
          : forgiving > FAR_OFF_RATIO * nearest + FAR_OFF_CAPACITIVE_MARGIN;
    }

    /** A wrong reading makes the distance large everywhere: what counts is that of the others. */
    boolean isTwin(Step other) {
      double least = Math.min(forgiving, other.forgiving);
      double share = least > FAR_OFF_TWIN ? FAR_OFF_TWIN_SHARE : TWIN_SHARE;
      double allowed = TWIN_MARGIN + share * least;
      return Math.abs(misfit - other.misfit) <= allowed
          && Math.abs(forgiving - other.forgiving) <= allowed;
    }
  }
}
