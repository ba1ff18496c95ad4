package ohmtrail.locate.fit;

import ohmtrail.locate.settings.Settings;

/** Least squares that end where a test wants them to. */
final class Tolerances {
  private Tolerances() {}

  static WeightedLeastSquares leastSquares(double cost, double parameters, int iterations) {
    Settings.Fit usual = Settings.usual().fit();
    return new WeightedLeastSquares(
        new Settings.Fit(
            cost,
            parameters,
            iterations,
            usual.evaluationsPerIteration(),
            usual.farStart(),
            usual.beyondOpen(),
            usual.mostLoss(),
            usual.mostSettlingSteps(),
            usual.mostSteps(),
            usual.atRest()));
  }
}
