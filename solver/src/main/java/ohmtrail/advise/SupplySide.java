package ohmtrail.advise;

import ohmtrail.locate.Diagnosis;
import ohmtrail.locate.FittedParameter;
import ohmtrail.predict.Parameter;
import ohmtrail.survey.Finding;
import ohmtrail.survey.Survey;

/**
 * Whether the supply's voltage is reason enough to ask those who deliver it. Joints before the
 * panel are hypotheses like any other.
 */
final class SupplySide {
  /**
   * How far from nominal a supply may stand, as a share of it (IEC 60038; ANSI C84.1 is narrower).
   */
  private static final double MOST_OFF = 0.1;

  private SupplySide() {}

  /** Whether it is, and nobody has looked yet. */
  static boolean isAtFault(Diagnosis diagnosis, Survey survey) {
    return !survey.lookedSound().contains(Finding.SUPPLY)
        && diagnosis.parameters().stream().anyMatch(SupplySide::isBeyond);
  }

  private static boolean isBeyond(FittedParameter fitted) {
    return fitted.parameter() instanceof Parameter.SupplyVoltage supply
        && Math.abs(fitted.value() / supply.nominal() - 1) > MOST_OFF;
  }
}
