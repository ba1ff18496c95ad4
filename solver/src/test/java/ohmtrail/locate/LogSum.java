package ohmtrail.locate;

/** Adds numbers given by their logarithms. */
final class LogSum {
  /** Smaller by a factor of exp(40), a term no longer shows. */
  private static final double VANISHING = 40;

  private double largest = Double.NEGATIVE_INFINITY;
  private double sum;

  void add(double logTerm) {
    if (logTerm <= largest - VANISHING || logTerm == Double.NEGATIVE_INFINITY) {
      return;
    }
    if (logTerm > largest) {
      sum = sum * Math.exp(largest - logTerm) + 1;
      largest = logTerm;
    } else {
      sum += Math.exp(logTerm - largest);
    }
  }

  double log() {
    return largest + Math.log(sum);
  }
}
