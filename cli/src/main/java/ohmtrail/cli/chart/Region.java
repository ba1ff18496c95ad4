package ohmtrail.cli.chart;

import ohmtrail.circuit.ConductorRole;
import ohmtrail.circuit.Supply;
import ohmtrail.reference.VoltageDropGuidance;

/** Whose words and units a chart speaks in. */
public enum Region {
  /** 60 Hz supplies: hot, neutral, ground; feet. */
  NORTH_AMERICA("ft", 1 / 0.3048),
  /** All other supplies: line, neutral, earth; metres. */
  INTERNATIONAL("m", 1);

  private static final double NORTH_AMERICAN_HERTZ = 60;

  private final String lengthUnit;
  private final double perMetre;

  Region(String lengthUnit, double perMetre) {
    this.lengthUnit = lengthUnit;
    this.perMetre = perMetre;
  }

  static Region of(Supply supply) {
    return supply.hertz() == NORTH_AMERICAN_HERTZ ? NORTH_AMERICA : INTERNATIONAL;
  }

  /** Sign of the unit of length. */
  String lengthUnit() {
    return lengthUnit;
  }

  /** A length in the region's unit. */
  double length(double metres) {
    return metres * perMetre;
  }

  /** What the conductor is called. */
  String word(ConductorRole conductor) {
    if (this == NORTH_AMERICA) {
      return conductor == ConductorRole.SWITCHED
          ? "switched hot"
          : conductor.word().replace('-', ' ');
    }
    return switch (conductor) {
      case HOT -> "line";
      case LEG_1 -> "line 1";
      case LEG_2 -> "line 2";
      case SWITCHED -> "switched line";
      case NEUTRAL -> "neutral";
      case GROUND -> "earth";
    };
  }

  /** What is said there of voltage drop. */
  VoltageDropGuidance guidance() {
    return this == NORTH_AMERICA ? VoltageDropGuidance.nec() : VoltageDropGuidance.iec();
  }
}
