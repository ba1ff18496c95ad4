package ohmtrail.survey.load;

import ohmtrail.reference.UsualValue;

/**
 * A load behind a switching power supply: a television, a computer, most lamps with light-emitting
 * diodes. It draws the same power at every voltage down to its cut-out, and below that nothing. Its
 * current counts as in phase: what it is at the frequency of the mains.
 *
 * @param name unique in its survey
 * @param ratedWatts power it draws, positive
 * @param ratedVolts voltage it is made for, positive
 * @param cutOutShare share of the rated voltage below which it is off, above 0 and at most 1
 */
public record ElectronicLoad(String name, double ratedWatts, double ratedVolts, double cutOutShare)
    implements Load {
  /**
   * Where a power supply cuts out, as a share of its rated voltage, where nobody says (assumption):
   * 78 V of 120 V.
   */
  public static final double USUAL_CUT_OUT_SHARE = UsualValue.ELECTRONIC_CUT_OUT_SHARE.value();

  private static final VoltageLaw LAW = new VoltageLaw.ConstantPower();

  /** Rejects figures that are not positive. */
  public ElectronicLoad {
    Nameplate.requirePositive(name, ratedWatts, "W", ratedVolts);
    Nameplate.requireShare(name, "Cut-out", cutOutShare);
  }

  @Override
  public String kind() {
    return "electronic load";
  }

  @Override
  public Rating rating() {
    return Rating.nameplateWatts(ratedWatts);
  }

  @Override
  public Load rated(double value) {
    return new ElectronicLoad(name, value, ratedVolts, cutOutShare);
  }

  @Override
  public VoltageLaw law() {
    return LAW;
  }

  @Override
  public double leastVoltsShare() {
    return cutOutShare;
  }
}
