package ohmtrail.advise;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import ohmtrail.locate.Posterior;
import ohmtrail.problem.Problem;
import ohmtrail.reference.UsualValue;
import ohmtrail.survey.Meter;
import ohmtrail.survey.ReadingError;
import ohmtrail.survey.Test;

/**
 * What a reading to come will show, given the readings taken: the posterior predictive
 * distribution, a mixture of one normal component for each hypothesis and stretch of its ohms.
 *
 * <p>A value is credible when it lies in the region of highest density that holds {@link #CREDIBLE}
 * of the probability. Of all regions of that probability it is the smallest, so of all rules that
 * doubt as few true readings it doubts most of those that are wrong, their density being even
 * (Neyman and Pearson's lemma).
 *
 * @param meter that shows it
 * @param components of the mixture; at least one
 */
public record PredictiveDistribution(Meter meter, List<Component> components) {
  /** True readings that are not doubted. */
  private static final double CREDIBLE = UsualValue.CREDIBLE_SHARE.value();

  /** A joint's ohms are looked at in so many places of each stretch: volts bend along them. */
  private static final int PLACES_IN_A_STRETCH = 4;

  /** Values at which each component stands for its share of the probability. */
  private static final int QUADRATURE_NODES = 15;

  /** Standard deviations to either side that the nodes reach. */
  private static final double REACH = 3.5;

  /** No component is narrower, in steps of the display: it is rounded to one. */
  private static final double LEAST_SIGMA_IN_STEPS = 0.3;

  /**
   * A normal distribution, in numbers to fit ({@link ReadingError}).
   *
   * @param weight probability of the hypothesis; not negative
   * @param mean in the unit of the measurand
   * @param sigma standard deviation; above 0
   */
  public record Component(double weight, double mean, double sigma) {
    private double density(double value) {
      double z = (value - mean) / sigma;
      return weight / sigma * Math.exp(-0.5 * z * z);
    }
  }

  /** A value that stands for a share of the probability. */
  private record Node(double value, double probability) {}

  /** Copies the list. */
  public PredictiveDistribution {
    components = List.copyOf(components);
  }

  /**
   * Predicts a reading.
   *
   * @param problem the readings so far; meters and loads of the test are at hand
   * @param posterior of that problem
   * @param blank a test with one reading; its value is of no effect
   */
  public static PredictiveDistribution of(Problem problem, Posterior posterior, Test blank) {
    Choice.Read visit = new Choice.Read(List.of(blank));
    Optional<String> openBox = visit.isInside() ? Optional.of(visit.box()) : Optional.empty();
    Beliefs beliefs = Beliefs.whole(problem.circuit(), posterior, openBox);
    Forecast forecast =
        new Forecast(
            problem.circuit(),
            problem.survey(),
            List.of(visit),
            problem.assumptions(),
            posterior.diagnosis().bestPointArray(),
            beliefs);
    Meter meter = problem.survey().meter(blank.readings().get(0).meter());
    double least = LEAST_SIGMA_IN_STEPS * meter.resolution();
    List<Component> components = new ArrayList<>();
    for (Belief belief : beliefs.all()) {
      for (Belief part : belief.parts(PLACES_IN_A_STRETCH)) {
        Gaussian shows = forecast.under(part).of(visit);
        components.add(
            new Component(part.probability(), shows.mean(0), Math.max(least, shows.sigma(0))));
      }
    }
    return new PredictiveDistribution(meter, components);
  }

  /**
   * Whether a reading is one that is to be expected.
   *
   * @param shown by the meter, in its unit; infinite for an open way
   */
  public boolean isCredible(double shown) {
    double density = density(ReadingError.number(shown, meter));
    double below = 0;
    double all = 0;
    for (Node node : nodes()) {
      all += node.probability();
      below += density(node.value()) <= density ? node.probability() : 0;
    }
    return below > (1 - CREDIBLE) * all;
  }

  private double density(double value) {
    double density = 0;
    for (Component component : components) {
      density += component.density(value);
    }
    return density;
  }

  private List<Node> nodes() {
    List<Node> nodes = new ArrayList<>();
    for (Component component : components) {
      for (int n = 0; n < QUADRATURE_NODES; n++) {
        double z = REACH * (2.0 * n / (QUADRATURE_NODES - 1) - 1);
        nodes.add(
            new Node(
                component.mean() + z * component.sigma(),
                component.weight() * Math.exp(-0.5 * z * z)));
      }
    }
    return nodes;
  }

  /** The least that is credible, as the meter shows it. */
  public double least() {
    return ReadingError.shown(Math.max(0, quantile((1 - CREDIBLE) / 2)), meter);
  }

  /** The most that is credible, as the meter shows it; infinite for an open way. */
  public double most() {
    return ReadingError.shown(quantile((1 + CREDIBLE) / 2), meter);
  }

  private double quantile(double share) {
    List<Node> sorted = nodes().stream().sorted(Comparator.comparingDouble(Node::value)).toList();
    double all = sorted.stream().mapToDouble(Node::probability).sum();
    double sum = 0;
    for (Node node : sorted) {
      sum += node.probability();
      if (sum >= share * all) {
        return node.value();
      }
    }
    return sorted.get(sorted.size() - 1).value();
  }
}
