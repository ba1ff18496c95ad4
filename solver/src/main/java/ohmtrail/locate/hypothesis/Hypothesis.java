package ohmtrail.locate.hypothesis;

import java.util.Collection;
import java.util.List;
import java.util.Optional;
import ohmtrail.circuit.Joint;
import ohmtrail.locate.evidence.LogSpace;
import ohmtrail.locate.evidence.Observations;

/**
 * What may be true of a circuit. Every kind knows the natural logarithm of its posterior before
 * normalisation: prior times marginal likelihood, the nuisance parameters and the ohms integrated
 * out. The difference of two of them is the logarithm of the posterior odds.
 */
public sealed interface Hypothesis {
  /** ln (prior times marginal likelihood). */
  double logPosterior();

  /** ln of the sum over hypotheses that exclude each other; negative infinity for none. */
  static double logSum(Collection<? extends Hypothesis> hypotheses) {
    return LogSpace.sum(hypotheses.stream().mapToDouble(Hypothesis::logPosterior));
  }

  /**
   * Copper and sound joints explain every reading.
   *
   * @param logPosterior ln (prior times marginal likelihood)
   */
  record Sound(double logPosterior) implements Hypothesis {}

  /**
   * One joint is degraded, its ohms the same under any current.
   *
   * @param joint the joint
   * @param logPrior natural logarithm of its prior
   * @param logMarginalLikelihood natural logarithm of the likelihood, integrated over the ohms
   * @param profile the likelihood over the ohms; empty where an approximation was enough
   * @param volts what it predicts at its best, one per reading; empty as the profile is
   */
  record OneJoint(
      Joint joint,
      double logPrior,
      double logMarginalLikelihood,
      Optional<OhmsProfile> profile,
      List<Double> volts)
      implements Hypothesis {
    /** Copies the list. */
    public OneJoint {
      volts = List.copyOf(volts);
    }

    /** A joint whose likelihood is known only roughly. */
    public static OneJoint roughly(Joint joint, double logPrior, double logMarginalLikelihood) {
      return new OneJoint(joint, logPrior, logMarginalLikelihood, Optional.empty(), List.of());
    }

    @Override
    public double logPosterior() {
      return logPrior + logMarginalLikelihood;
    }

    /** The ohms of the highest likelihood; may be infinite; 0 where no profile is known. */
    public double peakOhms() {
      return profile.map(OhmsProfile::peakOhms).orElse(0.0);
    }

    /** The same for a joint that no reading tells from this one. */
    public OneJoint standingFor(Joint twin, double itsLogPrior) {
      return new OneJoint(twin, itsLogPrior, logMarginalLikelihood, profile, volts);
    }

    /** The same joint, its prior times e to the given power. */
    public OneJoint scaled(double logFactor) {
      return new OneJoint(joint, logPrior + logFactor, logMarginalLikelihood, profile, volts);
    }

    /** The same joint with more probability: what an unstable one adds to a stable one. */
    public OneJoint withAdded(double addedLogPosterior) {
      double total = LogSpace.sum(logPosterior(), addedLogPosterior);
      return new OneJoint(joint, logPrior, total - logPrior, profile, volts);
    }

    /**
     * The largest difference between two joints' predictions, in standard deviations of the
     * readings' own errors.
     */
    public double distance(OneJoint other, Observations observations) {
      double largest = 0;
      for (int r = 0; r < volts.size(); r++) {
        double difference = Math.abs(volts.get(r) - other.volts.get(r));
        largest = Math.max(largest, difference / Math.sqrt(observations.variance(r)));
      }
      return largest;
    }
  }

  /**
   * One joint is degraded, and its ohms differ between small and large currents.
   *
   * @param logPosterior ln (prior times marginal likelihood)
   * @param fitted its ohms in unloaded and in loaded tests
   */
  record UnstableJoint(double logPosterior, FittedOhms fitted) implements Hypothesis {
    /** Name of the joint. */
    public String joint() {
      return fitted.degradations().get(0).joint();
    }
  }

  /**
   * Two or three joints are degraded at once.
   *
   * @param logPosterior ln (prior times marginal likelihood) of all that the alternatives stand for
   * @param fitted the most probable set of joints
   * @param alternatives per joint of it, every joint that may stand there with the others kept;
   *     empty where none were looked for
   */
  record SeveralJoints(double logPosterior, FittedOhms fitted, List<List<OneJoint>> alternatives)
      implements Hypothesis {
    /** Copies the list. */
    public SeveralJoints {
      alternatives = List.copyOf(alternatives);
    }

    /** The number of joints. */
    public int count() {
      return fitted.degradations().size();
    }
  }

  /**
   * Nothing on offer explains the readings unless two or more of them are outliers.
   *
   * @param logPosterior ln (prior times marginal likelihood), all such explanations added up
   * @param explanation the most probable of them
   */
  record Unexplained(double logPosterior, Explanation explanation) implements Hypothesis {}
}
