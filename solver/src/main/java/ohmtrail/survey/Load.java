package ohmtrail.survey;

/** Something that draws current when it is plugged in or switched on. */
public sealed interface Load permits HeatingElement {
  /** Unique in its survey. */
  String name();

  /** What its nameplate says it draws at rated voltage, watts. */
  double ratedWatts();

  /** Conductance at rated power, siemens. */
  double ratedConductance();
}
