package ohmtrail.predict;

import ohmtrail.circuit.Cable;
import ohmtrail.circuit.ConductorRole;
import ohmtrail.survey.load.Rating;

/**
 * One quantity known only roughly. Its true value is the nominal one times exp(sigma u), u a
 * standard normal number.
 *
 * <p>A new kind is a record here and the place in {@link Wiring} or {@link SurveyModel} where it
 * acts.
 */
public sealed interface Parameter {
  /** Standard deviation of the logarithm of the quantity. */
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

  /** Impedance of everything before the panel. */
  record SourceOhms(double nominal, double sigma) implements Parameter {
    @Override
    public String unit() {
      return "ohm";
    }

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

  /** Ohms of the two healthy joints at the ends of one conductor of a cable, together. */
  record SectionJointOhms(Cable cable, ConductorRole conductor, double nominal, double sigma)
      implements Parameter {
    @Override
    public String unit() {
      return "ohm";
    }

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
  record DeviceJointOhms(String box, ConductorRole conductor, double nominal, double sigma)
      implements Parameter {
    @Override
    public String unit() {
      return "ohm";
    }

    @Override
    public String description() {
      return "healthy " + conductor.word() + " tail and contact at " + box;
    }
  }
}
