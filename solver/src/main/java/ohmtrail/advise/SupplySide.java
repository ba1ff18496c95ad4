package ohmtrail.advise;

import ohmtrail.circuit.Supply;
import ohmtrail.locate.Diagnosis;
import ohmtrail.locate.FittedParameter;
import ohmtrail.predict.Parameter;
import ohmtrail.reference.SupplyVoltageRange;
import ohmtrail.survey.Finding;
import ohmtrail.survey.Survey;

/**
 * Whether the supply's voltage is reason enough to ask those who deliver it. Joints before the
 * panel are hypotheses like any other.
 */
final class SupplySide {
  private SupplySide() {}

  /**
   * Whether it is, and nobody has looked yet.
   *
   * @param supply of the circuit: the range that its region allows ({@link SupplyVoltageRange})
   */
  static boolean isAtFault(Diagnosis diagnosis, Survey survey, Supply supply) {
    SupplyVoltageRange range = SupplyVoltageRange.of(supply.volts(), supply.hertz());
    return !survey.lookedSound().contains(Finding.SUPPLY)
        && diagnosis.parameters().stream().anyMatch(fitted -> isBeyond(fitted, range));
  }

  private static boolean isBeyond(FittedParameter fitted, SupplyVoltageRange range) {
    return fitted.parameter() instanceof Parameter.SupplyVoltage supply
        && !range.permits(fitted.value() / supply.nominal());
  }
}
