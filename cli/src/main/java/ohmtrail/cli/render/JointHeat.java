package ohmtrail.cli.render;

import java.util.Optional;
import ohmtrail.circuit.Circuit;
import ohmtrail.circuit.ConductorRole;
import ohmtrail.locate.OhmsInterval;
import ohmtrail.locate.Suspect;

/**
 * The most heat that a degraded joint can make on its circuit.
 *
 * <p>At current I the joint makes I²R. What is plugged in draws no more than the breaker's rated
 * current I_max for long, and through R no more than E/R, whatever it is. So the worst is
 * min(I_max² R, E²/R), reached at I_max below R = E/I_max and, with nearly all of the voltage
 * across the joint, at E/R above it. (E²/(4R), the most that R leaves for the load, is no bound for
 * the joint: a 1500 W heater behind 20 ohm makes 330 W there, and E²/(4R) is 180 W.) The ohms of
 * cable and supply are left out: with them it is less. A real joint is no constant resistance, so
 * this is an upper bound for the ohms stated, not a forecast.
 *
 * @param ohms the ohms it was worked out for; positive infinity for an open joint
 * @param amperes the current at which it is reached
 * @param watts the heat in the joint
 */
public record JointHeat(double ohms, double amperes, double watts) {
  /**
   * Power of a glowing connection on a 15 A circuit: Meese and Beausoliel, NBSIR 76-1011 (1976),
   * abstract. Watts.
   */
  public static final double PUBLISHED_WATTS = 35;

  /** The current that {@link #PUBLISHED_WATTS} was reached at, same source. Amperes. */
  public static final double PUBLISHED_AMPERES = 15;

  /** Where the published figures stand. */
  public static final String PUBLISHED_SOURCE = "Meese & Beausoliel, NBSIR 76-1011 (1976)";

  private static final double CLEARLY_MORE = 1.5;
  private static final double CLEARLY_LESS = 0.67;

  /**
   * The worst over all loads up to the breaker's rating.
   *
   * @param ohms added to the joint, not negative; positive infinity for open
   */
  public static JointHeat worst(double ohms, Circuit circuit) {
    double volts = circuit.supply().greatestVolts();
    double most = circuit.breakerAmperes();
    if (ohms <= volts / most) {
      return new JointHeat(ohms, most, most * most * ohms);
    }
    if (Double.isInfinite(ohms)) {
      return new JointHeat(ohms, 0, 0);
    }
    return new JointHeat(ohms, volts / ohms, volts * volts / ohms);
  }

  /**
   * The worst for the ohms that the readings give a suspect: at the estimate, or where there is
   * none at the ohms within the bounds that make the most heat.
   *
   * @return empty when every joint of the suspect is on the ground, which carries current only in a
   *     fault; and when it lies before the panel, where no breaker of this circuit bounds the
   *     current
   */
  public static Optional<JointHeat> worst(Suspect suspect, Circuit circuit) {
    if (JointWords.isSupplySide(suspect)
        || suspect.joints().stream().allMatch(joint -> joint.conductor() == ConductorRole.GROUND)) {
      return Optional.empty();
    }
    OhmsInterval interval = suspect.ohms();
    if (interval.estimate().isPresent() && !OhmsWords.isVague(interval)) {
      return Optional.of(worst(interval.estimate().getAsDouble(), circuit));
    }
    double hottest = circuit.supply().greatestVolts() / circuit.breakerAmperes();
    double low = interval.low().orElse(0);
    double high = interval.high().orElse(Double.POSITIVE_INFINITY);
    return Optional.of(worst(Math.max(low, Math.min(high, hottest)), circuit));
  }

  /** The heat in words, held against the published figures. */
  public String words(Circuit circuit) {
    if (Double.isInfinite(ohms)) {
      return "An open joint carries no current and makes no heat while it stays open. One that makes"
          + " contact now and then arcs and may be anything in between.";
    }
    String made =
        amperes == circuit.breakerAmperes()
            ? Figures.ohms(ohms)
                + " at "
                + Figures.amperes(amperes)
                + ", the breaker's rating, makes "
                + Figures.watts(watts)
                + " in the box"
            : Figures.ohms(ohms)
                + " makes at most "
                + Figures.watts(watts)
                + " in the box, at "
                + Figures.amperes(amperes);
    return made + (watts < CLEARLY_LESS * PUBLISHED_WATTS ? "." : ": " + comparison());
  }

  /** Only where it is as much or more: that a figure is smaller makes no joint a safe one. */
  private String comparison() {
    double ratio = watts / PUBLISHED_WATTS;
    return (ratio >= CLEARLY_MORE ? Figures.twoDigits(ratio) + " times the " : "about the ")
        + Figures.watts(PUBLISHED_WATTS)
        + " at "
        + Figures.amperes(PUBLISHED_AMPERES)
        + " that glowing connections reached in tests ("
        + PUBLISHED_SOURCE
        + "), where no fuse, breaker or GFCI operated.";
  }
}
