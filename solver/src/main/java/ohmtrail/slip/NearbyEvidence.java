package ohmtrail.slip;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.function.DoubleUnaryOperator;
import java.util.function.IntUnaryOperator;
import java.util.stream.Collectors;
import ohmtrail.circuit.Cable;
import ohmtrail.circuit.ConductorRole;
import ohmtrail.circuit.Joint;
import ohmtrail.circuit.Section;
import ohmtrail.locate.Diagnosis;
import ohmtrail.locate.JointBelief;
import ohmtrail.locate.Posterior;
import ohmtrail.locate.Suspect;
import ohmtrail.locate.evidence.LogSpace;
import ohmtrail.locate.hypothesis.OhmsPoint;
import ohmtrail.locate.hypothesis.Priors;
import ohmtrail.predict.Evaluation;
import ohmtrail.predict.JointResponse;
import ohmtrail.predict.Parameters;
import ohmtrail.predict.SurveyModel;
import ohmtrail.problem.Problem;
import ohmtrail.problem.Slip;
import ohmtrail.reference.Assumption;
import ohmtrail.survey.Survey;

/**
 * What the answer would be under a slip that the readings hardly speak of, told from the answer as
 * stated: two neighbours in each other's place, a load that was off in one test, or one reading
 * that is another one.
 *
 * <p>Each hypothesis that is alive as stated, a joint counted by its place in the run and not by
 * the name of its box, predicts what would be read under the slip too ({@link FurtherReadings});
 * the density of the readings as that against their density as stated, everything linearised at the
 * fit and the ohms one more parameter there, is what the slip gains or loses. To them come the
 * joints that only the slip may have a use for: between two exchanged neighbours, or beside a load
 * that was off.
 */
final class NearbyEvidence {
  /** Hypotheses less probable as stated are not followed. */
  private static final double ALIVE = 0.005;

  private static final int MOST = 6;
  private static final double MORE_THAN_NOT = 0.5;
  private static final double STEPS_PER_DECADE = 2;
  private static final int BISECTIONS = 10;
  private static final double GOLDEN = (Math.sqrt(5) - 1) / 2;

  /** A joint whose readings are so much farther off than their errors is not it. */
  private static final double FAR = 200;

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

  /** Whether a sound circuit or one joint explains the readings as stated: others have no say. */
  static boolean tells(Diagnosis diagnosis) {
    double others = diagnosis.severalProbability() + diagnosis.unexplainedProbability();
    return others <= MORE_THAN_NOT;
  }

  /**
   * The answer under each slip.
   *
   * @param exchanges of neighbours; one that needs another network is left out
   * @param loads that were off in one test
   * @param wrong readings that are other ones
   * @return nothing where neither a sound circuit nor one joint explains the readings as stated
   */
  List<Located> of(
      List<Supposition> exchanges, List<Supposition> loads, List<ReadingSlips.Instead> wrong) {
    Diagnosis diagnosis = posterior.diagnosis();
    List<Hypothesis> hypotheses = hypotheses(diagnosis);
    if (!tells(diagnosis) || hypotheses.isEmpty()) {
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
    for (Supposition each : loads) {
      Slip.LoadDidNotDraw off = (Slip.LoadDidNotDraw) each.slip();
      further
          .placesWithout(off.load(), off.tests().get(0))
          .ifPresent(
              places -> variants.add(new Variant(each, places, Renaming.none(each), Map.of())));
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
    return new Weighing(hypotheses, further.survey()).answers(variants);
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

  /** The model at the fit, and what every hypothesis weighs there as stated. */
  private final class Weighing {
    private final List<Hypothesis> hypotheses;
    private final double[] point = posterior.diagnosis().bestPointArray();
    private final double range = LeaveOneOut.rangeOfLogOhms(stated.assumptions());
    private final SurveyModel model;
    private final Evaluation all;
    private final Evaluation own;
    private final List<Double> asStated = new ArrayList<>();
    private final double[] leading;

    Weighing(List<Hypothesis> hypotheses, Survey survey) {
      this.hypotheses = hypotheses;
      Parameters parameters = Parameters.of(stated.circuit(), survey, stated.assumptions());
      this.model =
          SurveyModel.of(
              stated.circuit(),
              survey,
              stated.assumptions(),
              parameters,
              point,
              hypotheses.stream()
                  .flatMap(each -> each.suspect.stream())
                  .map(Suspect::first)
                  .toList(),
              List.of());
      this.all = model.buffer();
      this.own = new Evaluation(readings.count(), parameters.size());
      evaluate(hypotheses.get(leader()));
      this.leading = all.volts().clone();
    }

    private void evaluate(Hypothesis hypothesis) {
      if (hypothesis.suspect.isPresent()) {
        model.sweep(hypothesis.suspect.get().first()).evaluate(hypothesis.ohms, all);
      } else {
        model.evaluate(all);
      }
    }

    List<Located> answers(List<Variant> offered) {
      List<Variant> variants = offered.stream().filter(this::isWorthAsking).toList();
      List<double[]> gains = new ArrayList<>();
      variants.forEach(each -> gains.add(new double[hypotheses.size()]));
      for (int h = 0; h < hypotheses.size(); h++) {
        evaluate(hypotheses.get(h));
        copy(all, r -> r, own);
        asStated.add(readings.logAround(own, point, range));
        for (int v = 0; v < variants.size(); v++) {
          gains.get(v)[h] = logOf(variants.get(v)) - asStated.get(h);
        }
      }
      List<Located> answers = new ArrayList<>();
      for (int v = 0; v < variants.size(); v++) {
        answers.add(answer(variants.get(v), gains.get(v)));
      }
      return answers;
    }

    /**
     * A load that was off must bring the readings of its test nearer, where the likeliest holds.
     */
    private boolean isWorthAsking(Variant variant) {
      return !(variant.supposition.slip() instanceof Slip.LoadDidNotDraw)
          || readings.roughMisfit(read(leading, variant.places::get))
              < readings.roughMisfit(read(leading, r -> r));
    }

    private double[] read(double[] volts, IntUnaryOperator place) {
      double[] read = new double[readings.count()];
      for (int r = 0; r < read.length; r++) {
        read[r] = volts[place.applyAsInt(r)];
      }
      return read;
    }

    /** Of what was evaluated last. */
    private double logOf(Variant variant) {
      copy(all, variant.places::get, own);
      return readings.reading(variant.meant).logAround(own, point, range);
    }

    /** Every hypothesis gains by itself; what is not followed gains as all together do. */
    private Located answer(Variant variant, double[] gains) {
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
      return variant.names.located(posterior, factors, after / before, revived(variant));
    }

    /**
     * Joints that the stated problem may have no use for, and the slip may: between two exchanged
     * neighbours, or on either side of the box where a load was off. Their weight is to that of the
     * likeliest hypothesis as the priors and densities are.
     */
    private List<JointBelief> revived(Variant variant) {
      List<Section> sections = sections(variant.supposition.slip());
      if (sections.isEmpty()) {
        return List.of();
      }
      int leader = leader();
      double log = Math.log(hypotheses.get(leader).probability) - asStated.get(leader);
      log -= logPrior(hypotheses.get(leader));
      Priors priors = Priors.of(variant.supposition.problem());
      List<JointBelief> revived = new ArrayList<>();
      for (Section section : sections) {
        OptionalDouble ohms = ohms(section.near(), variant);
        if (ohms.isPresent()) {
          model.sweep(section.near()).evaluate(ohms.getAsDouble(), all);
          double each = log + logOf(variant);
          for (Joint joint : section.joints()) {
            double probability =
                Math.exp(each + priors.logOf(variant.names.of(joint)) + priors.logStableAlone());
            revived.add(
                new JointBelief(
                    joint, probability, List.of(new OhmsPoint(ohms.getAsDouble(), 1, 0))));
          }
        }
      }
      return revived;
    }

    private List<Section> sections(Slip slip) {
      Set<String> alive =
          hypotheses.stream()
              .flatMap(each -> each.suspect.stream())
              .flatMap(suspect -> suspect.joints().stream())
              .map(Joint::id)
              .collect(Collectors.toSet());
      return stated.circuit().sections().stream()
          .filter(section -> section.conductor() != ConductorRole.GROUND)
          .filter(section -> concerns(slip, section.cable()))
          .filter(
              section ->
                  slip instanceof Slip.BoxesExchanged
                      || section.joints().stream().noneMatch(each -> alive.contains(each.id())))
          .toList();
    }

    private boolean concerns(Slip slip, Cable cable) {
      if (slip instanceof Slip.BoxesExchanged pair) {
        return cable.from().equals(pair.nearer()) && cable.to().equals(pair.farther());
      }
      return slip instanceof Slip.LoadDidNotDraw off
          && stated.survey().tests().stream()
              .filter(test -> off.tests().contains(test.name()))
              .flatMap(test -> test.loads().stream())
              .anyMatch(
                  use ->
                      use.load().equals(off.load())
                          && (cable.from().equals(use.box()) || cable.to().equals(use.box())));
    }

    private int leader() {
      int leader = 0;
      for (int h = 1; h < hypotheses.size(); h++) {
        leader = hypotheses.get(h).probability > hypotheses.get(leader).probability ? h : leader;
      }
      return leader;
    }

    private double logPrior(Hypothesis hypothesis) {
      Priors priors = Priors.of(stated);
      if (hypothesis.suspect.isEmpty()) {
        return priors.logSound();
      }
      double log = Double.NEGATIVE_INFINITY;
      for (Joint joint : hypothesis.suspect.get().joints()) {
        log = LogSpace.sum(log, priors.logOf(joint));
      }
      return log + priors.logStableAlone();
    }

    /** The ohms of a joint that go best with the readings; empty where none goes with them. */
    private OptionalDouble ohms(Joint joint, Variant variant) {
      JointResponse response = model.respond(joint);
      DoubleUnaryOperator misfit = logOhms -> misfit(response, Math.exp(logOhms), variant);
      double step = Math.log(10) / STEPS_PER_DECADE;
      double best = Math.log(stated.assumptions().value(Assumption.DEGRADED_OHMS_LOW));
      double top = Math.log(stated.assumptions().value(Assumption.DEGRADED_OHMS_HIGH));
      for (double each = best; each < top; each += step) {
        best = misfit.applyAsDouble(each) < misfit.applyAsDouble(best) ? each : best;
      }
      double low = best - step;
      double high = best + step;
      for (int i = 0; i < BISECTIONS; i++) {
        double left = high - GOLDEN * (high - low);
        double right = low + GOLDEN * (high - low);
        boolean isLeft = misfit.applyAsDouble(left) < misfit.applyAsDouble(right);
        high = isLeft ? right : high;
        low = isLeft ? low : left;
      }
      double middle = (low + high) / 2;
      return misfit.applyAsDouble(middle) > FAR
          ? OptionalDouble.empty()
          : OptionalDouble.of(Math.exp(middle));
    }

    private double misfit(JointResponse response, double ohms, Variant variant) {
      double[] volts = new double[model.readings()];
      response.volts(ohms, volts);
      return readings.roughMisfit(read(volts, variant.places::get));
    }
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
}
