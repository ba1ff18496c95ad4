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
 * @param mostVolts the highest voltage that a meter can show there; empty where the supply is not
 *     known
 */
record Site(Run run, Names meters, OptionalDouble mostVolts) {

  /** A healthy circuit shows no more than its supply; a case that says more has a slip in it. */
  private static final double MOST_OF_NOMINAL = 1.5;

  static Site of(Run run, Names meters) {
    OptionalDouble nominalVolts = run.nominalVolts();
    return new Site(
        run,
        meters,
        nominalVolts.isPresent()
            ? OptionalDouble.of(MOST_OF_NOMINAL * nominalVolts.getAsDouble())
            : nominalVolts);
  }

  /** The meter of a reading that names none: the only one there is. */
  Optional<String> onlyMeter() {
    return meters.all().size() == 1 ? meters.all().stream().findFirst() : Optional.empty();
  }

  /** The box of that name, where a load or a meter can be put. */
  Optional<Box> box(String name) {
    return run.names().find(name).map(run.boxes()::get);
  }

  boolean isTooHigh(double volts) {
    return mostVolts.isPresent() && volts > mostVolts.getAsDouble();
  }
}
