package ohmtrail.slip;

import java.util.ArrayList;
import java.util.List;
import ohmtrail.circuit.Joint;
import ohmtrail.reference.Assumptions;

/**
 * The joints of a circuit, those that predict the same readings whatever their ohms drawn together.
 *
 * @param groups one for each that differs
 */
record Twins(List<Group> groups) {
  /** Predictions this near, as a share of a standard deviation, are the same. */
  private static final double SAME = 0.1;

  private static final List<Double> PROBES = List.of(0.3, 10.0, 1e3, Double.POSITIVE_INFINITY);

  /**
   * Joints that predict the same.
   *
   * @param place of one of them among those of the prediction
   * @param share of the prior of all joints
   */
  record Group(int place, double share) {}

  Twins {
    groups = List.copyOf(groups);
  }

  static Twins of(Prediction prediction, NormalReadings readings, Assumptions assumptions) {
    double total =
        prediction.joints().stream().mapToDouble(joint -> joint.weight(assumptions)).sum();
    List<double[]> known = new ArrayList<>();
    List<Group> groups = new ArrayList<>();
    for (int place = 0; place < prediction.joints().size(); place++) {
      Joint joint = prediction.joints().get(place);
      double share = joint.weight(assumptions) / total;
      double[] probed = probe(prediction, place, readings);
      int twin = twin(probed, known);
      if (twin < 0) {
        known.add(probed);
        groups.add(new Group(place, share));
      } else {
        Group group = groups.get(twin);
        groups.set(twin, new Group(group.place, group.share + share));
      }
    }
    return new Twins(groups);
  }

  /** In standard deviations of the readings. */
  private static double[] probe(Prediction prediction, int place, NormalReadings readings) {
    int count = readings.count();
    double[] all = new double[PROBES.size() * count];
    double[] volts = new double[count];
    for (int p = 0; p < PROBES.size(); p++) {
      prediction.volts(place, PROBES.get(p), volts);
      for (int r = 0; r < count; r++) {
        all[p * count + r] = volts[r] / readings.sigma(r);
      }
    }
    return all;
  }

  private static int twin(double[] probed, List<double[]> known) {
    for (int k = 0; k < known.size(); k++) {
      boolean same = true;
      for (int i = 0; i < probed.length && same; i++) {
        same = Math.abs(probed[i] - known.get(k)[i]) < SAME;
      }
      if (same) {
        return k;
      }
    }
    return -1;
  }
}
