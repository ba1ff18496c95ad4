package ohmtrail.circuit;

import java.util.List;
import java.util.Objects;
import java.util.stream.Stream;

/**
 * What feeds the panel.
 *
 * @param volts live conductor to neutral, root mean square, nominal
 * @param hertz frequency
 * @param legs how many live conductors there are, and the angle between them
 * @param earthing how neutral and ground are tied to each other and to earth
 */
public record Supply(double volts, double hertz, Legs legs, Earthing earthing) {
  /** The live conductors of a supply. */
  public enum Legs {
    /** One. */
    ONE(0),
    /** Two of opposite phase, such as 120/240 V from a transformer with its centre as neutral. */
    OPPOSITE(180),
    /** Two of the three of a star, 120 degrees apart, such as 208Y/120 V. */
    OF_A_STAR(120);

    private final double degreesApart;

    Legs(double degreesApart) {
      this.degreesApart = degreesApart;
    }

    /** The live conductors. */
    public List<ConductorRole> conductors() {
      return this == ONE
          ? List.of(ConductorRole.HOT)
          : List.of(ConductorRole.LEG_1, ConductorRole.LEG_2);
    }

    /** By how much a live conductor lags behind the first, radians. */
    public double lag(ConductorRole conductor) {
      return conductors().indexOf(conductor) * Math.toRadians(degreesApart);
    }
  }

  /** Where neutral, ground and earth meet, by the names of IEC 60364-1. */
  public enum Earthing {
    /** Neutral and ground apart from the transformer on. */
    TN_S,
    /** One conductor up to the panel, where neutral and ground are bonded: North America's way. */
    TN_C_S,
    /** The ground has an electrode of its own; nothing ties it to the neutral but the earth. */
    TT;

    /** The name as it is written: {@code TN-C-S}. */
    public String word() {
      return name().replace('_', '-');
    }
  }

  /** What a 120 V supply of North America is. */
  public static final Supply NORTH_AMERICA_120 = new Supply(120, 60);

  /** What a 120/240 V supply of North America is. */
  public static final Supply NORTH_AMERICA_120_240 =
      new Supply(120, 60, Legs.OPPOSITE, Earthing.TN_C_S);

  /** Two legs of a 208Y/120 V supply. */
  public static final Supply NORTH_AMERICA_208Y_120 =
      new Supply(120, 60, Legs.OF_A_STAR, Earthing.TN_C_S);

  /** What a 230 V supply of IEC 60038 is. */
  public static final Supply IEC_230 = new Supply(230, 50);

  private static final double LARGEST_VOLTS = 1000;
  private static final double LARGEST_HERTZ = 400;

  /** Rejects what is no low-voltage mains supply. */
  public Supply {
    Objects.requireNonNull(legs, "legs");
    Objects.requireNonNull(earthing, "earthing");
    if (!(volts > 0 && volts <= LARGEST_VOLTS)) {
      throw new CircuitException(
          "Supply voltage (" + volts + " V) must be above 0 and at most " + LARGEST_VOLTS + " V");
    }
    if (!(hertz > 0 && hertz <= LARGEST_HERTZ)) {
      throw new CircuitException(
          "Supply frequency ("
              + hertz
              + " Hz) must be above 0 and at most "
              + LARGEST_HERTZ
              + " Hz");
    }
  }

  /** One leg, neutral and ground bonded at the panel. */
  public Supply(double volts, double hertz) {
    this(volts, hertz, Legs.ONE, Earthing.TN_C_S);
  }

  /** 2 pi f, radians per second. */
  public double angularFrequency() {
    return 2 * Math.PI * hertz;
  }

  /** The conductors that leave the panel: the live ones, neutral and ground. */
  public List<ConductorRole> conductors() {
    return Stream.concat(
            legs.conductors().stream(), Stream.of(ConductorRole.NEUTRAL, ConductorRole.GROUND))
        .toList();
  }

  /** The highest nominal voltage between any two conductors. */
  public double greatestVolts() {
    return legs == Legs.ONE ? volts : legVolts();
  }

  /** Between the two legs: twice the chord of half the angle. */
  private double legVolts() {
    return 2 * volts * Math.sin(legs.lag(ConductorRole.LEG_2) / 2);
  }
}
