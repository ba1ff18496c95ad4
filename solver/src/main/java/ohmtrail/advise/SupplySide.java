package ohmtrail.advise;

import java.util.List;
import ohmtrail.locate.Diagnosis;
import ohmtrail.locate.FittedParameter;
import ohmtrail.predict.Parameter;

/** Whether what the readings say of the supply is reason enough to ask those who deliver it. */
final class SupplySide {
  /**
   * How far from nominal a supply may stand, as a share of it (IEC 60038; ANSI C84.1 is narrower).
   */
  private static final double MOST_OFF = 0.1;

  /**
   * Ohms before the panel that no sound service has (assumption): 12 A would drop 7 V in it before
   * any cable of the circuit.
   */
  private static final double MOST_OHMS = 0.6;

  private SupplySide() {}

  static boolean isAtFault(Diagnosis diagnosis) {
    List<FittedParameter> parameters = diagnosis.parameters();
    return parameters.stream().anyMatch(SupplySide::isBeyond);
  }

  private static boolean isBeyond(FittedParameter fitted) {
    if (fitted.parameter() instanceof Parameter.SupplyVoltage supply) {
      return Math.abs(fitted.value() / supply.nominal() - 1) > MOST_OFF;
    }
    return fitted.parameter() instanceof Parameter.SourceOhms && fitted.value() > MOST_OHMS;
  }
}
