package ohmtrail.advise;

import java.util.ArrayList;
import java.util.List;

/**
 * The expected minutes after a visit, by simulating what it shows.
 *
 * <p>Outcomes are drawn from the beliefs, each as often as it is probable, with errors from {@link
 * Evenly}; so the same case gets the same answer. After each outcome every belief is weighed anew,
 * a reading being wrong outright now and then, and what is left to do is that of {@link
 * OpeningMinutes}, or a further visit and then that. Belongs to one thread.
 */
final class Lookahead {
  /** A reading that is wrong lies anywhere in so many times the nominal voltage. */
  private static final double WRONG_RANGE = 1.25;

  private final Beliefs beliefs;
  private final OpeningMinutes opening;
  private final double rightProbability;
  private final double wrongDensity;
  private final BoxShares shares;
  private final SecondStep second;

  /**
   * Prepares.
   *
   * @param beliefs what is believed now
   * @param shares the same as arrays
   * @param opening what is left to do after the visit, without a further one
   * @param second the visits that may follow
   * @param wrongProbability that a reading is wrong outright
   */
  Lookahead(
      Beliefs beliefs,
      BoxShares shares,
      OpeningMinutes opening,
      SecondStep second,
      double wrongProbability) {
    this.beliefs = beliefs;
    this.opening = opening;
    this.rightProbability = 1 - wrongProbability;
    this.wrongDensity = wrongProbability / (WRONG_RANGE * beliefs.circuit().supply().volts());
    this.shares = shares;
    this.second = second;
  }

  /**
   * One simulated outcome.
   *
   * @param volts the readings
   * @param masses the probability of each box after it
   * @param healthy the probability of a sound circuit after it
   * @param minutes expected after it
   */
  record Simulated(List<Double> volts, List<Double> masses, double healthy, double minutes) {}

  /**
   * Expected minutes after a visit, with none after it.
   *
   * @param forecast what its readings show under each belief, in their order
   * @param samples how many outcomes are simulated
   */
  double oneStep(List<Gaussian> forecast, int samples) {
    Visit visit = new Visit(forecast);
    double sum = 0;
    for (int s = 0; s < samples; s++) {
      visit.simulate(s, samples);
      sum += opening.expected(visit.masses);
    }
    return sum / samples;
  }

  /**
   * Outcomes of a visit, each with the minutes expected if one more may follow.
   *
   * @param forecast what its readings show under each belief, in their order
   * @param fetching minutes to get a load for that one
   * @param samples how many outcomes are simulated
   */
  List<Simulated> twoSteps(List<Gaussian> forecast, double fetching, int samples) {
    Visit visit = new Visit(forecast);
    List<Simulated> outcomes = new ArrayList<>();
    for (int s = 0; s < samples; s++) {
      double[] volts = visit.simulate(s, samples);
      outcomes.add(
          new Simulated(
              listed(volts),
              listed(visit.masses),
              visit.healthy,
              second.expected(visit.weights, opening.expected(visit.masses), fetching)));
    }
    return outcomes;
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
    private final double[] masses = new double[shares.boxes()];
    private final double[] weights = new double[shares.beliefs()];
    private double healthy;

    Visit(List<Gaussian> forecast) {
      this.forecast = forecast;
    }

    /** Draws an outcome and weighs every belief by it. */
    double[] simulate(int sample, int samples) {
      int size = forecast.get(0).size();
      double[] normals = new double[size];
      for (int d = 0; d < size; d++) {
        normals[d] = Evenly.normal(sample, d);
      }
      double[] volts = forecast.get(shares.drawn((sample + 0.5) / samples)).at(normals);
      weigh(volts);
      return volts;
    }

    private void weigh(double[] volts) {
      double total = 0;
      double right = Math.pow(rightProbability, volts.length);
      double wrong = Math.pow(wrongDensity, volts.length);
      for (int b = 0; b < weights.length; b++) {
        weights[b] = shares.prior(b) * (right * forecast.get(b).density(volts) + wrong);
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
