package ohmtrail.survey.load;

import ohmtrail.reference.UsualValue;

/**
 * A running motor. What it drives asks for about the same power at every voltage near the rated
 * one, so that it draws more current at less voltage; its power factor counts as constant. Where
 * the voltage falls so far that its breakdown torque, which goes with the square of the voltage, no
 * longer carries the rated one, it stalls; a stalled motor's overload protector has opened by the
 * time that a meter is read, so it counts as drawing nothing.
 *
 * @param name unique in its survey
 * @param ratedWatts electrical power it draws, positive
 * @param ratedVolts voltage it is made for, positive
 * @param powerFactor cosine of the angle by which its current lags, above 0 and at most 1
 * @param stallShare share of the rated voltage below which it does not run, above 0 and at most 1
 */
public record Motor(
    String name, double ratedWatts, double ratedVolts, double powerFactor, double stallShare)
    implements Load {
  /** Power factor where nobody says: IEC 60364-5-52, Annex G, takes 0.8 where it is not known. */
  public static final double USUAL_POWER_FACTOR = UsualValue.MOTOR_POWER_FACTOR.value();

  /**
   * Where a motor stalls, as a share of its rated voltage: a breakdown torque of twice the rated
   * one (NEMA MG 1, from memory) leaves the rated torque at 1/sqrt(2) of the voltage.
   */
  public static final double USUAL_STALL_SHARE = UsualValue.MOTOR_STALL_SHARE.value();

  private static final VoltageLaw LAW = new VoltageLaw.ConstantPower();

  /** Rejects figures that are not positive. */
  public Motor {
    Nameplate.requirePositive(name, ratedWatts, "W", ratedVolts);
    Nameplate.requireShare(name, "Power factor", powerFactor);
    Nameplate.requireShare(name, "Stalling voltage", stallShare);
  }

  @Override
  public String kind() {
    return "motor";
  }

  @Override
  public Rating rating() {
    return Rating.nameplateWatts(ratedWatts);
  }

  @Override
  public Load rated(double value) {
    return new Motor(name, value, ratedVolts, powerFactor, stallShare);
  }

  @Override
  public VoltageLaw law() {
    return LAW;
  }

  @Override
  public double leastVoltsShare() {
    return stallShare;
  }
}
