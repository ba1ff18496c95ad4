package ohmtrail.survey.load;

/** What every nameplate must hold. */
final class Nameplate {
  private Nameplate() {}

  static void requirePositive(String name, double rating, String unit, double ratedVolts) {
    if (!(isPositive(rating) && isPositive(ratedVolts))) {
      throw new LoadException(
          "Load "
              + name
              + " ("
              + rating
              + " "
              + unit
              + " at "
              + ratedVolts
              + " V) must have a positive rating and voltage");
    }
  }

  static void requireShare(String name, String what, double share) {
    if (!(share > 0 && share <= 1)) {
      throw new LoadException(
          what + " (" + share + ") of load " + name + " must be above 0 and at most 1");
    }
  }

  private static boolean isPositive(double value) {
    return value > 0 && Double.isFinite(value);
  }
}
