package ohmtrail.advise;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import ohmtrail.circuit.Circuit;
import ohmtrail.locate.Posterior;
import ohmtrail.reference.Assumptions;
import ohmtrail.survey.Meter;
import ohmtrail.survey.ReadingError;
import ohmtrail.survey.Survey;
import ohmtrail.survey.Test;

/**
 * What a reading to come would show under every hypothesis that is still believable, given the
 * readings taken.
 *
 * @param meter that shows it
 * @param under one prediction per hypothesis; at least that of a sound circuit
 */
public record Outlook(Meter meter, List<Prediction> under) {
  /** Less probable hypotheses make nothing believable. */
  private static final double BELIEVABLE = 0.005;

  /** So many standard deviations off is believable still. */
  private static final double SIGMAS = 3;

  /** The stretch of ohms of a hypothesis ends at its neighbours'. */
  private static final double STRETCHES = 1.5;

  /**
   * Under one hypothesis, as numbers to fit ({@link ReadingError}).
   *
   * @param value expected, in the unit of the measurand
   * @param sigma standard deviation for given ohms
   * @param stretch standard deviation from ohms that are known to a stretch
   */
  public record Prediction(double value, double sigma, double stretch) {
    private double margin() {
      return SIGMAS * sigma + STRETCHES * stretch;
    }
  }

  /** Copies the list. */
  public Outlook {
    under = List.copyOf(under);
  }

  /**
   * Looks ahead.
   *
   * @param taken the readings so far; meters and loads of the test are at hand
   * @param posterior of the same survey
   * @param blank one reading; its value is of no effect
   */
  public static Outlook of(
      Circuit circuit, Survey taken, Assumptions assumptions, Posterior posterior, Test blank) {
    Choice.Read visit = new Choice.Read(List.of(blank));
    Beliefs beliefs =
        Beliefs.of(
            circuit, posterior, visit.isInside() ? Optional.of(visit.box()) : Optional.empty());
    double[] point = posterior.diagnosis().bestPointArray();
    Forecast forecast = new Forecast(circuit, taken, List.of(visit), assumptions, point, beliefs);
    List<Prediction> under = new ArrayList<>();
    for (Belief belief : beliefs.all()) {
      if (belief.probability() >= BELIEVABLE || belief.isHealthy()) {
        Belief certain = new Belief(belief.degradations(), 0, belief.probability(), belief.boxes());
        double sigma = forecast.under(certain).of(visit).sigma(0);
        Gaussian shows = forecast.under(belief).of(visit);
        double stretch = Math.sqrt(Math.max(0, Math.pow(shows.sigma(0), 2) - sigma * sigma));
        under.add(new Prediction(shows.mean(0), sigma, stretch));
      }
    }
    return new Outlook(taken.meter(visit.readings().get(0).meter()), under);
  }

  /**
   * Whether any hypothesis shows about that.
   *
   * @param shown by the meter, in its unit; infinite for an open way
   */
  public boolean allows(double shown) {
    double value = ReadingError.number(shown, meter);
    return under.stream().anyMatch(each -> Math.abs(value - each.value()) <= each.margin());
  }

  /** The least that is believable, as the meter shows it. */
  public double least() {
    double least = under.stream().mapToDouble(each -> each.value() - each.margin()).min().orElse(0);
    return ReadingError.shown(Math.max(0, least), meter);
  }

  /** The most that is believable, as the meter shows it; infinite for an open way. */
  public double most() {
    double most = under.stream().mapToDouble(each -> each.value() + each.margin()).max().orElse(0);
    return ReadingError.shown(most, meter);
  }
}
