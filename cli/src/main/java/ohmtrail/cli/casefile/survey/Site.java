package ohmtrail.cli.casefile.survey;

import java.util.Optional;
import java.util.OptionalDouble;
import ohmtrail.circuit.Box;
import ohmtrail.cli.casefile.run.Run;
import ohmtrail.cli.casefile.text.Names;

/**
 * What readings and loads are held against.
 *
 * @param run the boxes
 * @param meters the names of the meters
 */
record Site(Run run, Names meters) {

  /** A healthy circuit shows no more than its supply; more is mostly a slip, or a lost neutral. */
  private static final double ODD_SHARE_OF_NOMINAL = 1.5;

  /**
   * A decimal point lost makes ten times; more is a slip of unit, or no reading of this circuit.
   */
  private static final double MOST_OF_NOMINAL = 20;

  /** The highest voltage that is not odd; empty where the supply is not known. */
  OptionalDouble oddVolts() {
    return ofNominal(ODD_SHARE_OF_NOMINAL);
  }

  /** The highest voltage that is taken; empty where the supply is not known. */
  OptionalDouble mostVolts() {
    return ofNominal(MOST_OF_NOMINAL);
  }

  private OptionalDouble ofNominal(double share) {
    OptionalDouble nominal = run.nominalVolts();
    return nominal.isPresent() ? OptionalDouble.of(share * nominal.getAsDouble()) : nominal;
  }

  /** The meter of a reading that names none: the only one there is. */
  Optional<String> onlyMeter() {
    return meters.all().size() == 1 ? meters.all().stream().findFirst() : Optional.empty();
  }

  /** The box of that name, where a load or a meter can be put. */
  Optional<Box> box(String name) {
    return run.names().find(name).map(run.boxes()::get);
  }

  boolean isOdd(double volts) {
    return volts > oddVolts().orElse(Double.POSITIVE_INFINITY);
  }

  boolean isTooHigh(double volts) {
    return volts > mostVolts().orElse(Double.POSITIVE_INFINITY);
  }
}
