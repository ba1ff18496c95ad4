package ohmtrail.cli.render.words;

import ohmtrail.circuit.BoxKind;
import ohmtrail.circuit.ConductorRole;
import ohmtrail.circuit.Supply;
import ohmtrail.reference.VoltageDropGuidance;
import ohmtrail.survey.ProbePoints;

/** The words and the advice that go with a supply. */
public enum Region {
  /** 120 V or 120/240 V at 60 Hz: the words of the National Electrical Code. */
  NORTH_AMERICA,
  /** Everything else: the words of IEC 60364. */
  IEC;

  /** International foot, exact. */
  private static final double METRES_PER_FOOT = 0.3048;

  private static final double NORTH_AMERICAN_HERTZ = 60;

  /** Above any hot-to-neutral voltage of a North American dwelling, below any of IEC 60038. */
  private static final double HIGHEST_NORTH_AMERICAN_VOLTS = 180;

  /** The region that a supply is of. */
  public static Region of(Supply supply) {
    boolean northAmerican =
        supply.hertz() == NORTH_AMERICAN_HERTZ && supply.volts() < HIGHEST_NORTH_AMERICAN_VOLTS;
    return northAmerican ? NORTH_AMERICA : IEC;
  }

  /** A length in the unit of the region: {@code 25 ft}, {@code 7.6 m}. */
  public String length(double metres) {
    return Figures.upToTenths(inLengthUnit(metres)) + " " + lengthUnit();
  }

  /** The unit of length. */
  public String lengthUnit() {
    return choose("ft", "m");
  }

  /** So many metres in the unit of the region. */
  public double inLengthUnit(double metres) {
    return this == NORTH_AMERICA ? metres / METRES_PER_FOOT : metres;
  }

  private String choose(String northAmerican, String iec) {
    return this == NORTH_AMERICA ? northAmerican : iec;
  }

  /** Where something can be plugged in. */
  public String receptacle() {
    return choose("receptacle", "socket-outlet");
  }

  /** What stands in a box, in a sentence. */
  public String kind(BoxKind kind) {
    return switch (kind) {
      case PANEL -> "panel";
      case RECEPTACLE -> receptacle();
      case JUNCTION -> "junction box";
      case SWITCH -> "switch";
      case LUMINAIRE -> "luminaire";
      case APPLIANCE -> "appliance";
    };
  }

  /** The device that trips on a residual current. */
  public String residualCurrentDevice() {
    return choose("GFCI", "RCD");
  }

  /** The same with its article. */
  public String aResidualCurrentDevice() {
    return choose("a ", "an ") + residualCurrentDevice();
  }

  /** A conductor in a sentence. */
  public String conductor(ConductorRole conductor) {
    return switch (conductor) {
      case HOT -> choose("hot", "line");
      case LEG_1 -> choose("leg 1", "line 1");
      case LEG_2 -> choose("leg 2", "line 2");
      case SWITCHED -> choose("switched hot", "switched line");
      case NEUTRAL -> "neutral";
      case GROUND -> choose("ground", "protective earth");
    };
  }

  /** Two conductors in a column of a table: {@code hot-neutral}, {@code line-PE}. */
  public String between(ProbePoints points) {
    return brief(points.first()) + "-" + brief(points.second());
  }

  private String brief(ConductorRole conductor) {
    return this == IEC && conductor == ConductorRole.GROUND ? "PE" : conductor(conductor);
  }

  /** The advice on voltage drop. */
  public VoltageDropGuidance guidance() {
    return this == NORTH_AMERICA ? VoltageDropGuidance.nec() : VoltageDropGuidance.iec();
  }

  /** What stays live in a panel whose main switch is off. */
  public String lineSide() {
    return choose("line side", "supply side");
  }

  /** The rules that come before anything said here. */
  public String rules() {
    return choose("electrical code", "wiring rules");
  }
}
