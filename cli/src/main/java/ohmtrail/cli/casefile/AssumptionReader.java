package ohmtrail.cli.casefile;

import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import ohmtrail.cli.casefile.text.Node.Entry;
import ohmtrail.cli.casefile.text.Node.Mapping;
import ohmtrail.cli.casefile.text.Node.Scalar;
import ohmtrail.cli.casefile.text.Problems;
import ohmtrail.cli.casefile.text.Word;
import ohmtrail.cli.casefile.text.Words;
import ohmtrail.cli.casefile.words.Keys;
import ohmtrail.cli.casefile.words.Numbers;
import ohmtrail.cli.casefile.words.Quantities;
import ohmtrail.cli.casefile.words.Quantity;
import ohmtrail.cli.casefile.words.Unit.Dimension;
import ohmtrail.reference.Assumption;
import ohmtrail.reference.Assumptions;

/** Reads the assumptions that a case makes in place of the usual ones. */
final class AssumptionReader {

  /** Relative tolerances of the supply voltage, for which a voltage may stand. */
  private static final Set<Assumption> OF_SUPPLY_VOLTAGE =
      Set.of(Assumption.SUPPLY_VOLTAGE_TOLERANCE, Assumption.SUPPLY_DRIFT);

  private final OptionalDouble nominalVolts;
  private final Problems problems;
  private final Quantities quantities;

  AssumptionReader(OptionalDouble nominalVolts, Problems problems) {
    this.nominalVolts = nominalVolts;
    this.problems = problems;
    this.quantities = new Quantities(problems);
  }

  /** Reads assumptions by their keys; one that is wrong is noted and left as it usually is. */
  Assumptions read(Mapping mapping) {
    Assumptions assumptions = Assumptions.defaults();
    for (Entry entry : mapping.entries()) {
      Optional<Assumption> assumption = Assumption.byKey(entry.key().text());
      if (assumption.isEmpty()) {
        problems.unknown(entry.key().word(), "Assumption", Keys.ASSUME);
      } else if (entry.value() instanceof Scalar scalar) {
        assumptions = with(assumptions, assumption.get(), scalar);
      } else {
        problems.error(
            entry.value().place(),
            "Assumption ("
                + entry.key().text()
                + ") must hold a number, not "
                + entry.value().what()
                + ".");
      }
    }
    requireSoundBelowDegraded(assumptions, mapping);
    return assumptions;
  }

  /** A sound joint must not have what counts as degraded. */
  private void requireSoundBelowDegraded(Assumptions assumptions, Mapping mapping) {
    double sound = assumptions.value(Assumption.HEALTHY_JOINT_OHMS);
    double degraded = assumptions.value(Assumption.DEGRADED_OHMS_LOW);
    if (sound < degraded) {
      return;
    }
    mapping.entries().stream()
        .filter(
            entry ->
                Assumption.byKey(entry.key().text())
                    .filter(
                        key ->
                            key == Assumption.HEALTHY_JOINT_OHMS
                                || key == Assumption.DEGRADED_OHMS_LOW)
                    .isPresent())
        .findFirst()
        .ifPresent(
            entry ->
                problems.error(
                    entry.value().place(),
                    "Assumption healthy-joint-ohms ("
                        + Numbers.plain(sound)
                        + " ohm) must be below degraded-ohms-low ("
                        + Numbers.plain(degraded)
                        + " ohm).",
                    "it was given in milliohms: write 0.002 ohm for 2 milliohms."));
  }

  private Assumptions with(Assumptions assumptions, Assumption assumption, Scalar scalar) {
    Optional<Double> value = value(assumption, scalar);
    if (value.isEmpty()) {
      return assumptions;
    }
    try {
      return assumptions.with(assumption, value.get());
    } catch (IllegalArgumentException outside) {
      problems.error(scalar.place(), outside);
      return assumptions;
    }
  }

  private Optional<Double> value(Assumption assumption, Scalar scalar) {
    String what = "Assumption " + assumption.key();
    Words words = new Words(scalar);
    if (words.peek().filter(Quantities::isNumber).isEmpty()) {
      problems.error(
          scalar.place(),
          what + " must be a number" + unitRule(assumption) + ", not (" + scalar.text() + ").");
      return Optional.empty();
    }
    Optional<Quantity> quantity = quantities.take(words);
    if (words.hasNext()) {
      Word strange = words.next();
      problems.error(
          strange.place(),
          what
              + " must be a number"
              + unitRule(assumption)
              + "; ("
              + strange.text()
              + ") is none of it.");
      return Optional.empty();
    }
    return quantity.flatMap(given -> value(assumption, what, given));
  }

  private Optional<Double> value(Assumption assumption, String what, Quantity quantity) {
    boolean volts = quantity.is(Dimension.VOLTAGE) && OF_SUPPLY_VOLTAGE.contains(assumption);
    if (volts) {
      return nominalVolts.isPresent()
          ? Optional.of(quantity.value() / nominalVolts.getAsDouble())
          : Optional.empty();
    }
    Optional<Dimension> dimension = dimension(assumption);
    boolean right =
        dimension.isPresent()
            ? quantity.is(dimension.get())
            : quantity.unit().isEmpty() || (isShare(assumption) && quantity.is(Dimension.SHARE));
    if (!right) {
      problems.error(
          quantity.place(),
          what + " (" + quantity.shown() + ") must be a number" + unitRule(assumption) + ".",
          quantity.unit().isPresent() ? "another unit was meant." : "the unit is missing.");
      return Optional.empty();
    }
    return Optional.of(quantity.value());
  }

  /** What the assumption measures; empty for a bare number. */
  static Optional<Dimension> dimension(Assumption assumption) {
    return switch (assumption.unit()) {
      case "ohm" -> Optional.of(Dimension.RESISTANCE);
      case "ohm/m" -> Optional.of(Dimension.RESISTANCE_PER_LENGTH);
      case "m" -> Optional.of(Dimension.LENGTH);
      case "A" -> Optional.of(Dimension.CURRENT);
      case "degC" -> Optional.of(Dimension.TEMPERATURE);
      case "F" -> Optional.of(Dimension.CAPACITANCE);
      case "F/m" -> Optional.of(Dimension.CAPACITANCE_PER_LENGTH);
      case "V", "V sd" -> Optional.of(Dimension.VOLTAGE);
      case "W" -> Optional.of(Dimension.POWER);
      case "ohm sd" -> Optional.of(Dimension.RESISTANCE);
      default -> Optional.empty();
    };
  }

  private static boolean isShare(Assumption assumption) {
    return Set.of("relative sd", "log sd", "probability", "share").contains(assumption.unit());
  }

  private static String unitRule(Assumption assumption) {
    return dimension(assumption)
        .map(dimension -> " with a unit: " + dimension.units())
        .orElse(
            OF_SUPPLY_VOLTAGE.contains(assumption)
                ? ", a share in % or a voltage in V"
                : isShare(assumption) ? " or a share in %" : " without a unit");
  }
}
