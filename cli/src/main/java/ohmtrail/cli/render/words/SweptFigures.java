package ohmtrail.cli.render.words;

import java.math.BigDecimal;
import java.math.MathContext;
import ohmtrail.report.sweep.Sweep;
import ohmtrail.report.sweep.Swept;

/** The values of a sweep in the words and units of the supply's region. */
public final class SweptFigures {
  private static final MathContext DIGITS = new MathContext(4);

  private final Region region;

  /** Of a region. */
  public SweptFigures(Region region) {
    this.region = region;
  }

  /** Unit that values are shown in. */
  public String unit(Swept swept) {
    return isLength(swept) ? region.lengthUnit() : swept.unit();
  }

  /** A value in that unit. */
  public double inUnit(Swept swept, double value) {
    return isLength(swept) ? region.inLengthUnit(value) : value;
  }

  /** A value with its unit: {@code 2.3 ohm}, {@code 50 ft}. */
  public String shown(Swept swept, double value) {
    return isOhms(swept)
        ? Figures.estimatedOhms(value)
        : new BigDecimal(inUnit(swept, value)).round(DIGITS).stripTrailingZeros().toPlainString()
            + " "
            + unit(swept);
  }

  private static boolean isLength(Swept swept) {
    return swept instanceof Swept.CableLength;
  }

  private static boolean isOhms(Swept swept) {
    return swept.isByRatio();
  }

  /** Whether what the meter shows is what is looked at, and not what is lost. */
  public static boolean isOfMeter(Sweep sweep) {
    return sweep.across().swept() instanceof Swept.MeterOhms
        || sweep.family().filter(axis -> axis.swept() instanceof Swept.MeterOhms).isPresent();
  }
}
