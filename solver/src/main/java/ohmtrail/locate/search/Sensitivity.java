package ohmtrail.locate.search;

import java.util.List;
import java.util.stream.IntStream;
import ohmtrail.locate.evidence.Observations;
import ohmtrail.locate.fit.Sweeps;
import ohmtrail.predict.Evaluation;
import ohmtrail.predict.JointSweep;
import ohmtrail.predict.SurveyModel;

/** Which parameters any reading feels. Used once, by one thread. */
final class Sensitivity {
  private final Observations observations;

  /** The largest effect on any reading so far, in its standard deviations, per parameter. */
  private final double[] largest;

  private Sensitivity(Observations observations, int parameters) {
    this.observations = observations;
    this.largest = new double[parameters];
  }

  /**
   * Finds them, with nothing added and under each joint at its start and open.
   *
   * @param observations the readings
   * @param model the survey's model
   * @param joints those that come near the readings
   * @param sweeps those last needed
   * @param least effect of one standard deviation, in standard deviations of a reading
   * @return their places
   */
  static List<Integer> feltParameters(
      Observations observations,
      SurveyModel model,
      List<ScreenedJoint> joints,
      Sweeps sweeps,
      double least) {
    Sensitivity sensitivity = new Sensitivity(observations, model.parameters().size());
    Evaluation evaluation = model.buffer();
    model.evaluate(evaluation);
    sensitivity.note(evaluation);
    List<Integer> all = IntStream.range(0, model.parameters().size()).boxed().toList();
    for (ScreenedJoint each : joints) {
      JointSweep sweep = sweeps.of(model, each.joint(), all);
      sweep.evaluate(each.starts().get(0), evaluation);
      sensitivity.note(evaluation);
      sweep.evaluate(Double.POSITIVE_INFINITY, evaluation);
      sensitivity.note(evaluation);
    }
    return IntStream.range(0, sensitivity.largest.length)
        .filter(p -> sensitivity.largest[p] > least)
        .boxed()
        .toList();
  }

  private void note(Evaluation evaluation) {
    for (int r = 0; r < observations.count(); r++) {
      note(evaluation, r, Math.sqrt(observations.variance(r)));
    }
    evaluation.watched().ifPresent(this::noteTrips);
  }

  private void noteTrips(Evaluation devices) {
    for (int t = 0; t < devices.readings(); t++) {
      note(devices, t, observations.trips().scale(t));
    }
  }

  private void note(Evaluation evaluation, int row, double scale) {
    for (int p = 0; p < largest.length; p++) {
      double effect = Math.abs(evaluation.jacobian()[row * largest.length + p]) / scale;
      largest[p] = Math.max(largest[p], effect);
    }
  }
}
