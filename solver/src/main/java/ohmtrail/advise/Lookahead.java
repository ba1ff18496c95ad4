package ohmtrail.advise;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import ohmtrail.locate.evidence.OutlierDensity;
import ohmtrail.survey.Meter;
import ohmtrail.survey.Survey;

/**
 * The expected minutes after a visit, by simulating what it shows.
 *
 * <p>Outcomes are drawn from the beliefs, each as often as it is probable, with errors from {@link
 * Evenly}; so the same case gets the same answer. After each outcome every belief is weighed anew,
 * a reading being wrong outright now and then, and what is left to do is that of {@link Remaining},
 * or a further visit and then that. Belongs to one thread.
 */
final class Lookahead {
  private final Beliefs beliefs;
  private final Remaining remaining;
  private final Survey survey;
  private final double wrongProbability;
  private final BoxShares shares;
  private final SecondStep second;
  private final double[] now;

  /**
   * Prepares.
   *
   * @param beliefs what is believed now
   * @param shares the same as arrays
   * @param remaining what is left to do after the visit, as it is estimated
   * @param second the visits that may follow
   * @param survey knows the meters
   * @param wrongProbability that a reading is wrong outright
   */
  Lookahead(
      Beliefs beliefs,
      BoxShares shares,
      Remaining remaining,
      SecondStep second,
      Survey survey,
      double wrongProbability) {
    this.beliefs = beliefs;
    this.remaining = remaining;
    this.survey = survey;
    this.wrongProbability = wrongProbability;
    this.shares = shares;
    this.second = second;
    this.now = beliefs.boxMasses();
  }

  /**
   * One simulated outcome.
   *
   * @param values the readings as numbers to fit, each in the unit of its measurand
   * @param masses the probability of each box after it
   * @param healthy the probability of a sound circuit after it
   * @param minutes expected after it
   */
  record Simulated(List<Double> values, List<Double> masses, double healthy, double minutes) {
    /** The same with so many minutes more. */
    Simulated later(double more) {
      return new Simulated(values, masses, healthy, minutes + more);
    }

    /**
     * How much likelier one place is than another; a sound circuit is the place behind the last.
     */
    double lead(int one, int other) {
      return of(one) - of(other);
    }

    private double of(int place) {
      return place == masses.size() ? healthy : masses.get(place);
    }
  }

  /** Expected minutes as it is, without a visit, but for those that the estimate counts on. */
  double without(double fetching) {
    return remaining.expected(now, fetching);
  }

  /**
   * Expected minutes after a visit, with none after it.
   *
   * @param read the visit
   * @param forecast what its readings show under each belief, in their order
   * @param fetching minutes to get a load for what follows
   * @param samples how many outcomes are simulated
   */
  double oneStep(Choice.Read read, List<Gaussian> forecast, double fetching, int samples) {
    Visit visit = new Visit(read, forecast);
    Tangent tangent = remaining.tangent(now, fetching);
    double sum = 0;
    for (int s = 0; s < samples; s++) {
      visit.simulate(s, samples);
      sum += remaining.expected(visit.masses, fetching) - tangent.at(visit.masses);
    }
    return tangent.at(now) + sum / samples;
  }

  /**
   * Outcomes of a visit, each with the minutes expected if one more may follow.
   *
   * @param read the visit
   * @param forecast what its readings show under each belief, in their order
   * @param fetching minutes to get a load for that one
   * @param samples how many outcomes are simulated
   */
  List<Simulated> twoSteps(
      Choice.Read read, List<Gaussian> forecast, double fetching, int samples) {
    Visit visit = new Visit(read, forecast);
    Tangent tangent = remaining.tangent(now, fetching);
    List<Simulated> outcomes = new ArrayList<>();
    double byChance = 0;
    for (int s = 0; s < samples; s++) {
      double[] values = visit.simulate(s, samples);
      double without = remaining.expected(visit.masses, fetching);
      outcomes.add(
          new Simulated(
              listed(values),
              listed(visit.masses),
              visit.healthy,
              second.expected(visit.weights, without, fetching)));
      byChance += (tangent.at(visit.masses) - tangent.at(now)) / samples;
    }
    double correction = -byChance;
    return outcomes.stream().map(outcome -> outcome.later(correction)).toList();
  }

  /**
   * Boxes and a sound circuit after given readings.
   *
   * @param read the visit
   * @param forecast what its readings show under each belief, in their order
   * @return for the readings of the visit as numbers to fit, what follows; no minutes
   */
  Function<List<Double>, Simulated> posterior(Choice.Read read, List<Gaussian> forecast) {
    Visit visit = new Visit(read, forecast);
    return values -> {
      visit.weigh(values.stream().mapToDouble(Double::doubleValue).toArray());
      return new Simulated(values, listed(visit.masses), visit.healthy, 0);
    };
  }

  private static List<Double> listed(double[] values) {
    List<Double> list = new ArrayList<>();
    for (double value : values) {
      list.add(value);
    }
    return List.copyOf(list);
  }

  private final class Visit {
    private final List<Gaussian> forecast;
    private final List<Meter> meters;
    private final double[] masses = new double[shares.boxes()];
    private final double[] weights = new double[shares.beliefs()];
    private double healthy;

    Visit(Choice.Read read, List<Gaussian> forecast) {
      this.forecast = forecast;
      this.meters = read.readings().stream().map(reading -> survey.meter(reading.meter())).toList();
    }

    /** Draws an outcome and weighs every belief by it. */
    double[] simulate(int sample, int samples) {
      int size = forecast.get(0).size();
      double[] normals = new double[size];
      for (int d = 0; d < size; d++) {
        normals[d] = Evenly.normal(sample, d);
      }
      double[] values = forecast.get(shares.drawn((sample + 0.5) / samples)).at(normals);
      weigh(values);
      return values;
    }

    private void weigh(double[] values) {
      double total = 0;
      double right = 1;
      double wrong = 1;
      for (int r = 0; r < values.length; r++) {
        right *= 1 - wrongProbability;
        wrong *= wrongProbability * OutlierDensity.of(beliefs.circuit(), meters.get(r), values[r]);
      }
      for (int b = 0; b < weights.length; b++) {
        weights[b] = shares.prior(b) * (right * forecast.get(b).density(values) + wrong);
        total += weights[b];
      }
      healthy = 0;
      for (int b = 0; b < weights.length; b++) {
        weights[b] /= total;
        healthy += beliefs.all().get(b).isHealthy() ? weights[b] : 0;
      }
      shares.fill(masses, weights);
    }
  }
}
