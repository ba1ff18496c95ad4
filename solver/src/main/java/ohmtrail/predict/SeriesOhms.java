package ohmtrail.predict;

/**
 * Ohms R added in series where an admittance y is seen: k = R/(1 + y R), from nothing to 1/y when
 * it is open, as a quotient that stays finite from nothing to open. A reading that a current i0
 * through there moves by t moves by t i0 k.
 *
 * @param observed a, with R = b/a, neither greater than one
 * @param driven b
 */
record SeriesOhms(double observed, double driven) {
  /**
   * So many.
   *
   * @param ohms not negative, infinity for open
   */
  static SeriesOhms of(double ohms) {
    return ohms <= 1 ? new SeriesOhms(1, ohms) : new SeriesOhms(1 / ohms, 1);
  }

  /** One over the square of |a + y b|: every figure below has it, and it is worked out once. */
  private double scale(double yRe, double yIm) {
    double re = observed + yRe * driven;
    double im = yIm * driven;
    return 1 / (re * re + im * im);
  }

  /** The real part of k. */
  double kRe(double yRe, double yIm) {
    return driven * (observed + yRe * driven) * scale(yRe, yIm);
  }

  /** The imaginary part of k. */
  double kIm(double yRe, double yIm) {
    return -driven * (yIm * driven) * scale(yRe, yIm);
  }

  /** The real part of 1/(1 + y R), the share of the current that is left. */
  double shareRe(double yRe, double yIm) {
    return observed * (observed + yRe * driven) * scale(yRe, yIm);
  }

  /** The imaginary part of it. */
  double shareIm(double yRe, double yIm) {
    return -observed * (yIm * driven) * scale(yRe, yIm);
  }
}
