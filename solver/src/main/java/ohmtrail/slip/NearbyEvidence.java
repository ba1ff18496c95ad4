package ohmtrail.slip;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.IntUnaryOperator;
import ohmtrail.locate.Diagnosis;
import ohmtrail.locate.JointBelief;
import ohmtrail.locate.Posterior;
import ohmtrail.locate.Suspect;
import ohmtrail.locate.hypothesis.OhmsPoint;
import ohmtrail.predict.Evaluation;
import ohmtrail.predict.Parameters;
import ohmtrail.predict.SurveyModel;
import ohmtrail.problem.Problem;
import ohmtrail.problem.Slip;
import ohmtrail.survey.Survey;

/**
 * What the answer would be under a slip that the readings hardly speak of, told from the answer as
 * stated: two neighbours in each other's place, or one reading that is another one.
 *
 * <p>Each hypothesis that is alive as stated, a joint counted by its place in the run and not by
 * the name of its box, predicts what would be read under the slip too ({@link FurtherReadings});
 * the density of the readings as that against their density as stated, everything linearised at the
 * fit and the ohms one more parameter there, is what the slip gains or loses. A joint between two
 * exchanged neighbours that only the other order explains is not among them: where there is one,
 * nothing explains the readings as stated, and the exchange is located in full.
 */
final class NearbyEvidence {
  /** Hypotheses less probable as stated are not followed. */
  private static final double ALIVE = 0.005;

  private static final int MOST = 6;
  private static final double MORE_THAN_NOT = 0.5;

  private final Problem stated;
  private final Posterior posterior;
  private final NormalReadings readings;

  /**
   * Prepares.
   *
   * @param stated the problem as stated
   * @param posterior of it
   */
  NearbyEvidence(Problem stated, Posterior posterior) {
    this.stated = stated;
    this.posterior = posterior;
    this.readings = new NormalReadings(stated);
  }

  /** The sound circuit, or a suspect at its likeliest ohms. */
  private record Hypothesis(Optional<Suspect> suspect, double ohms, double probability) {}

  /**
   * A slip in terms of the stated circuit.
   *
   * @param supposition what is supposed
   * @param places where each reading stands among all that are predicted
   * @param names by which its joints go
   * @param meant what was meant, volts, by the place of the reading; most often nothing else than
   *     what is written
   */
  private record Variant(
      Supposition supposition, List<Integer> places, Renaming names, Map<Integer, Double> meant) {}

  /**
   * The answer under each slip.
   *
   * @param exchanges of neighbours; one that needs another network is left out
   * @param wrong readings that are other ones
   * @return nothing where neither a sound circuit nor one joint explains the readings as stated
   */
  List<Located> of(List<Supposition> exchanges, List<ReadingSlips.Instead> wrong) {
    Diagnosis diagnosis = posterior.diagnosis();
    List<Hypothesis> hypotheses = hypotheses(diagnosis);
    double others = diagnosis.severalProbability() + diagnosis.unexplainedProbability();
    if (others > MORE_THAN_NOT || hypotheses.isEmpty()) {
      return List.of();
    }
    FurtherReadings further = new FurtherReadings(stated);
    List<Variant> variants = new ArrayList<>();
    for (Supposition exchange : exchanges) {
      Slip.BoxesExchanged pair = (Slip.BoxesExchanged) exchange.slip();
      further
          .places(pair)
          .ifPresent(
              places ->
                  variants.add(
                      new Variant(
                          exchange, places, Renaming.of(stated.circuit(), exchange), Map.of())));
    }
    for (ReadingSlips.Instead instead : wrong) {
      variants.add(
          new Variant(
              instead.supposition(),
              further.places(instead.place(), instead.test(), instead.reading()),
              Renaming.none(instead.supposition()),
              Map.of(instead.place(), instead.reading().value())));
    }
    if (variants.isEmpty()) {
      return List.of();
    }
    List<double[]> gains = gains(hypotheses, further.survey(), variants);
    List<Located> answers = new ArrayList<>();
    for (int v = 0; v < variants.size(); v++) {
      answers.add(answer(variants.get(v).names, hypotheses, gains.get(v)));
    }
    return answers;
  }

  private List<Hypothesis> hypotheses(Diagnosis diagnosis) {
    Map<String, JointBelief> beliefs = new HashMap<>();
    posterior.joints().forEach(belief -> beliefs.put(belief.joint().id(), belief));
    List<Hypothesis> hypotheses = new ArrayList<>();
    if (diagnosis.healthyProbability() > ALIVE) {
      hypotheses.add(new Hypothesis(Optional.empty(), 0, diagnosis.healthyProbability()));
    }
    for (Suspect suspect : diagnosis.suspects()) {
      JointBelief belief = beliefs.get(suspect.first().id());
      if (suspect.probability() > ALIVE
          && belief != null
          && !belief.ohms().isEmpty()
          && hypotheses.size() <= MOST) {
        double ohms =
            belief.ohms().stream()
                .max(Comparator.comparingDouble(OhmsPoint::share))
                .orElseThrow()
                .ohms();
        hypotheses.add(new Hypothesis(Optional.of(suspect), ohms, suspect.probability()));
      }
    }
    return hypotheses;
  }

  /** For each slip, by hypothesis, ln of the density of the readings against that as stated. */
  private List<double[]> gains(List<Hypothesis> hypotheses, Survey survey, List<Variant> variants) {
    double[] point = posterior.diagnosis().bestPointArray();
    Parameters parameters = Parameters.of(stated.circuit(), survey, stated.assumptions());
    SurveyModel model =
        SurveyModel.of(
            stated.circuit(),
            survey,
            stated.assumptions(),
            parameters,
            point,
            hypotheses.stream().flatMap(each -> each.suspect.stream()).map(Suspect::first).toList(),
            List.of());
    double range = LeaveOneOut.rangeOfLogOhms(stated.assumptions());
    Evaluation all = model.buffer();
    List<double[]> gains = new ArrayList<>();
    variants.forEach(each -> gains.add(new double[hypotheses.size()]));
    for (int h = 0; h < hypotheses.size(); h++) {
      Hypothesis hypothesis = hypotheses.get(h);
      if (hypothesis.suspect.isPresent()) {
        model.sweep(hypothesis.suspect.get().first()).evaluate(hypothesis.ohms, all);
      } else {
        model.evaluate(all);
      }
      Evaluation own = new Evaluation(readings.count(), parameters.size());
      copy(all, r -> r, own);
      double asStated = readings.logAround(own, point, range);
      for (int v = 0; v < variants.size(); v++) {
        Variant variant = variants.get(v);
        copy(all, variant.places::get, own);
        gains.get(v)[h] = readings.reading(variant.meant).logAround(own, point, range) - asStated;
      }
    }
    return gains;
  }

  private static void copy(Evaluation from, IntUnaryOperator place, Evaluation into) {
    int width = into.parameters();
    for (int r = 0; r < into.readings(); r++) {
      int at = place.applyAsInt(r);
      into.volts()[r] = from.volts()[at];
      into.perSupply()[r] = from.perSupply()[at];
      into.ohmsSlope()[r] = from.ohmsSlope()[at];
      System.arraycopy(from.jacobian(), at * width, into.jacobian(), r * width, width);
    }
  }

  /** Every hypothesis gains by itself; what is not followed gains as all together do. */
  private Located answer(Renaming names, List<Hypothesis> hypotheses, double[] gains) {
    double before = 0;
    double after = 0;
    Map<Optional<Suspect>, Double> factors = new LinkedHashMap<>();
    for (int h = 0; h < gains.length; h++) {
      Hypothesis hypothesis = hypotheses.get(h);
      double factor = Math.exp(gains[h]);
      before += hypothesis.probability;
      after += hypothesis.probability * factor;
      factors.put(hypothesis.suspect, factor);
    }
    return names.located(posterior, factors, after / before);
  }
}
