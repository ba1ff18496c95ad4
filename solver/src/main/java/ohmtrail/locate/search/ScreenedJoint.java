package ohmtrail.locate.search;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import ohmtrail.circuit.Joint;
import ohmtrail.locate.settings.Settings;

/**
 * What the screening found of a joint.
 *
 * @param joint the joint
 * @param twins the joints that no reading tells from it, itself among them
 * @param starts the ohms at the bottom of each valley of the coarse sweep, every reading in, and of
 *     the deepest with one as an outlier; the deepest first; may hold infinity
 * @param squaredDistance Mahalanobis, at the best of them, one reading as an outlier where that
 *     pays
 * @param course the steps of the sweep, from the lowest ohms to open
 * @param settings what counts as far off and as equal
 */
record ScreenedJoint(
    Joint joint,
    List<Joint> twins,
    List<Double> starts,
    double squaredDistance,
    List<Step> course,
    Settings.Screening settings) {

  /**
   * One step of the sweep.
   *
   * @param ohms may be infinite
   * @param all squared distance with every reading in
   * @param forgiving with one as an outlier where that pays
   */
  record Step(double ohms, double all, double forgiving) {}

  /** Whether the joint is too far from the readings for a closer scan, given the nearest one. */
  boolean isFarOff(double nearest) {
    return course.stream()
        .min(Comparator.comparingDouble(Step::forgiving))
        .map(deepest -> isFarOff(deepest, nearest))
        .orElse(false);
  }

  private boolean isFarOff(Step step, double nearest) {
    double margin =
        step.ohms() < settings.capacitiveOhms()
            ? settings.farMargin()
            : settings.capacitiveMargin();
    return step.forgiving() > settings.farRatio() * nearest + margin;
  }

  /**
   * Whether at so many ohms, and a step of the sweep to either side, the joint is too far from the
   * readings for a closer scan.
   */
  boolean isFarOffAt(double ohms, double nearest) {
    return nearestAt(ohms) > settings.farRatio() * nearest + settings.farMargin();
  }

  /** The least squared distance at the steps of the sweep to either side of so many ohms. */
  double nearestAt(double ohms) {
    int above = 0;
    while (above < course.size() && course.get(above).ohms() < ohms) {
      above++;
    }
    double least = Double.POSITIVE_INFINITY;
    for (int step = Math.max(0, above - 1); step <= above && step < course.size(); step++) {
      least = Math.min(least, course.get(step).forgiving());
    }
    return least;
  }

  /** The same with further ohms to start from. */
  ScreenedJoint withStarts(List<Double> further) {
    Set<Double> all = new LinkedHashSet<>(starts);
    all.addAll(further);
    return new ScreenedJoint(joint, twins, List.copyOf(all), squaredDistance, course, settings);
  }

  /**
   * Joins joints that no reading tells from each other.
   *
   * @param joints in any order; the first of twins stands for all of them
   * @param nearest the squared distance of the nearest joint: where two are both too far off, it
   *     does not matter that they differ
   */
  static List<ScreenedJoint> joined(List<ScreenedJoint> joints, double nearest) {
    List<ScreenedJoint> joined = new ArrayList<>();
    for (ScreenedJoint each : joints) {
      int place = 0;
      while (place < joined.size() && !joined.get(place).isTwin(each, nearest)) {
        place++;
      }
      if (place == joined.size()) {
        joined.add(each);
      } else {
        joined.set(place, joined.get(place).withTwins(each.twins));
      }
    }
    return joined;
  }

  private boolean isTwin(ScreenedJoint other, double nearest) {
    for (int step = 0; step < course.size(); step++) {
      Step own = course.get(step);
      Step others = other.course.get(step);
      boolean isNear = !isFarOff(own, nearest) || !isFarOff(others, nearest);
      if (isNear && !isSame(own, others)) {
        return false;
      }
    }
    return true;
  }

  /** An outlier makes the distance large everywhere: what counts is that of the others. */
  private boolean isSame(Step own, Step others) {
    double least = Math.min(own.forgiving(), others.forgiving());
    double share = least > settings.farTwin() ? settings.farTwinShare() : settings.twinShare();
    double allowed = settings.twinMargin() + share * least;
    return Math.abs(own.all() - others.all()) <= allowed
        && Math.abs(own.forgiving() - others.forgiving()) <= allowed;
  }

  private ScreenedJoint withTwins(List<Joint> further) {
    List<Joint> all = new ArrayList<>(twins);
    all.addAll(further);
    return new ScreenedJoint(joint, List.copyOf(all), starts, squaredDistance, course, settings);
  }
}
