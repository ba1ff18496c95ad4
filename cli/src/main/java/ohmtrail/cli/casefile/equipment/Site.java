package ohmtrail.cli.casefile.equipment;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import ohmtrail.circuit.Box;
import ohmtrail.circuit.ConductorRole;
import ohmtrail.circuit.Supply;
import ohmtrail.cli.casefile.run.Run;
import ohmtrail.cli.names.Names;
import ohmtrail.reference.UsualValue;
import ohmtrail.survey.Measurand;
import ohmtrail.survey.Meter;
import ohmtrail.survey.ProbePoints;

/**
 * What readings and loads are held against.
 *
 * @param run the boxes
 * @param meters the names of the meters
 * @param instruments the meters
 */
public record Site(Run run, Names meters, List<Meter> instruments) {

  public Site(Run run, List<Meter> instruments) {
    this(run, new Names(instruments.stream().map(Meter::name).toList()), instruments);
  }

  /** A healthy circuit shows no more than its supply; more is mostly a slip, or a lost neutral. */
  private static final double ODD_SHARE_OF_NOMINAL = UsualValue.ODD_VOLTAGE_SHARE.value();

  /** Share of the nominal voltage below which nobody notices anything (assumption). */
  private static final double DEAD_SHARE = UsualValue.DEAD_VOLTAGE_SHARE.value();

  /**
   * A decimal point lost makes ten times; more is a slip of unit, or no reading of this circuit.
   */
  private static final double MOST_OF_NOMINAL = 20;

  /**
   * The highest voltage that is not odd between two conductors; empty where the supply is not
   * known.
   */
  public OptionalDouble oddVolts(ProbePoints between) {
    return run.supply()
        .map(supply -> between.second().isLive() ? supply.greatestVolts() : supply.volts())
        .map(nominal -> OptionalDouble.of(ODD_SHARE_OF_NOMINAL * nominal))
        .orElse(OptionalDouble.empty());
  }

  /** The highest voltage that is taken; empty where the supply is not known. */
  public OptionalDouble mostVolts() {
    return run.supply()
        .map(supply -> OptionalDouble.of(MOST_OF_NOMINAL * supply.greatestVolts()))
        .orElse(OptionalDouble.empty());
  }

  /** How much still passes for dead: a lamp or tester shows nothing there. */
  public double deadVolts() {
    return DEAD_SHARE * run.supply().orElse(Supply.NORTH_AMERICA_120).volts();
  }

  /** The meter of a reading that names none: the only one there is for what was measured. */
  public Optional<String> onlyMeter(Measurand measurand) {
    List<String> fit =
        instruments.stream()
            .filter(meter -> meter.measurand() == measurand)
            .map(Meter::name)
            .toList();
    return fit.size() == 1 ? Optional.of(fit.get(0)) : Optional.empty();
  }

  /** The meter of that name. */
  public Optional<Meter> instrument(String name) {
    return instruments.stream().filter(meter -> meter.name().equals(name)).findFirst();
  }

  /** The box of that name, where a load or a meter can be put. */
  public Optional<Box> box(String name) {
    return run.names().find(name).map(run.boxes()::get);
  }

  /**
   * Two conductors by the names that they have in a box: where one conductor there is live, it is
   * the one that is meant, whatever it is called elsewhere (L1 of a supply of one leg, hot where a
   * luminaire has the switched conductor). A second leg is never meant by another name: who writes
   * it means one that is not there.
   */
  public ProbePoints there(ProbePoints pair, String box) {
    List<ConductorRole> present =
        run.circuit().map(circuit -> circuit.conductorsAt(box)).orElse(List.of());
    List<ConductorRole> live = present.stream().filter(ConductorRole::isLive).toList();
    boolean meant = live.size() == 1 && pair.first().isLive() && !pair.second().isLive();
    boolean second = pair.first() == ConductorRole.LEG_2;
    return meant && !second && !present.contains(pair.first())
        ? new ProbePoints(live.get(0), pair.second())
        : pair;
  }

  public boolean isOdd(double volts, ProbePoints between) {
    return volts > oddVolts(between).orElse(Double.POSITIVE_INFINITY);
  }

  public boolean isTooHigh(double volts) {
    return volts > mostVolts().orElse(Double.POSITIVE_INFINITY);
  }
}
