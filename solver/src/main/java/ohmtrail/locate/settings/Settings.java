package ohmtrail.locate.settings;

/**
 * Every tuning constant of the inference: how closely it looks, where it stops, and what it treats
 * as equal. None of them says anything about circuits; finer ones change an answer by less than it
 * is written with, at the price of time. A study varies them by building a record of its own.
 *
 * <p>Logarithms are natural; "behind" is a difference of log posteriors or log likelihoods.
 *
 * @param screening the first look at every joint
 * @param ascent the way uphill in the ohms, and linearising again
 * @param fit nonlinear least squares
 * @param profile the profile of the likelihood over the ohms
 * @param shortlist which single joints are worth how much
 * @param several several joints at once
 * @param outliers readings that are wrong outright
 * @param answer what counts as equal in an answer
 */
public record Settings(
    Screening screening,
    Ascent ascent,
    Fit fit,
    Profile profile,
    Shortlist shortlist,
    Several several,
    Outliers outliers,
    Answer answer) {

  private static final Settings USUAL =
      new Settings(
          new Screening(2, 2, 22, 10, 200, 1e5, 1e5, 0.01, 1e-3, 0.05, 1e4, 24e6),
          new Ascent(6, 1.5, 0.05, 0.05, 4, 30, 0.02, 3, 0.5, 0.3),
          new Fit(1e-4, 1e-3, 60, 4, 5, 100, 10, 4, 5, 0.05),
          new Profile(
              Math.log(10) / 4, 0.5, 10, 0.3, 2e-3, 0.03, 1e-3, 5, 1.6, 3, 9, 1e-6, 1.2, 30, 1e9),
          new Shortlist(7, 10, 5, 40, 0.7, 0.1),
          new Several(3, 3, 3, 0.3, 4, 1),
          new Outliers(2, 3, 20, 8),
          new Answer(0.3, 0.5, 0.05, 60, 1e-5));

  /** Those that the method was checked with. */
  public static Settings usual() {
    return USUAL;
  }

  /**
   * The first look at every joint: a coarse sweep over its ohms, measured with the covariance of
   * the circuit with nothing added.
   *
   * @param stepsPerDecade of the sweep; the readings move over about a decade of ohms, and two
   *     steps in each find every valley
   * @param mostValleys minima of the sweep that are followed
   * @param outlierCost squared Mahalanobis distance that calling one reading an outlier costs while
   *     a start is looked for: about -2 ln of the prior of one and of its density
   * @param farRatio a joint is far off from so many times the squared distance of the nearest plus
   *     {@code farMargin}: the covariance of a sound circuit knows nothing of how strongly a
   *     degraded joint makes readings depend on the true power of the load, which raises the
   *     distance of the right joint several times over, never this much
   * @param farMargin squared standard deviations
   * @param capacitiveOhms above so many ohms a reading hangs on capacitances that a sound circuit
   *     does not feel, known to a factor of two
   * @param capacitiveMargin {@code farMargin} there: next to nothing is set aside
   * @param twinMargin joints whose squared distances differ by less than this plus {@code
   *     twinShare} of themselves all along the sweep are told apart by no reading
   * @param twinShare relative
   * @param farTwinShare the same where both are so far off that it does not matter
   * @param farTwin the squared distance from which that holds
   * @param sweepBytes memory for sweeps that may be needed again, bytes; one beyond that is worked
   *     out anew
   */
  public record Screening(
      int stepsPerDecade,
      int mostValleys,
      double outlierCost,
      double farRatio,
      double farMargin,
      double capacitiveOhms,
      double capacitiveMargin,
      double twinMargin,
      double twinShare,
      double farTwinShare,
      double farTwin,
      double sweepBytes) {}

  /**
   * Gauss-Newton steps in ln R, and where the model is linearised.
   *
   * @param mostSteps of one ascent
   * @param longestStep in ln R
   * @param smallStep a step this small against the standard deviation of the peak changes nothing
   * @param samePeak peaks nearer than this in ln R are one
   * @param mostPeaks of one joint that are kept
   * @param outOfReach a joint so far behind, twice the gain expected of a step included, is not
   *     climbing back
   * @param insensitive a parameter that moves no reading by this share of its standard deviation,
   *     under any joint, stays as stated
   * @param mostLinearisations times that the fit of the best joint and a new scan at it take turns
   * @param settled parameters that the readings move by less than this, in standard deviations, may
   *     stay where the model was linearised
   * @param alike predictions nearer than so many standard deviations of each reading make one fit
   */
  public record Ascent(
      int mostSteps,
      double longestStep,
      double smallStep,
      double samePeak,
      int mostPeaks,
      double outOfReach,
      double insensitive,
      int mostLinearisations,
      double settled,
      double alike) {}

  /**
   * Nonlinear least squares (Gauss and Newton; Levenberg and Marquardt where that does not settle).
   *
   * @param costTolerance relative change of the sum of squares at which a fit ends
   * @param parameterTolerance relative change of the parameters at which it ends
   * @param mostIterations of one fit
   * @param evaluationsPerIteration steps that make it worse are tried again, shorter
   * @param farStart a start so many standard deviations from what is stated is compared with that
   *     first
   * @param beyondOpen above so many times the largest degraded ohms a joint is as good as open
   * @param mostLoss a fit whose likelihood lies so far below what its linearised model promised has
   *     failed, and the linearised model stands
   * @param mostSettlingSteps linearisations at the posterior mean before the parameters are fitted
   * @param mostSteps of a fit by linearising again before it is searched for
   * @param atRest parameters that move by less than this, in standard deviations, are fitted
   */
  public record Fit(
      double costTolerance,
      double parameterTolerance,
      int mostIterations,
      int evaluationsPerIteration,
      double farStart,
      double beyondOpen,
      double mostLoss,
      int mostSettlingSteps,
      int mostSteps,
      double atRest) {}

  /**
   * The profile of the likelihood over the ohms of one joint, integrated over their prior.
   *
   * @param coarseStep of the grid where nothing is known, in ln R: half a decade, as the first
   *     sweep
   * @param fineStep of the grid around a peak, in its standard deviations
   * @param fineSteps to either side of it
   * @param samePeak peaks nearer than so many of their standard deviations are one
   * @param leastDoubt an interval is halved where the trapezoidal and the exponential rule differ
   *     by more than this share of what the profile is compared with
   * @param mostDoubt or by more than this share of the profile itself
   * @param sameHeight logarithms of heights nearer than this have nothing between them
   * @param mostRefinements times that intervals are halved
   * @param nodeReach a quadrature node stands for about so much of ln R: a factor of five
   * @param fewestNodes of a profile
   * @param mostNodes of a profile
   * @param negligible less of a profile's probability gets no node
   * @param aroundPeak half a step of the first sweep to either side of a peak, in ln R, is always
   *     worked out
   * @param nothing a likelihood so far behind the peak counts as none
   * @param ohmsOfOpen where between linearisations an open joint stands
   */
  public record Profile(
      double coarseStep,
      double fineStep,
      int fineSteps,
      double samePeak,
      double leastDoubt,
      double mostDoubt,
      double sameHeight,
      int mostRefinements,
      double nodeReach,
      int fewestNodes,
      int mostNodes,
      double negligible,
      double aroundPeak,
      double nothing,
      double ohmsOfOpen) {}

  /**
   * Which single joints are worth how much.
   *
   * @param worthAFit so far behind the best a joint gets no fit of its own
   * @param worthAProfile so far behind it is not followed over its ohms
   * @param worthLinearisingAgain so far behind its model is linearised once
   * @param outOfReach so far behind nothing is left of a hypothesis
   * @param farApart ohms this far apart in ln R want linearisations of their own
   * @param tail this share of the probability of the ohms lies beyond either end at which the model
   *     is linearised once more
   */
  public record Shortlist(
      double worthAFit,
      double worthAProfile,
      double worthLinearisingAgain,
      double outOfReach,
      double farApart,
      double tail) {}

  /**
   * Several degraded joints at once.
   *
   * @param firstJoints of the single joints, tried as the first of a pair
   * @param secondJoints fitted in full beside each of them
   * @param mostJoints degraded at once that are looked for
   * @param worthExchanging an exchange of one joint that gains less than this is not fitted
   * @param mostExchanges rounds of exchanges
   * @param ohmsSigma standard deviation of ln R by which joints already found give way while
   *     another is looked for: the sum of two joints is split between them anew
   */
  public record Several(
      int firstJoints,
      int secondJoints,
      int mostJoints,
      double worthExchanging,
      int mostExchanges,
      double ohmsSigma) {}

  /**
   * Readings that are wrong outright.
   *
   * @param ordinaryDeviations a squared Mahalanobis distance above its expectation by less than so
   *     many of its standard deviations holds no outlier worth looking for
   * @param mostJoints of the most probable joints that are tried with several outliers
   * @param hopeless so far behind the best explanation a hypothesis with several outliers is not
   *     fitted
   * @param mostTurns times that fitting and giving up readings take turns
   */
  public record Outliers(
      double ordinaryDeviations, int mostJoints, double hopeless, int mostTurns) {}

  /**
   * What counts as equal in an answer.
   *
   * @param sameLikelihood log marginal likelihoods nearer than this are the same for any decision
   *     (a Bayes factor of 1.35)
   * @param samePrediction predictions nearer than so many standard deviations of each reading
   *     cannot be told apart
   * @param tail probability at a bound of the prior above which an interval of ohms is one-sided
   * @param bisections to find a quantile
   * @param forgotten no further reading is planned for a joint less probable than this
   */
  public record Answer(
      double sameLikelihood,
      double samePrediction,
      double tail,
      int bisections,
      double forgotten) {}
}
