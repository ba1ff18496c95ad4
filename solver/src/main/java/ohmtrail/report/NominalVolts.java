package ohmtrail.report;

import ohmtrail.circuit.Circuit;
import ohmtrail.survey.ProbePoints;

/** The voltage that a supply is named for between two conductors. */
final class NominalVolts {
  private NominalVolts() {}

  /** Volts: leg to leg where both are live, else to neutral. */
  static double between(Circuit circuit, ProbePoints pair) {
    return pair.second().isLive() ? circuit.supply().greatestVolts() : circuit.supply().volts();
  }
}
