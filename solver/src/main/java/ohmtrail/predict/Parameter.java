package ohmtrail.predict;

import ohmtrail.circuit.Cable;
import ohmtrail.circuit.ConductorRole;
import ohmtrail.survey.load.Rating;

/**
 * One quantity known only roughly. Its true value is the nominal one times a factor that rises with
 * a standard normal number u: exp(sigma u), or something that is close to it near u = 0.
 *
 * <p>A new kind is a record here and the place in {@link Wiring} or {@link SurveyModel} where it
 * acts.
 */
public sealed interface Parameter {
  /** Standard deviation of the logarithm of the quantity, or close to it. */
  double sigma();

  /** The value without knowledge, in the unit of {@link #unit()}. */
  double nominal();

  /** The unit of {@link #nominal()}. */
  String unit();

  /** What it is, in words: "length of the cable hall-1 to hall-2". */
  String description();

  /** What the nominal value is multiplied by. */
  default double factor(double u) {
    return Math.exp(sigma() * u);
  }

  /** Slope of the logarithm of {@link #factor} along u. */
  default double slope(double u) {
    return sigma();
  }

  /** Voltage behind the source impedance. */
  record SupplyVoltage(double nominal, double sigma) implements Parameter {
    @Override
    public String unit() {
      return "V";
    }

    @Override
    public String description() {
      return "supply voltage";
    }
  }

  /** By how much the supply's voltage was another one from a test on. */
  record SupplyStep(String test, double sigma) implements Parameter {
    @Override
    public double nominal() {
      return 1;
    }

    @Override
    public String unit() {
      return "";
    }

    @Override
    public String description() {
      return "supply voltage from " + test + " on, relative to before";
    }
  }

  /** Impedance of everything before the panel. */
  record SourceOhms(double nominal, double sigma, double limit) implements SoundOhms {
    @Override
    public String description() {
      return "supply impedance";
    }
  }

  /** The way through the earth from the panel's ground to the transformer. */
  record EarthOhms(double nominal, double sigma) implements Parameter {
    @Override
    public String unit() {
      return "ohm";
    }

    @Override
    public String description() {
      return "way through the earth";
    }
  }

  /** Capacitance between each two conductors of the cables. */
  record CableCapacitance(double nominal, double sigma) implements Parameter {
    @Override
    public String unit() {
      return "F/m";
    }

    @Override
    public String description() {
      return "cable capacitance";
    }
  }

  /** What a load really draws at its rated voltage: the power or current that it is known by. */
  record LoadRating(String load, Rating.Quantity quantity, double nominal, double sigma)
      implements Parameter {
    @Override
    public String unit() {
      return quantity.unit();
    }

    @Override
    public String description() {
      return quantity.word() + " of " + load;
    }
  }

  /** What a meter multiplies everything that it measures by. */
  record MeterGain(String meter, double sigma) implements Parameter {
    @Override
    public double nominal() {
      return 1;
    }

    @Override
    public String unit() {
      return "";
    }

    @Override
    public String description() {
      return "gain of " + meter;
    }
  }

  /** Input resistance of a meter. */
  record MeterOhms(String meter, double nominal, double sigma) implements Parameter {
    @Override
    public String unit() {
      return "ohm";
    }

    @Override
    public String description() {
      return "input resistance of " + meter;
    }
  }

  /** Length of a cable. */
  record CableLength(Cable cable, double nominal, double sigma) implements Parameter {
    @Override
    public String unit() {
      return "m";
    }

    @Override
    public String description() {
      return "length of the cable " + cable.from() + " to " + cable.to();
    }
  }

  /**
   * Ohms of something sound. Near u = 0 they are nearly lognormal, but they approach a limit: more
   * is a degraded joint, and that is a hypothesis of its own, not a sound thing stretched. The
   * factor is L e^(sigma u) / (L - 1 + e^(sigma u)), L the limit over the nominal value.
   */
  sealed interface SoundOhms extends Parameter {
    /** What the ohms stay below, above {@link #nominal()}. */
    double limit();

    @Override
    default double factor(double u) {
      double room = limit() / nominal();
      return room / (1 + (room - 1) * Math.exp(-sigma() * u));
    }

    @Override
    default double slope(double u) {
      return sigma() * (1 - factor(u) * nominal() / limit());
    }

    @Override
    default String unit() {
      return "ohm";
    }
  }

  /** Ohms of the two healthy joints at the ends of one conductor of a cable, together. */
  record SectionJointOhms(
      Cable cable, ConductorRole conductor, double nominal, double sigma, double limit)
      implements SoundOhms {
    @Override
    public String description() {
      return "healthy "
          + conductor.word()
          + " joints of the cable "
          + cable.from()
          + " to "
          + cable.to();
    }
  }

  /** Ohms of the healthy tail and contact of one conductor at a receptacle, together. */
  record DeviceJointOhms(
      String box, ConductorRole conductor, double nominal, double sigma, double limit)
      implements SoundOhms {
    @Override
    public String description() {
      return "healthy " + conductor.word() + " tail and contact at " + box;
    }
  }

  /** Ohms of a joint that is degraded, around a value found before. */
  record DegradedOhms(String joint, double nominal, double sigma) implements Parameter {
    @Override
    public String unit() {
      return "ohm";
    }

    @Override
    public String description() {
      return "ohms of the degraded joint " + joint;
    }
  }
}
