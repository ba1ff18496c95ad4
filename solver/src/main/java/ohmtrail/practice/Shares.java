package ohmtrail.practice;

/** Checks on shares and ranges that populations are made of. */
final class Shares {
  private Shares() {}

  static void requireShare(String what, double share) {
    if (!(share >= 0 && share <= 1)) {
      throw new IllegalArgumentException(
          what
              + " ("
              + share
              + ") must lie between 0 and 1\nMaybe it was given in per cent: write 0.3 for 30 %.");
    }
  }

  static void requireRange(String what, double low, double high) {
    if (!(low > 0 && low <= high)) {
      throw new IllegalArgumentException(
          what
              + " ("
              + low
              + " to "
              + high
              + ") must be positive and in order\nMaybe the bounds are the wrong way round.");
    }
  }
}
