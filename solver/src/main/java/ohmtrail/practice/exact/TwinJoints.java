package ohmtrail.practice.exact;

import java.util.ArrayList;
import java.util.List;
import ohmtrail.circuit.Joint;
import ohmtrail.predict.Evaluation;

/** Sorts joints into sets that no reading tells apart. */
final class TwinJoints {
  /** Predictions nearer than this many standard deviations of each reading are the same. */
  private static final double SAME = 0.05;

  private final OracleFit fit;
  private final List<Double> ohms;

  /**
   * Prepares.
   *
   * @param fit of the case
   * @param ohms at which predictions are compared
   */
  TwinJoints(OracleFit fit, List<Double> ohms) {
    this.fit = fit;
    this.ohms = List.copyOf(ohms);
  }

  private static final class Twins {
    private final List<Joint> joints = new ArrayList<>();

    /** What the first of them predicts, per value of the ohms. */
    private final double[][] volts;

    Twins(Joint first, double[][] volts) {
      joints.add(first);
      this.volts = volts;
    }
  }

  /** The sets, each in the order given. */
  List<List<Joint>> among(List<Joint> joints) {
    List<Twins> sets = new ArrayList<>();
    for (Joint joint : joints) {
      double[][] volts = volts(joint);
      sets.stream()
          .filter(set -> isSame(set.volts, volts))
          .findFirst()
          .ifPresentOrElse(set -> set.joints.add(joint), () -> sets.add(new Twins(joint, volts)));
    }
    return sets.stream().map(set -> List.copyOf(set.joints)).toList();
  }

  private double[][] volts(Joint joint) {
    OracleFit.Solved solved = fit.solve(joint, fit.nominal());
    double[][] volts = new double[ohms.size()][];
    for (int place = 0; place < volts.length; place++) {
      Evaluation evaluation = fit.buffer();
      solved.evaluate(ohms.get(place), evaluation);
      volts[place] = evaluation.volts().clone();
    }
    return volts;
  }

  private boolean isSame(double[][] first, double[][] second) {
    for (int place = 0; place < first.length; place++) {
      for (int r = 0; r < first[place].length; r++) {
        if (Math.abs(first[place][r] - second[place][r]) > SAME * Math.sqrt(fit.variance(r))) {
          return false;
        }
      }
    }
    return true;
  }
}
