package ohmtrail.locate.fit;

import java.util.function.DoubleFunction;
import java.util.function.ToDoubleFunction;
import ohmtrail.locate.evidence.Likelihood;
import ohmtrail.locate.hypothesis.OhmsPrior;
import ohmtrail.locate.settings.Settings;

/** The way uphill in the ohms of one joint, by Gauss-Newton steps in ln R. Immutable. */
public final class GaussNewton {
  private final DoubleFunction<Likelihood> likelihood;
  private final OhmsPrior prior;
  private final Settings.Ascent settings;

  /**
   * Prepares.
   *
   * @param likelihood at so many ohms
   * @param prior bounds the ohms
   * @param settings how far to go
   */
  GaussNewton(DoubleFunction<Likelihood> likelihood, OhmsPrior prior, Settings.Ascent settings) {
    this.likelihood = likelihood;
    this.prior = prior;
    this.settings = settings;
  }

  /**
   * A place on the way.
   *
   * @param ohms may be infinite
   * @param likelihood there
   */
  public record Place(double ohms, Likelihood likelihood) {}

  /** The place at so many ohms. */
  public Place at(double ohms) {
    return new Place(ohms, likelihood.apply(ohms));
  }

  /** The nearest peak of the likelihood uphill from a place. */
  public Place climb(Place from) {
    return climb(from, Likelihood::log, Likelihood::step);
  }

  /** The nearest peak uphill as if no further reading could be an outlier. */
  public Place climbWithoutOutlier(Place from) {
    return climb(from, Likelihood::logNoOutlier, Likelihood::noOutlierStep);
  }

  /** Each step must raise the height or it is halved. */
  private Place climb(
      Place from, ToDoubleFunction<Likelihood> height, ToDoubleFunction<Likelihood> stepOf) {
    Place best = from;
    double shrink = 1;
    for (int i = 0; i < settings.mostSteps() && Double.isFinite(best.ohms()); i++) {
      double wanted = stepOf.applyAsDouble(best.likelihood());
      double step =
          Math.max(-settings.longestStep(), Math.min(settings.longestStep(), wanted)) * shrink;
      double next = prior.bounded(Math.exp(Math.log(best.ohms()) + step));
      boolean isSmall =
          Math.abs(step) * Math.sqrt(best.likelihood().curvature()) < settings.smallStep();
      if (isSmall || next == best.ohms()) {
        return best;
      }
      Place candidate = at(next);
      if (height.applyAsDouble(candidate.likelihood()) > height.applyAsDouble(best.likelihood())) {
        best = candidate;
        shrink = 1;
      } else {
        shrink /= 2;
      }
    }
    return best;
  }
}
