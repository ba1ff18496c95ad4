package ohmtrail.locate.fit;

import java.util.BitSet;
import java.util.Optional;
import ohmtrail.circuit.Joint;
import ohmtrail.locate.settings.Settings;

/**
 * The fit of one joint, or of the sound circuit, by linearising again and again where the readings
 * put the parameters, until they stay: the Gauss-Newton method, one step of which is the posterior
 * mean of the linear model. It has no guard against steps that lead astray; where it does not come
 * to rest, or ends far from the readings, {@link HypothesisFit} has to search.
 *
 * @param workspace shared buffers
 * @param joint the joint
 * @param leftOut readings to leave out
 */
public record Relinearisation(Workspace workspace, Optional<Joint> joint, BitSet leftOut) {
  /**
   * Where it came to rest.
   *
   * @param ohms of the joint; may be infinite
   * @param model linearised there
   */
  public record Settled(double ohms, LinearModel model) {}

  /**
   * With the ohms held; an outlier that the readings speak of is passed over as well.
   *
   * @param start u of every parameter
   * @return empty where the parameters do not settle
   */
  public Optional<Settled> holding(double ohms, double[] start) {
    double[] point = start;
    for (int step = 0; step < settings().mostSettlingSteps(); step++) {
      LinearModel model = at(point);
      double[] mean = model.meanAt(ohms);
      if (LinearModel.distance(mean, point) < settled()) {
        return Optional.of(new Settled(ohms, model));
      }
      point = mean;
    }
    return Optional.empty();
  }

  private double settled() {
    return workspace.problem().settings().ascent().settled();
  }

  /**
   * With the ohms where the likelihood is highest, no further reading being an outlier.
   *
   * @param startOhms where to start; infinite ohms stay so, and so do those of the sound circuit
   * @param start u of every parameter
   * @return empty where the parameters do not settle, or the readings are far from them
   */
  public Optional<Settled> climbing(double startOhms, double[] start) {
    double ohms = startOhms;
    double[] point = start;
    for (int step = 0; step < settings().mostSteps(); step++) {
      LinearModel model = at(point);
      ohms = joint.isPresent() ? model.climbWithoutOutlier(ohms) : ohms;
      if (model.isSuspiciousAt(ohms)) {
        return Optional.empty();
      }
      double[] mean = model.meanAt(ohms);
      if (LinearModel.distance(mean, point) < settings().atRest()) {
        return Optional.of(new Settled(ohms, model));
      }
      point = mean;
    }
    return Optional.empty();
  }

  private Settings.Fit settings() {
    return workspace.problem().settings().fit();
  }

  private LinearModel at(double[] point) {
    return LinearModel.of(workspace, workspace.models().at(point), joint, point)
        .leavingOut(leftOut);
  }
}
