package ohmtrail.cli.casefile.survey;

import java.util.Optional;
import java.util.OptionalDouble;
import ohmtrail.circuit.Box;
import ohmtrail.cli.casefile.run.Run;
import ohmtrail.cli.casefile.text.Names;
import ohmtrail.survey.ProbePoints;

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

  /**
   * The highest voltage that is not odd between two conductors; empty where the supply is not
   * known.
   */
  OptionalDouble oddVolts(ProbePoints between) {
    return run.supply()
        .map(supply -> between.second().isLive() ? supply.greatestVolts() : supply.volts())
        .map(nominal -> OptionalDouble.of(ODD_SHARE_OF_NOMINAL * nominal))
        .orElse(OptionalDouble.empty());
  }

  /** The highest voltage that is taken; empty where the supply is not known. */
  OptionalDouble mostVolts() {
    return run.supply()
        .map(supply -> OptionalDouble.of(MOST_OF_NOMINAL * supply.greatestVolts()))
        .orElse(OptionalDouble.empty());
  }

  /** The meter of a reading that names none: the only one there is. */
  Optional<String> onlyMeter() {
    return meters.all().size() == 1 ? meters.all().stream().findFirst() : Optional.empty();
  }

  /** The box of that name, where a load or a meter can be put. */
  Optional<Box> box(String name) {
    return run.names().find(name).map(run.boxes()::get);
  }

  boolean isOdd(double volts, ProbePoints between) {
    return volts > oddVolts(between).orElse(Double.POSITIVE_INFINITY);
  }

  boolean isTooHigh(double volts) {
    return volts > mostVolts().orElse(Double.POSITIVE_INFINITY);
  }
}
