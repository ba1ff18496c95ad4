package ohmtrail.survey.load;

/**
 * A current that hardly depends on the voltage, but fades with it near zero: I(V) is proportional
 * to V/sqrt(V^2 + a^2), V and a in shares of the rated voltage.
 *
 * @param fadeShare a: below it the load is more of a resistor
 */
record CurrentLaw(double fadeShare) {
  double relativeSiemens(double voltsShare) {
    double square = fadeShare * fadeShare;
    return Math.sqrt((1 + square) / (voltsShare * voltsShare + square));
  }

  double steepness(double voltsShare) {
    double square = voltsShare * voltsShare;
    return -square / (square + fadeShare * fadeShare);
  }
}
